"""A frame of stars -> its pixels as one plane in the axes of the room `stars` (row 0 at the bottom), and what its header tells.

FITS, plain, gzipped or tile-compressed, by astropy; TIFF, PNG and JPEG by libvips. Of a picture in colour the green plane is
taken: one passband, and the sharpest that most cameras have. This file loads both libraries: only who measures imports it.
"""

import gzip
import warnings
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import pyvips
from astropy.io import fits
from astropy.utils.exceptions import AstropyWarning
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.limited_reader import GZIP_MARK, limited_reader
from sitegen.reading.capture_logs.fits_header import FitsHeader, read_header
from sitegen.reading.capture_logs.fits_start import frame_start
from sitegen.reading.capture_logs.log_problems import ValueProblem, system_reason
from sitegen.sky.optics import image_scale_arcsec_px

LARGEST_PX = 150_000_000
MOST_UNITS = 64
HEADERS_ALLOWED = 1 << 26  # bytes of a gzipped file beyond the pixels that its headers promise
BAYER_PATTERNS = ("RGGB", "BGGR", "GRBG", "GBRG")
GREEN = 1
CUT_SHORT = "is cut short: the file ends before its pixels do"
NO_FRAME = "holds no frame: no image of two axes, nor of three with three planes"
LOADERS = (
    (b"\xff\xd8\xff", "jpegload"),
    (b"\x89PNG\r\n\x1a\n", "pngload"),
    (b"II*\0", "tiffload"),
    (b"MM\0*", "tiffload"),
    (b"II+\0", "tiffload"),
    (b"MM\0+", "tiffload"),
)


class FrameProblem(Exception):
    """A file that is no frame to measure. `wrong` continues the sentence 'the file …'."""

    def __init__(self, wrong: str, remedy: str = "") -> None:
        super().__init__(wrong)
        self.wrong = wrong
        self.remedy = remedy


class StarFrame(Struct, frozen=True):
    """`pixels` (height, width), row 0 at the bottom; `bayer` the colour pattern read from its first row; `saturation` in counts.
    None for what the file does not tell."""

    pixels: NDArray[np.generic]
    bayer: str | None = None
    saturation: float | None = None
    scale_arcsec_px: float | None = None
    taken: datetime | None = None
    binning: int | None = None


def open_frame(path: Path) -> StarFrame:
    """Raises FrameProblem, and nothing else, for whatever cannot be measured."""
    try:
        with path.open("rb") as stream:
            start = stream.read(10)
    except OSError as trouble:
        raise FrameProblem(system_reason(trouble)) from trouble
    if not start:
        raise FrameProblem("is empty")
    loader = next((name for mark, name in LOADERS if start.startswith(mark)), None)
    if loader is not None:
        return _picture(path, loader)
    if start.startswith((b"SIMPLE  =", GZIP_MARK)):
        return _fits(path, packed=start.startswith(GZIP_MARK))
    raise FrameProblem("is neither FITS nor a TIFF, PNG or JPEG picture", "name a frame, or what 'sitegen survey --save' wrote")


def _picture(path: Path, loader: str) -> StarFrame:
    """Libvips counts rows from the top."""
    try:
        header = pyvips.Operation.call(loader, str(path), access="sequential", fail_on="truncated")
        _refuse_outsize(header.width, header.height)
        if header.format in ("complex", "dpcomplex"):
            raise FrameProblem("has complex numbers for pixels")
        plane = header.autorot()
        plane = plane.extract_band(GREEN if plane.bands > 2 else 0)
        return StarFrame(np.flipud(np.atleast_2d(plane.numpy())))
    except pyvips.Error as error:
        raise FrameProblem(_meaning(str(error))) from error


def _meaning(said: str) -> str:
    lowered = said.casefold()
    ends_early = ("premature end", "truncat", "end of file", "read error", "not enough data", "eof", "short")
    return CUT_SHORT if any(word in lowered for word in ends_early) else "is damaged: its pixels cannot be decoded"


def _refuse_outsize(width: int, height: int) -> None:
    if width < 1 or height < 1:
        raise FrameProblem(f"has no pixels ({width} × {height})")
    if width * height > LARGEST_PX:
        raise FrameProblem(
            f"has {width * height / 1e6:,.0f} megapixels ({width} × {height})", f"at most {LARGEST_PX // 10**6} are taken"
        )


def _fits(path: Path, packed: bool) -> StarFrame:
    """The header is looked at first, within bounds, so that no file can promise more than is taken."""
    try:
        fits_header = read_header(path)
    except ValueProblem as doubt:
        raise FrameProblem(doubt.wrong, doubt.remedy) from doubt
    except OSError as trouble:
        raise FrameProblem(system_reason(trouble)) from trouble
    with _units(path, packed) as units:
        unit = _first_frame(units)
        promised = _refuse_impossible(unit)
        if not packed and not isinstance(unit, fits.CompImageHDU):
            _refuse_short(unit, promised, path.stat().st_size)
        pixels = np.asarray(unit.data)
        return _frame(pixels, unit.header, fits_header)


