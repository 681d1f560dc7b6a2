"""FITS -> where its pixels lie and how to read them. The one file that knows astropy.

Uncompressed pixels are read by libvips straight from the file; gzipped and tile-compressed ones are first written
out as plain numbers, a band of rows at a time, so that a picture larger than the memory passes too.
"""

import gzip
import math
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pyvips
from astropy.io import fits
from astropy.utils.exceptions import AstropyWarning

from sitegen.pictures.container import CUT_SHORT
from sitegen.pictures.doors import refuse_outsize
from sitegen.pictures.records import Colour, PictureProblem, PictureSource

BAYER_PATTERNS = ("RGGB", "BGGR", "GRBG", "GBRG")
VIPS_FORMATS = {8: "uchar", 16: "short", 32: "int", -32: "float", -64: "double"}
KNOWN_BITPIX = (*VIPS_FORMATS, 64)
ROWS_AT_ONCE = 256
BYTES_AT_ONCE = 1 << 22
NO_PICTURE = "it holds no picture: no image of two axes, nor of three with three planes"
DAMAGED = "its FITS header is damaged"


@dataclass(frozen=True, slots=True)
class FitsFacts:
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


def fits_image(path: Path, facts: FitsFacts, scratch: Path) -> pyvips.Image:
    """Physical values as float, one or three bands, first stored row on top, 0 where there is no value.
    May be read in any order. `scratch` is a folder for a plain copy of packed pixels."""
    if _is_gzip(path):
        path = _gunzipped(path, facts, scratch / "unpacked.fits")
    with _opened(path) as hdus:
        hdu = hdus[facts.hdu]
        if _is_packed(hdu) or facts.bitpix == 64:
            return _written_out(hdu, facts, scratch)
        if _end_of_data(hdu, facts) > path.stat().st_size:
            raise PictureProblem(CUT_SHORT)
        offset = hdu.fileinfo()["datLoc"]
    return _physical(_mapped(path, facts, offset), facts)


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
            with path.open("rb") as stream, fits.open(stream, memmap=False, lazy_load_hdus=True) as hdus:
                yield hdus
        except (PictureProblem, pyvips.Error):
            raise
        except Exception as error:
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
    pattern = _pattern(header) if planes == 1 else None
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


def _mapped(path: Path, facts: FitsFacts, offset: int) -> pyvips.Image:
    """The stored planes as bands, straight from the file. FITS numbers have their high byte first."""
    width, height = facts.source.width_px, facts.source.height_px
    plane_bytes = _bytes_of_data(facts) // facts.planes
    planes = [
        pyvips.Image.rawload(str(path), width, height, 1, offset=offset + plane * plane_bytes, format=VIPS_FORMATS[facts.bitpix])
        for plane in range(facts.planes)
    ]
    stored = planes[0].bandjoin(planes[1:]) if len(planes) > 1 else planes[0]
    return stored.byteswap()


def _physical(stored: pyvips.Image, facts: FitsFacts) -> pyvips.Image:
    is_plain = (facts.scale, facts.zero) == (1.0, 0.0)
    exact = stored.cast("double") if facts.bitpix == 32 else stored  # a float holds 24 bits of the 32
    values = (stored if is_plain else exact * facts.scale + facts.zero).cast("float")
    if facts.bitpix < 0:
        return _finite(values)
    return values if facts.blank is None else (stored == facts.blank).ifthenelse(0, values)


def _finite(values: pyvips.Image) -> pyvips.Image:
    """Not-a-number and the infinities differ from themselves when multiplied by 0 and compared with 0."""
    return ((values * 0) == 0).ifthenelse(values, 0)


def _written_out(hdu: Any, facts: FitsFacts, scratch: Path) -> pyvips.Image:
    """Each plane decoded by astropy, as physical float values in the machine's own byte order."""
    width, height = facts.source.width_px, facts.source.height_px
    planes = []
    for plane in range(facts.planes):
        target = scratch / f"plane-{plane}.raw"
        with target.open("wb") as stream:
            for top in range(0, height, ROWS_AT_ONCE):
                stream.write(_rows(hdu, plane, top, min(top + ROWS_AT_ONCE, height)).tobytes())
        planes.append(pyvips.Image.rawload(str(target), width, height, 1, format="float"))
    return planes[0].bandjoin(planes[1:]) if len(planes) > 1 else planes[0]


def _rows(hdu: Any, plane: int, top: int, end: int) -> np.ndarray[Any, np.dtype[np.float32]]:
    axes = len(hdu.shape)
    leading = (0,) * (axes - 3) + (plane,) if axes > 2 else ()
    rows = hdu.section[(*leading, slice(top, end), slice(None))]
    values = np.asarray(rows, dtype=np.float32)
    return np.where(np.isfinite(values), values, np.float32(0))
