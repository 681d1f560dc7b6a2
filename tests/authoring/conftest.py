"""A new diary, and frames of the kind that lie in a capture folder."""

from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from astropy.io import fits

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


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    """What 'sitegen start' writes, in tmp_path/diary."""
    base = tmp_path / "diary"
    start_diary(base, TODAY, "diary")
    return Folders(base / "content", base / "themes", base / "output", base / ".sitegen")


@pytest.fixture
def make_frames(tmp_path: Path) -> MakeFrames:
    """Writes frames 310 s apart with astropy: tiny pixels, a header as capture programs write it."""

    def make(folder: str, count: int, start: str = "2026-11-20T10:00:00", suffix: str = ".fits", **header: Any) -> list[Path]:
        (tmp_path / folder).mkdir(parents=True, exist_ok=True)
        paths = []
        for number in range(count):
            moment = datetime.fromisoformat(start) + timedelta(seconds=310 * number)
            cards = LIGHT | header | {"DATE-OBS": moment.isoformat(timespec="milliseconds")}
            unit = fits.PrimaryHDU(
                np.zeros((4176 // 8, 6248 // 8), np.uint8), fits.Header(cards | {"XBINNING": 8, "XPIXSZ": 8 * 3.76})
            )
            path = tmp_path / folder / f"frame_{start[:10]}_{number:03d}{suffix}"
            unit.writeto(path)
            paths.append(path)
        return paths

    return make