@contextmanager
def _units(path: Path, packed: bool) -> Iterator[Any]:
    """The file's units. astropy meets damage with many kinds of exception, and warns of what it mends."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", AstropyWarning)
        warnings.simplefilter("ignore", UserWarning)
        warnings.simplefilter("ignore", RuntimeWarning)
        try:
            with limited_reader(path) as stream:
                source = BytesIO(_unpacked(path)) if packed else stream
                with fits.open(source, memmap=False, lazy_load_hdus=True) as units:
                    yield units
        except FrameProblem:
            raise
        except Exception as error:
            raise FrameProblem("is damaged: its pixels cannot be read") from error


def _unpacked(path: Path) -> bytes:
    """No more than the largest frame that is taken, in its widest numbers; a few bytes that unpack to a flood stop early."""
    most = _promised_bytes(path) + HEADERS_ALLOWED
    try:
        with gzip.open(path) as stream:
            content = stream.read(most + 1)
    except EOFError as error:
        raise FrameProblem(CUT_SHORT) from error
    except (gzip.BadGzipFile, zlib.error) as error:
        raise FrameProblem("is damaged: gzip cannot unpack it") from error
    if len(content) > most:
        raise FrameProblem("unpacks to far more than its header says")
    return content


def _promised_bytes(path: Path) -> int:
    header = read_header(path)
    sides = [int(header.number(f"NAXIS{axis}".ljust(8).encode()) or 1) for axis in (1, 2, 3)]
    bits, behind = int(header.number(b"BITPIX  ") or 8), int(header.number(b"PCOUNT  ") or 0)
    if header.number(b"ZNAXIS1 ") is None:
        _refuse_outsize(sides[0], sides[1])
    promised = sides[0] * sides[1] * min(sides[2], 3) * abs(bits) // 8 + max(behind, 0)
    return min(promised, 3 * LARGEST_PX * 8)


def _first_frame(units: Any) -> Any:
    for index in range(MOST_UNITS):
        try:
            unit = units[index]
        except IndexError:
            break
        if getattr(unit, "is_image", False) and unit.header.get("NAXIS", 0) >= 2 and _planes(unit.header) in (1, 3):
            return unit
    raise FrameProblem(NO_FRAME)


def _planes(header: Any) -> int:
    planes = 1
    for axis in range(3, int(header["NAXIS"]) + 1):
        planes *= int(header.get(f"NAXIS{axis}", 1))
    return planes


def _refuse_impossible(unit: Any) -> int:
    """The bytes that the header promises."""
    header = unit.header
    width, height = int(header["NAXIS1"]), int(header["NAXIS2"])
    _refuse_outsize(width, height)
    return width * height * _planes(header) * abs(int(header["BITPIX"])) // 8


def _refuse_short(unit: Any, promised: int, size_bytes: int) -> None:
    if int(unit.fileinfo()["datLoc"]) + promised > size_bytes:
        raise FrameProblem(CUT_SHORT)


def _frame(pixels: NDArray[Any], header: Any, fits_header: FitsHeader) -> StarFrame:
    stored = pixels.reshape(-1, *pixels.shape[-2:])
    plane = stored[GREEN] if len(stored) == 3 else stored[0]
    plane = np.ascontiguousarray(plane, dtype=plane.dtype.newbyteorder("="))
    bayer = _bayer(header) if len(stored) == 1 else None
    if str(header.get("ROWORDER", "")).strip().upper() == "TOP-DOWN":
        plane, bayer = np.flipud(plane), _turned_over(bayer, plane.shape[0])
    return StarFrame(
        plane,
        bayer,
        saturation=_positive(fits_header.number(b"SATURATE")),
        scale_arcsec_px=_scale(fits_header),
        taken=_taken(fits_header),
        binning=_binning(fits_header),
    )


def _bayer(header: Any) -> str | None:
    """As the first stored rows show it, XBAYROFF and YBAYROFF allowed for."""
    letters = str(header.get("BAYERPAT", header.get("COLORTYP", ""))).strip().upper()
    if letters not in BAYER_PATTERNS:
        return None
    right, down = (int(header.get(key, 0)) % 2 for key in ("XBAYROFF", "YBAYROFF"))
    return "".join(letters[2 * ((row + down) % 2) + (column + right) % 2] for row in (0, 1) for column in (0, 1))


def _turned_over(bayer: str | None, rows: int) -> str | None:
    """What the pattern reads from the last row up."""
    return bayer if bayer is None or rows % 2 else bayer[2:] + bayer[:2]


def _scale(fits_header: FitsHeader) -> float | None:
    """From the binned pixel and the focal length; None unless the header has both."""
    pixel_um, focal_mm = _positive(fits_header.number(b"XPIXSZ  ")), _positive(fits_header.number(b"FOCALLEN"))
    return image_scale_arcsec_px(pixel_um, 1, focal_mm) if pixel_um and focal_mm else None


def _positive(value: float | None) -> float | None:
    return value if value is not None and value > 0 else None


def _binning(fits_header: FitsHeader) -> int | None:
    value = _positive(fits_header.number(b"XBINNING"))
    return int(value) if value and value == int(value) else None


def _taken(fits_header: FitsHeader) -> datetime | None:
    """None without a date that can be read, and for local time, whose zone no frame tells."""
    try:
        moment = frame_start(fits_header, fits_header.text(b"TIMESYS ").upper() or "UTC")
    except ValueProblem:
        return None
    return moment if moment.tzinfo is not None else None
