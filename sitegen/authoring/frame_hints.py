"""What a frame's header tells of the rig, the site and the target behind it.

The observer's place is used here, in memory, to recognise a site; it is never written anywhere.
"""

import math
import re
from pathlib import Path

from msgspec import Struct

from sitegen.reading.capture_logs.fits_header import FitsHeader, read_header
from sitegen.reading.capture_logs.fits_log import SUFFIXES
from sitegen.reading.capture_logs.fits_told import told_by
from sitegen.reading.capture_logs.log_problems import Doubt

_HOURS = re.compile(r"\s*\d{1,2}[\s:hH]")
_LATITUDES = (b"SITELAT ", b"OBSGEO-B", b"LAT-OBS ", b"OBSLAT  ")
_LONGITUDES = (b"SITELONG", b"OBSGEO-L", b"LONG-OBS", b"OBSLONG ")


class FrameHints(Struct, frozen=True):
    """None where the header does not tell. Frame and pixel are binned; angles in degrees, east positive."""

    focal_length_mm: float | None = None
    pixel_um: float | None = None
    frame_px: tuple[float | None, float | None] = (None, None)
    binning: int | None = None
    filter: str = ""
    target: str = ""
    ra_deg: float | None = None
    dec_deg: float | None = None
    latitude_deg: float | None = None
    longitude_deg: float | None = None


def hints_of(path: Path) -> FrameHints | None:
    """None for a table, a camera's own file, or what cannot be read."""
    if not path.name.casefold().endswith(SUFFIXES):
        return None
    try:
        return _hints(read_header(path))
    except (OSError, Doubt):
        return None


def _hints(header: FitsHeader) -> FrameHints:
    told = told_by(header)
    ra_deg, dec_deg = _pointing(header) if told.kind == "light" else (None, None)
    return FrameHints(
        focal_length_mm=told.focal_length_mm or None,
        pixel_um=told.pixel_um or None,
        frame_px=told.frame_px,
        binning=told.binning,
        filter=told.filter_words,
        target=header.text(b"OBJECT  ") if told.kind == "light" else "",
        ra_deg=ra_deg,
        dec_deg=dec_deg,
        latitude_deg=_first_angle(header, _LATITUDES, 90),
        longitude_deg=_first_angle(header, _LONGITUDES, 360),
    )


def _pointing(header: FitsHeader) -> tuple[float | None, float | None]:
    """From the mount, else from a solution in the header."""
    for ra, dec in ((b"RA      ", b"DEC     "), (b"OBJCTRA ", b"OBJCTDEC")):
        found = _right_ascension(header, ra), angle_deg(header.text(dec))
        if found[0] is not None and found[1] is not None and abs(found[1]) <= 90:
            return found
    if header.text(b"CTYPE1  ").startswith("RA") and header.text(b"CTYPE2  ").startswith("DEC"):
        return header.number(b"CRVAL1  "), header.number(b"CRVAL2  ")
    return None, None


def _right_ascension(header: FitsHeader, keyword: bytes) -> float | None:
    """A plain number is degrees, as the keyword RA has it; parts are hours, minutes, seconds."""
    text = header.text(keyword)
    found = angle_deg(text)
    if found is None or not 0 <= found <= 360:
        return None
    return found * 15 % 360 if _HOURS.match(text) else found


def _first_angle(header: FitsHeader, keywords: tuple[bytes, ...], most: float) -> float | None:
    found = (angle_deg(header.text(keyword)) for keyword in keywords)
    return next((angle for angle in found if angle is not None and abs(angle) <= most), None)


def angle_deg(text: str) -> float | None:
    """`-32.6`, `-32 38 02`, `+54:20:57`, `32d38m02s S`; None for anything else. Hours are not told from degrees here."""
    parts = re.findall(r"\d+(?:\.\d+)?", text)
    if not parts or len(parts) > 3 or re.search(r"[^\d\s:.+\-°'\"′″dhmsNSEWnew]", text):
        return None
    value = math.fsum(float(part) / 60.0**place for place, part in enumerate(parts))
    return -value if text.strip().startswith("-") or text.rstrip().endswith(("S", "W", "w")) else value
