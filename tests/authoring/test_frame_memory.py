"""Gathering again opens no file that is known; a file that may have changed is read again."""

import errno
import os
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from PIL.ExifTags import IFD, Base

from sitegen.authoring.captures import camera_record, fits_record, reading
from sitegen.authoring.captures.memory import FrameMemory, unknown_to
from sitegen.authoring.captures.reading import read_records
from sitegen.authoring.captures.record import FrameFile, FrameRecord
from sitegen.authoring.captures.walk import find_files
from sitegen.folders import Folders
from tests.authoring.conftest import MakeFrames, gathered, later_ns


def test_known_files_are_not_opened(
    folders: Folders, make_frames: MakeFrames, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The records come from memory, equal to what was read; a new file alone is opened."""
    make_frames("disk", 3)
    first = gathered(folders, tmp_path / "disk")
    make_frames("disk", 1, start="2026-11-22T10:00:00")
    opened: list[str] = []
    read = reading.record_of

    def counted(file: FrameFile) -> FrameRecord:
        opened.append(file.name)
        return read(file)

    monkeypatch.setattr(reading, "record_of", counted)
    again = gathered(folders, tmp_path / "disk")
    assert opened == ["frame_2026-11-22_000.fits"]
    assert (first.totals.kept, again.totals.kept) == (3, 4)


def test_a_changed_file_is_read_again(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """By its size, time or inode."""
    (path,) = make_frames("disk", 1)
    gathered(folders, tmp_path / "disk")
    memory = FrameMemory(folders.keep, later_ns())
    assert unknown_to(memory, find_files([str(tmp_path / "disk")]).frames) == ()
    os.utime(path, ns=(1, 1))
    assert len(unknown_to(memory, find_files([str(tmp_path / "disk")]).frames)) == 1


def test_a_file_just_written_is_not_trusted(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Disks stamp files as coarsely as to two seconds: within them it may have changed unseen."""
    make_frames("disk", 1)
    files = find_files([str(tmp_path / "disk")]).frames
    for began_ns, unknown in ((time.time_ns(), 1), (later_ns(), 0)):
        memory = FrameMemory(folders.keep, began_ns)
        read_records(files, memory)
        memory.save()
        assert len(unknown_to(FrameMemory(folders.keep, began_ns), files)) == unknown


@pytest.mark.parametrize("reader", ["fits", "camera"])
def test_what_the_system_refused_is_asked_again(
    reader: str, folders: Folders, make_frames: MakeFrames, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A share that is away for a moment changes neither size nor time of a file, and must not make it unreadable for ever."""
    if reader == "fits":
        (path,) = make_frames("disk", 1)
    else:
        exif = Image.Exif()
        exif.get_ifd(IFD.Exif).update({Base.DateTimeOriginal: "2026:11:21 10:00:00", Base.ExposureTime: 60.0})
        (tmp_path / "disk").mkdir()
        path = tmp_path / "disk/1.jpg"
        Image.new("RGB", (24, 18)).save(path, exif=exif)
    module, name = (fits_record, "read_header") if reader == "fits" else (camera_record, "exif_tags")

    def away(*_: object) -> None:
        raise OSError(errno.EIO, "Input/output error")

    with monkeypatch.context() as share:
        share.setattr(module, name, away)
        lost = gathered(folders, path)
    assert [problem.severity for problem in lost.problems] == ["error"]
    assert (lost.totals.kept, gathered(folders, path).totals.kept) == (0, 1)


@pytest.mark.parametrize("damage", [b"", b"nonsense", b"\x93\x00\xa1/\x80"])
def test_a_damaged_memory_costs_only_time(folders: Folders, make_frames: MakeFrames, tmp_path: Path, damage: bytes) -> None:
    """It is read from the frames again."""
    make_frames("disk", 2)
    gathered(folders, tmp_path / "disk")
    assert folders.keep is not None
    for path in (folders.keep / "frames").iterdir():
        path.write_bytes(damage)
    assert gathered(folders, tmp_path / "disk").known_count == 2


def test_without_a_place_to_keep_anything(make_frames: MakeFrames, folders: Folders, tmp_path: Path) -> None:
    """All is read each time, and nothing is written."""
    make_frames("disk", 1)
    files = find_files([str(tmp_path / "disk")]).frames
    memory = FrameMemory(None, later_ns())
    assert read_records(files, memory)[0].object == "NGC2070"
    memory.save()


def test_slow_disks_get_several_readers(make_frames: MakeFrames, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With the same records in the same order."""
    make_frames("disk", 12)
    files = find_files([str(tmp_path / "disk")]).frames
    monkeypatch.setattr(reading, "PROBED", 4)
    alone = read_records(files, FrameMemory(None, 0), jobs=1)
    monkeypatch.setattr(reading, "SLOW_FILE_S", -1.0)
    assert read_records(files, FrameMemory(None, 0)) == alone
    assert [record.start for record in alone] == sorted(record.start for record in alone if record.start is not None)


def test_few_files_are_asked_for_ahead(make_frames: MakeFrames, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """On a slow disk, too: what is asked for and not yet taken is held in memory."""
    make_frames("disk", 20)
    files = find_files([str(tmp_path / "disk")]).frames
    ahead, most = 0, 0

    class Counting(ThreadPoolExecutor):
        def submit(self, *words: Any, **options: Any) -> Any:
            nonlocal ahead, most
            ahead += 1
            most = max(most, ahead)
            return super().submit(*words, **options)

    def taken(record: FrameRecord) -> None:
        nonlocal ahead
        ahead -= 1

    for name, value in (("PROBED", 0), ("MOST_AHEAD", 3), ("ThreadPoolExecutor", Counting)):
        monkeypatch.setattr(reading, name, value)
    assert len(read_records(files, FrameMemory(None, 0), jobs=2, on_record=taken)) == 20
    assert (ahead, most) == (0, 3)


def test_what_frames_have_in_common_is_held_once(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """And nothing else of what was loaded, where all of it is known; the records are those that were read."""
    make_frames("disk", 3, TELESCOP="a telescope", GAIN=120)
    files = find_files([str(tmp_path / "disk")]).frames
    memory = FrameMemory(folders.keep, later_ns())
    read = read_records(files, memory)
    memory.save()
    again = FrameMemory(folders.keep, later_ns())
    first, second, third = read_records(files, again)
    assert (first, second, third) == read
    assert first.telescope is second.telescope is third.telescope
    assert first.gain is third.gain
    assert again.shards == {}
    assert again.directories == {}
