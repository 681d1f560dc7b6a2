"""FITS -> its pixels, a band of rows at a time, so that a picture larger than the memory passes too.

The one file that knows astropy.
"""

import gzip
import math
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from astropy.io import fits
from astropy.utils.exceptions import AstropyWarning
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.limited_reader import limited_reader
from sitegen.pictures.container import CUT_SHORT
from sitegen.pictures.limits import refuse_outsize
from sitegen.pictures.records import Colour, PictureProblem, PictureSource

BAYER_PATTERNS = ("RGGB", "BGGR", "GRBG", "GBRG")
KNOWN_BITPIX = (8, 16, 32, 64, -32, -64)
BYTES_AT_ONCE = 1 << 22
NO_PICTURE = "it holds no picture: no image of two axes, nor of three with three planes"
DAMAGED = "its FITS header is damaged"
Samples = NDArray[np.float32]


class Rows(Protocol):
    def __call__(self, top: int, end: int, step: int = 1) -> Samples: ...


class FitsFacts(Struct, frozen=True):
    """`hdu` counts from 0; `planes` 1 or 3; physical value = zero + scale × stored; `blank` the stored integer that
    stands for no value; `pattern` the Bayer letters of the first two stored rows and columns, or None."""

    source: PictureSource
    hdu: int
    planes: int
    bitpix: int
    scale: float
    zero: float
    blank: int | None
    pattern: str | None


def fits_facts(path: Path) -> FitsFacts:
    """The first picture in the file, by its headers alone. PictureProblem where there is none."""
    with _opened(path) as hdus:
        index, hdu = _first_picture(hdus)
        facts = _facts_of(hdu.header, index)
        if not _is_packed(hdu) and not _is_gzip(path) and _end_of_data(hdu, facts) > path.stat().st_size:
            raise PictureProblem(CUT_SHORT)
        return facts


@contextmanager
def fits_rows(path: Path, facts: FitsFacts, scratch: Path) -> Iterator[Rows]:
    """A reader of physical values: (top, end, step) -> every step-th stored row from top to end, (rows, width, planes),
    0 where there is no value. `scratch` is a folder for the plain copy of a gzipped file."""
    if _is_gzip(path):
        path = _gunzipped(path, facts, scratch / "unpacked.fits")
    with _opened(path) as hdus:
        hdu = hdus[facts.hdu]
        if not _is_packed(hdu) and _end_of_data(hdu, facts) > path.stat().st_size:
            raise PictureProblem(CUT_SHORT)
        yield lambda top, end, step=1: _rows(hdu, facts, slice(top, end, step))


def fits_header(path: Path) -> dict[str, object]:
    """Keywords of the first picture in the file, as far as they can be read. PictureProblem where there is none."""
    with _opened(path) as hdus:
        _, hdu = _first_picture(hdus)
        return {card.keyword: card.value for card in hdu.header.cards if _is_readable(card)}


def _is_readable(card: fits.Card) -> bool:
    try:
        return bool(card.keyword) and card.value is not None
    except (fits.VerifyError, ValueError):
        return False


