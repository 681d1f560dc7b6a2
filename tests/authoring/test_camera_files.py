"""A camera's raw files and its JPEGs in one folder: each exposure once, all others counted by their endings."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from PIL import Image
from PIL.ExifTags import IFD, Base
from PIL.TiffImagePlugin import IFDRational

from sitegen.cli import main
from sitegen.folders import Folders
from tests.authoring.conftest import gathered
from tests.reading.capture_logs.test_exif_tags import structure


def tags(second: int) -> Mapping[Any, Any]:
    return {Base.DateTimeOriginal: f"2026:11:20 21:12:{second:02d}", Base.ExposureTime: IFDRational(30, 1),
            Base.ISOSpeedRatings: 800, Base.OffsetTimeOriginal: "+00:00"}  # fmt: skip


@pytest.fixture
def card(tmp_path: Path) -> Path:
    """Three exposures: two as raw and JPEG, one as JPEG alone; a film and a note."""
    folder = tmp_path / "DCIM"
    folder.mkdir()
    for number, second in enumerate((0, 40)):
        (folder / f"IMG_{number}.CR2").write_bytes(structure(tags(second)))
    for number, second in enumerate((0, 40, 59)):
        exif = Image.Exif()
        exif.get_ifd(IFD.Exif).update(tags(second))
        Image.new("RGB", (60, 40)).save(folder / f"IMG_{number}.JPG", exif=exif)
    for name in ("film.MOV", "note.txt", "IMG_9.CRW"):
        (folder / name).write_bytes(b"x")
    return folder


def test_raw_and_jpeg_are_one_exposure(folders: Folders, card: Path) -> None:
    """By the raw file; a JPEG alone counts where a pattern names it."""
    done = gathered(folders, card, card / "*.JPG", name="card")
    assert (done.sorting.files, done.sorting.kept, done.sorting.count("copy")) == (8, 3, 2)
    assert {left.what for left in done.sorting.left_out} == {"raw and JPEG"}
    assert dict(done.sorting.passed_over) == {".crw": 1, ".mov": 1, ".txt": 1}


def test_a_folder_of_pictures_says_how_to_name_them(folders: Folders, card: Path) -> None:
    """JPEGs in a folder may be snapshots."""
    for raw in card.glob("*.CR2"):
        raw.unlink()
    done = CliRunner().invoke(main, ["gather", "card", str(card), "--content", str(folders.content)])
    assert f"pictures in a folder are no frames unless a pattern names them, as in '{card}/*.jpg'" in done.output
