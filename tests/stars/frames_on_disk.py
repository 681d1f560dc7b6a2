"""Frames with known truth as real files, made by the libraries that own their formats."""

import gzip

import numpy as np
from astropy.io import fits

HEADER = {
    "DATE-OBS": "2026-09-12T12:30:00",
    "EXPTIME": 10.0,
    "XBINNING": 2,
    "XPIXSZ": 7.52,
    "FOCALLEN": 1000.0,
    "SITELAT": -32.634,
    "SITELONG": 139.018,
    "OBSERVER": "keeper on duty",
}


def write_fits(path, pixels, **keywords):
    """By the name's ending: .fits plain, .fz tile-compressed, .gz gzipped. A keyword of None is left out."""
    header = fits.Header()
    given = {key.replace("_", "-"): value for key, value in keywords.items()}
    for key, value in {**HEADER, **given}.items():
        if value is not None:
            header[key] = value
    if path.suffix == ".fz":
        fits.HDUList([fits.PrimaryHDU(), fits.CompImageHDU(pixels, header)]).writeto(path)
        return path
    plain = path.with_suffix(".plain") if path.suffix == ".gz" else path
    fits.PrimaryHDU(pixels, header).writeto(plain)
    if path.suffix == ".gz":
        path.write_bytes(gzip.compress(plain.read_bytes(), 1))
        plain.unlink()
    return path


def ramp(height=66, width=80, dtype=np.uint16):
    """Pixels that are all different along the rows, so that a flip, a turn or a shift shows."""
    values = np.arange(height * width).reshape(height, width)
    return (values % 251 if dtype == np.uint8 else values + 40_000 * (dtype == np.uint16)).astype(dtype)