@contextmanager
def _opened(path: Path) -> Iterator[Any]:
    """astropy meets a damaged file with many kinds of exception, and warns of what it mends."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", AstropyWarning)
        warnings.simplefilter("ignore", UserWarning)
        try:
            with limited_reader(path) as stream, fits.open(stream, memmap=False, lazy_load_hdus=True) as hdus:
                yield hdus
        except PictureProblem:
            raise
        except Exception as error:
            if isinstance(error, OSError) and error.errno:  # the disk's refusal, not astropy's opinion of the file
                raise
            raise PictureProblem(DAMAGED) from error


def _first_picture(hdus: Any) -> tuple[int, Any]:
    for index in range(64):
        try:
            hdu = hdus[index]
        except IndexError:
            break
        if getattr(hdu, "is_image", False) and hdu.header.get("NAXIS", 0) >= 2 and _planes(hdu.header):
            return index, hdu
    raise PictureProblem(NO_PICTURE)


def _planes(header: fits.Header) -> int:
    """1 for a plain frame, 3 for colour planes, 0 for anything else."""
    depth = math.prod(int(header.get(f"NAXIS{axis}", 1)) for axis in range(3, int(header["NAXIS"]) + 1))
    return depth if depth in (1, 3) else 0


def _facts_of(header: fits.Header, index: int) -> FitsFacts:
    width, height, bitpix = int(header["NAXIS1"]), int(header["NAXIS2"]), int(header["BITPIX"])
    refuse_outsize(width, height)
    if bitpix not in KNOWN_BITPIX:
        raise PictureProblem(f"its BITPIX {bitpix} is none that FITS knows")
    planes = _planes(header)
    pattern = _pattern(header) if planes == 1 and min(width, height) > 1 else None
    colour: Colour = "rgb" if planes == 3 else "bayer" if pattern else "grey"
    is_flipped = str(header.get("ROWORDER", "")).strip().upper() != "TOP-DOWN"
    source = PictureSource(width, height, "fits", abs(bitpix), colour, is_linear=True, is_flipped=is_flipped)
    scale, zero = float(header.get("BSCALE", 1.0)), float(header.get("BZERO", 0.0))
    blank = int(header["BLANK"]) if bitpix > 0 and "BLANK" in header else None
    return FitsFacts(source, index, planes, bitpix, scale, zero, blank, pattern)


def _pattern(header: fits.Header) -> str | None:
    """The letters as the stored corner shows them, XBAYROFF and YBAYROFF allowed for. Capture programs agree on no
    other reading of BAYERPAT than the order in which the rows are stored."""
    letters = str(header.get("BAYERPAT", header.get("COLORTYP", ""))).strip().upper()
    if letters not in BAYER_PATTERNS:
        return None
    right, down = (int(header.get(key, 0)) % 2 for key in ("XBAYROFF", "YBAYROFF"))
    return "".join(letters[2 * ((row + down) % 2) + (column + right) % 2] for row in (0, 1) for column in (0, 1))


def _is_packed(hdu: Any) -> bool:
    return isinstance(hdu, fits.CompImageHDU)


def _is_gzip(path: Path) -> bool:
    with path.open("rb") as stream:
        return stream.read(2) == b"\x1f\x8b"


def _bytes_of_data(facts: FitsFacts) -> int:
    return facts.source.width_px * facts.source.height_px * facts.planes * abs(facts.bitpix) // 8


def _end_of_data(hdu: Any, facts: FitsFacts) -> int:
    return int(hdu.fileinfo()["datLoc"]) + _bytes_of_data(facts)


def _gunzipped(path: Path, facts: FitsFacts, target: Path) -> Path:
    """No more is unpacked than the header lets one expect, and a generous allowance for headers and earlier HDUs."""
    allowance = 2 * _bytes_of_data(facts) + (1 << 26)
    try:
        with gzip.open(path) as packed, target.open("wb") as plain:
            while block := packed.read(BYTES_AT_ONCE):
                allowance -= len(block)
                if allowance < 0:
                    raise PictureProblem("it unpacks to far more than its header says")
                plain.write(block)
    except (EOFError, gzip.BadGzipFile) as error:
        raise PictureProblem(CUT_SHORT) from error
    return target


def _rows(hdu: Any, facts: FitsFacts, rows: slice) -> Samples:
    """astropy scales and decodes; a plain file is read row by row, never mapped whole."""
    leading = (0,) * (len(hdu.shape) - 3)
    planes = [(plane,) for plane in range(facts.planes)] if len(hdu.shape) > 2 else [()]
    section = [np.asarray(hdu.section[(*leading, *plane, rows, slice(None))], np.float32) for plane in planes]
    values = np.stack(section, axis=-1)
    return np.nan_to_num(values, copy=False, nan=0.0, posinf=0.0, neginf=0.0)
