"""Small real FITS files: honest headers, constant pixels. Five dialects of headers, put together from the keywords of the FITS
standard and from common practice, no program's own."""

import gzip
import io
from collections.abc import Callable, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
from astropy.io import fits
from msgspec import Struct

from tests.disk.truth import Place

BLOCK = 2880
Cards = dict[str, Any]


class Train(Struct, frozen=True):
    """Telescope and camera of one rig; the size of the frame in unbinned pixels."""

    rig: str
    focal_length_mm: float
    aperture_mm: float
    pixel_um: float
    width_px: int
    height_px: int
    colour: str = "mono"
    telescope: str = "Tube"
    camera: str = "Camera"
    binning: int = 1


class Shot(Struct, frozen=True):
    """What a camera did, and what it was told. `filter` as the header spells it. `cards` win over the dialect's."""

    start: datetime
    exposure_s: float
    train: Train
    place: Place
    object: str = ""
    ra_deg: float | None = None
    dec_deg: float | None = None
    filter: str | None = None
    kind: str = "light"
    bits: int = 8
    cards: Mapping[str, Any] = {}


Dialect = Callable[[Shot], Cards]


def plain(shot: Shot) -> Cards:
    """UTC and said so; pointing in degrees; the observer's place in sexagesimal."""
    cards: Cards = {"IMAGETYP": f"{shot.kind.capitalize()} Frame", "EXPTIME": shot.exposure_s, "OBJECT": shot.object}
    cards |= {"DATE-OBS": _iso(shot.start), "TIMESYS": "UTC"}
    cards |= {"SITELAT": _sexagesimal(shot.place.latitude_deg), "SITELONG": _sexagesimal(shot.place.longitude_deg)}
    return cards | _train(shot) | _filter(shot) | _degrees(shot)


def whole_seconds(shot: Shot) -> Cards:
    """As `plain`, but the clock gives no fractions and nothing says that it is UTC, which is what the standard takes it for."""
    cards = plain(shot) | {"DATE-OBS": shot.start.strftime("%Y-%m-%dT%H:%M:%S")}
    del cards["TIMESYS"]
    return cards


def by_the_standard(shot: Shot) -> Cards:
    """DATE-BEG, XPOSURE, OBSGEO and a plate solution; kinds in lower case."""
    cards: Cards = {"OBSTYPE": shot.kind, "XPOSURE": shot.exposure_s, "OBJECT": shot.object, "DATE-BEG": _iso(shot.start)}
    cards |= {"TIMESYS": "UTC", "OBSGEO-B": shot.place.latitude_deg, "OBSGEO-L": shot.place.longitude_deg, "OBSGEO-H": 120.0}
    return cards | _train(shot) | _filter(shot) | _solution(shot)


def local_clock(shot: Shot) -> Cards:
    """The clock on the wall, and nothing that says so."""
    cards: Cards = {"IMAGETYP": shot.kind.upper(), "EXPOSURE": shot.exposure_s, "OBJECT": shot.object}
    cards |= {"DATE-OBS": _iso(shot.start.astimezone(ZoneInfo(shot.place.time_zone)))}
    return cards | _train(shot) | _filter(shot) | _hours(shot)


def told_local(shot: Shot) -> Cards:
    """The clock on the wall, and TIMESYS says so."""
    return local_clock(shot) | {"TIMESYS": "LOCAL"}


def old(shot: Shot) -> Cards:
    """The form of dates before 2000, and the clock in a card of its own (FITS Standard 4.0, section 4.4.2.1)."""
    cards: Cards = {"IMAGETYP": "OBJECT" if shot.kind == "light" else shot.kind.upper(), "EXPTIME": shot.exposure_s}
    cards |= {"DATE-OBS": shot.start.strftime("%d/%m/%y"), "UT": shot.start.strftime("%H:%M:%S.") + f"{_hundredths(shot):02d}"}
    return cards | {"OBJECT": shot.object} | _train(shot) | _filter(shot) | _hours(shot)


def write_frame(path: Path, shot: Shot, dialect: Dialect) -> None:
    """Plain, gzipped or tile-compressed, as the name ends. A plain file's pixels are a hole that reads as zeros."""
    path.parent.mkdir(parents=True, exist_ok=True)
    width, height = shot.train.width_px // shot.train.binning, shot.train.height_px // shot.train.binning
    cards = {key: value for key, value in (dialect(shot) | dict(shot.cards)).items() if value is not None}
    if path.name.endswith(".fz"):
        fits.CompImageHDU(np.zeros((height, width), np.uint8), fits.Header(cards)).writeto(path)
        return
    layout = {"SIMPLE": True, "BITPIX": shot.bits, "NAXIS": 2, "NAXIS1": width, "NAXIS2": height}
    header = fits.Header(layout | cards).tostring(endcard=True, padding=True).encode("ascii")
    size = len(header) + -(-width * height * abs(shot.bits) // 8 // BLOCK) * BLOCK
    if path.name.endswith(".gz"):
        path.write_bytes(gzip.compress(header.ljust(size, b"\0"), compresslevel=1, mtime=0))
        return
    with path.open("wb") as file:
        file.write(header)
        file.truncate(size)


def jpeg_with_date(moment: datetime) -> bytes:
    """A camera's own small picture beside its frame."""
    from PIL import Image
    from PIL.ExifTags import IFD, Base

    exif, out = Image.Exif(), io.BytesIO()
    exif.get_ifd(IFD.Exif)[Base.DateTimeOriginal] = moment.strftime("%Y:%m:%d %H:%M:%S")
    Image.new("RGB", (24, 18)).save(out, "JPEG", exif=exif)
    return out.getvalue()


def _train(shot: Shot) -> Cards:
    train = shot.train
    cards: Cards = {"TELESCOP": train.telescope, "INSTRUME": train.camera, "FOCALLEN": train.focal_length_mm}
    cards |= {"XPIXSZ": train.pixel_um * train.binning, "XBINNING": train.binning, "GAIN": 100, "CCD-TEMP": -10.0}
    return cards | ({"BAYERPAT": "RGGB"} if train.colour == "colour" else {})


def _filter(shot: Shot) -> Cards:
    return {} if shot.filter is None else {"FILTER": shot.filter}


def _degrees(shot: Shot) -> Cards:
    return {} if shot.ra_deg is None or shot.dec_deg is None else {"RA": round(shot.ra_deg, 5), "DEC": round(shot.dec_deg, 5)}


def _solution(shot: Shot) -> Cards:
    if shot.ra_deg is None or shot.dec_deg is None:
        return {}
    place = {"CRVAL1": round(shot.ra_deg, 5), "CRVAL2": round(shot.dec_deg, 5)}
    return {"CTYPE1": "RA---TAN", "CTYPE2": "DEC--TAN"} | place


def _hours(shot: Shot) -> Cards:
    if shot.ra_deg is None or shot.dec_deg is None:
        return {}
    return {"OBJCTRA": _sexagesimal(shot.ra_deg / 15), "OBJCTDEC": _sexagesimal(shot.dec_deg)}


def _sexagesimal(value: float) -> str:
    """To a tenth of a second: '-25 17 18.0'."""
    tenths = round(abs(value) * 36_000)
    minutes, seconds = divmod(tenths, 600)
    return f"{'-' if value < 0 else ''}{minutes // 60:02d} {minutes % 60:02d} {seconds / 10:04.1f}"


def _iso(moment: datetime) -> str:
    return moment.replace(tzinfo=None).isoformat(timespec="milliseconds")


def _hundredths(shot: Shot) -> int:
    return shot.start.microsecond // 10_000
