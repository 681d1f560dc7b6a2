"""What a FITS header says of pointing, place and camera: one answer for gathering and for reading."""

from pathlib import Path
from typing import Any

import numpy as np
import pytest
from astropy.io import fits

from sitegen.authoring.captures.fits_record import fits_record
from sitegen.reading.capture_logs.fits_header import read_header
from sitegen.reading.capture_logs.fits_origin import fits_origin
from sitegen.reading.capture_logs.fits_told import told_by

FRAME = {"IMAGETYP": "Light Frame", "EXPTIME": 60.0, "DATE-OBS": "2026-05-09T12:00:00", "TIMESYS": "UTC"}


def _written(path: Path, cards: dict[str, Any]) -> Path:
    hdu = fits.PrimaryHDU(np.zeros((4, 4), np.uint16))
    hdu.header.update({**FRAME, **cards})
    hdu.writeto(path)
    return path


@pytest.mark.parametrize(
    ("cards", "pointing"),
    [
        ({"RA": 10.684712, "DEC": 41.268750}, (10.68471, 41.26875)),
        ({"RA": 0.00005, "DEC": -0.00002}, (0.00005, -0.00002)),
        ({"RA": -5.0, "DEC": 10.0}, (355.0, 10.0)),
        ({"RA": "1.5E+02", "DEC": "2.0E+01"}, (150.0, 20.0)),
        ({"OBJCTRA": "00 42 44.3", "OBJCTDEC": "+41 16 09"}, (10.68458, 41.26917)),
        ({"RA": "83 49 06", "DEC": "-0 30"}, (83.81833, -0.5)),
        ({"RA": "23 59 59.9", "DEC": "+89 59 59"}, (359.99958, 89.99972)),
        ({"RA": 0.0, "DEC": 0.0}, None),
        ({"RA": 0.0, "DEC": 0.0, "OBJCTRA": "10 00 00", "OBJCTDEC": "-30 00 00"}, (150.0, -30.0)),
        ({"RA": 12.0, "DEC": 95.0}, None),
        ({"CTYPE1": "RA---TAN", "CTYPE2": "DEC--TAN", "CRVAL1": 370.0, "CRVAL2": 5.0}, (10.0, 5.0)),
    ],
)
def test_pointing(cards: dict[str, Any], pointing: tuple[float, float] | None, tmp_path: Path) -> None:
    path = _written(tmp_path / "frame.fits", cards)
    header, record = read_header(path), fits_record(path)
    origin = fits_origin(header, told_by(header))
    assert (origin.ra_deg, origin.dec_deg) == (record.ra_deg, record.dec_deg) == (pointing or (None, None))


def test_place_and_camera(tmp_path: Path) -> None:
    """Longitudes counted from 0 to 360 are the same place; nothing finer than 0.1° is remembered."""
    path = _written(tmp_path / "frame.fits", {"SITELAT": "-36 51 02", "SITELONG": 184.66, "CAMSN": "A12"})
    header, record = read_header(path), fits_record(path)
    origin = fits_origin(header, told_by(header))
    told = (-36.9, -175.3, "A12")
    assert (origin.latitude_deg, origin.longitude_deg, origin.camera_id) == told
    assert (record.latitude_deg, record.longitude_deg, record.camera_id) == told
