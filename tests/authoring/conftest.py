"""A new diary, and frames of the kind that lie in a capture folder."""

import time
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from astropy.io import fits

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.gather_report import Gathering
from sitegen.authoring.gathering import GatherOptions, gather
from sitegen.authoring.new_diary import start_diary
from sitegen.folders import Folders

TODAY = date(2026, 11, 25)
MakeFrames = Callable[..., list[Path]]
LIGHT = {
    "IMAGETYP": "Light Frame",
    "EXPTIME": 300.0,
    "FILTER": "H-alpha",
    "OBJECT": "NGC2070",
    "FOCALLEN": 1000.0,
    "XPIXSZ": 3.76,
    "XBINNING": 1,
    "GAIN": 100,
    "CCD-TEMP": -10.0,
    "SITELAT": "-36 51 02.5",
    "SITELONG": "174 45 33.1",
    "OBSERVER": "Somebody Private",
}


def later_ns() -> int:
    """A clock that is ahead, so that what was written just now counts as settled."""
    return time.time_ns() + 10_000_000_000


def gathered(folders: Folders, *words: Path | str, name: str = "first-light", **options: Any) -> Gathering:
    """One gathering, with its options by name."""
    memory = FrameMemory(folders.keep, later_ns())
    return gather(name, find_files(map(str, words)), memory, folders, TODAY, GatherOptions(**options))


def log_of(folders: Folders, name: str = "first-light") -> Path:
    return folders.content / f"logs/{name}.ecsv"


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    """What 'sitegen start' writes, in tmp_path/diary."""
    base = tmp_path / "diary"
    start_diary(base, TODAY, "diary")
    return Folders(base / "content", base / "themes", base / "output", base / ".sitegen")


@pytest.fixture
def make_frames(tmp_path: Path) -> MakeFrames:
    """Writes frames `step_s` apart with astropy: tiny pixels, a header of the FITS standard's and the trade's common keywords.

    `history` are HISTORY cards; a card given as None is left out; `steps` moves the focuser from frame to frame.
    """

    def make(
        folder: str, count: int, start: str = "2026-11-20T10:00:00", suffix: str = ".fits", prefix: str = "frame_",
        step_s: float = 310, dtype: Any = np.uint8, history: tuple[str, ...] = (), steps: int = 0, **header: Any,
    ) -> list[Path]:  # fmt: skip
        (tmp_path / folder).mkdir(parents=True, exist_ok=True)
        paths = []
        for number in range(count):
            moment = datetime.fromisoformat(start) + timedelta(seconds=step_s * number)
            cards = LIGHT | {"XBINNING": 8, "XPIXSZ": 8 * 3.76} | {name: header[name] for name in header if name[:5] != "NAXIS"}
            cards |= {"DATE-OBS": moment.isoformat(timespec="milliseconds")}
            cards |= {"FOCUSPOS": 5000 + steps * number} if steps else {}
            written = fits.Header({name.replace("_", "-"): value for name, value in cards.items() if value is not None})
            for line in history:
                written.add_history(line)
            size = (header.get("NAXIS2", 4176 // 8), header.get("NAXIS1", 6248 // 8))
            unit = fits.PrimaryHDU(np.zeros(size, dtype), written)
            path = tmp_path / folder / f"{prefix}{start[:10]}_{number:03d}{suffix}"
            unit.writeto(path)
            paths.append(path)
        return paths

    return make
