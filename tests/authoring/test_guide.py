"""The guide, followed as it stands: every command, every file, and what the screen shows."""

import re
import shlex
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import numpy as np
import pytest
from astropy.io import fits
from click.testing import CliRunner

from sitegen.cli import main
from sitegen.cli.guide import GUIDE, PARTS
from tests.conftest import ROOT

PLACE = "/disk/captures"
ENTRY, SITE = Path("content/entries/ngc-253.md"), Path("content/sites/33s-138e.yaml")
STARS = ROOT / "content/pictures/collimation/field-camera-turned.fits.fz"


def night(folder: Path, start: str, count: int, kind: str = "Light Frame") -> None:
    """Frames with the common keywords of the trade, written by astropy."""
    folder.mkdir(parents=True, exist_ok=True)
    for number in range(count):
        moment = datetime.fromisoformat(start) + timedelta(seconds=310 * number)
        header = fits.Header()
        header.update(IMAGETYP=kind, EXPTIME=300.0, FILTER="L", OBJECT="NGC 253", RA=11.888, DEC=-25.288, FOCALLEN=1600.0,
                      XPIXSZ=30.08, XBINNING=8, GAIN=100, SITELAT=-33.2, SITELONG=138.4, TELESCOP="Long tube")  # fmt: skip
        header["CCD-TEMP"], header["DATE-OBS"] = -10.0, moment.isoformat(timespec="milliseconds")
        fits.PrimaryHDU(np.zeros((522, 781), np.uint8), header).writeto(folder / f"{kind[:4]}_{moment:%Y%m%d_%H%M%S}.fits")


def replaced(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text, (path, old)
    path.write_text(text.replace(old, new, 1), "utf-8")


def zone_confirmed(disk: Path) -> None:
    SITE.write_text(re.sub(r"  # to be confirmed:.*", "", SITE.read_text("utf-8")), "utf-8")


def goes_on(disk: Path) -> None:
    """The head as the part shows it, and another night: one sub of the first was thrown away meanwhile."""
    replaced(ENTRY, "stage: finished\n", yaml_of("broken-nights", 0))
    night(disk / "2026-09-19", "2026-09-19T11:00:00", 4)
    first = next((disk / "2026-09-12").glob("*.fits"))
    first.rename(disk / "2026-09-12/rejected" / first.name)


def noted(disk: Path) -> None:
    replaced(ENTRY, "published:", f"{yaml_of('broken-nights', 1)}published:")


def worked(disk: Path) -> None:
    rig = Path("content/rigs/long-tube.yaml")
    rig.write_text(rig.read_text("utf-8") + yaml_of("optics", 0), "utf-8")
    frame = Path("content/pictures/field.fits.fz")
    frame.parent.mkdir(exist_ok=True)
    frame.write_bytes(STARS.read_bytes())


def taken_back(disk: Path) -> None:
    replaced(ENTRY, "published:", f"{yaml_of('publishing', 0)}published:")


def put_out_again(disk: Path) -> None:
    replaced(ENTRY, yaml_of("publishing", 0), "")


EDITS: dict[tuple[str, int], Callable[[Path], None]] = {
    ("first-evening", 2): zone_confirmed,
    ("broken-nights", 0): goes_on,
    ("optics", 0): worked,
    ("publishing", 0): noted,
    ("publishing", 2): taken_back,
    ("wrong-number", 0): put_out_again,
}
"""What the text asks the reader to do before a command, by its part and its number there."""


def blocks_of(part: str) -> list[list[str]]:
    return [[line[4:] for line in block.splitlines()] for block in re.findall(r"(?:^    .*\n?)+", PARTS[part], re.M)]


def yaml_of(part: str, number: int) -> str:
    """A block to be written into a file."""
    shown = [block for block in blocks_of(part) if not block[0].startswith("$ ")]
    return "\n".join(shown[number]) + "\n"


def assert_shown(shown: list[str], screen: str) -> None:
    """Line by line and in order; '…' stands for any words, and on a line of its own for any lines."""
    screen = re.sub(r"(?m)^[a-z ]+: \d+ of \d+\n", "", screen)  # how far it is, which a terminal wipes away
    pattern = "".join(r"(?:.*\n)*" if line == "…" else re.escape(line).replace("…", ".*") + r" *\n" for line in shown)
    assert re.match(pattern, screen), screen


def test_the_guide_works_as_it_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its parts in their order, on a disk of the size that its screens show."""
    disk = tmp_path / "disk"
    night(disk / "2026-09-12", "2026-09-12T11:00:00", 6)
    night(disk / "2026-09-12/rejected", "2026-09-12T12:00:00", 2)
    night(disk / "darks", "2026-09-13T11:00:00", 3, "Dark Frame")
    (tmp_path / "diary").mkdir()
    monkeypatch.chdir(tmp_path / "diary")
    followed = 0
    for part in PARTS:
        typed = [block for block in blocks_of(part) if block[0].startswith("$ ")]
        assert typed
        for number, (command, *shown) in enumerate(typed):
            EDITS.get((part, number), lambda _: None)(disk)
            program, *words = shlex.split(command.removeprefix("$ ").replace(PLACE, str(disk)))
            assert program == "sitegen"
            done = CliRunner().invoke(main, words, catch_exceptions=False)
            assert done.exit_code == 0, (part, command, done.output)
            assert_shown(shown, done.output)
            followed += 1
    assert followed == 12
    assert Path("output/entries/ngc-253/index.html").is_file()


def test_every_file_that_it_names_exists_or_is_written(tmp_path: Path) -> None:
    """Of the program's own; the diary's are written by its commands."""
    own = set(re.findall(r"`(sitegen/[\w/.]+)`", GUIDE.read_text("utf-8")))
    assert own == {"sitegen/authoring/RECIPES.md"}
    assert all((ROOT / path).is_file() for path in own)


@pytest.mark.parametrize("part", PARTS)
def test_a_part_is_shown(part: str) -> None:
    done = CliRunner().invoke(main, ["guide", part])
    assert (done.exit_code, done.output.strip()) == (0, PARTS[part])


def test_the_parts_are_listed() -> None:
    """Without a name; one that there is not is refused."""
    done = CliRunner().invoke(main, ["guide"])
    assert all(part in done.output for part in PARTS)
    assert CliRunner().invoke(main, ["guide", "elsewhere"]).exit_code == 2
