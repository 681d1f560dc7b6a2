"""Headers whose sky WCSLIB knows: plain ones at every turn and parity, and a real one with SIP."""

from pathlib import Path

import astropy.nddata
import numpy as np
from astropy.io import fits

from sitegen.stars.solving.headers import from_header_keywords
from sitegen.stars.solving.solution import Solution

TURNS = [(angle, parity) for angle in range(0, 360, 30) for parity in (1, -1)]
SIP_FILE = Path(astropy.nddata.__file__).parent / "tests" / "data" / "sip-wcs.fits"


def turned(angle_deg: float, parity: int, ra_deg: float = 210.8, dec_deg: float = 54.35) -> dict[str, object]:
    """A TAN header by CDELT and CROTA2, 1.2 arcsec a pixel, reference off the middle; parity -1: east to the right."""
    return {"NAXIS1": 3000, "NAXIS2": 2000, "CTYPE1": "RA---TAN", "CTYPE2": "DEC--TAN", "CRVAL1": ra_deg, "CRVAL2": dec_deg,
            "CRPIX1": 1200.5, "CRPIX2": 1100.25, "CDELT1": -parity * 1.2 / 3600, "CDELT2": 1.2 / 3600, "CROTA2": angle_deg}


def read(header: dict[str, object] | fits.Header) -> Solution:
    solution = from_header_keywords(header)
    assert isinstance(solution, Solution)
    return solution


def whole_sip_frame() -> fits.Header:
    """astropy's sip-wcs.fits is a cut of 100 x 50 pixels; its header made to be of the camera's whole 2048 x 2048."""
    header = fits.getheader(SIP_FILE)
    header.update(NAXIS1=2048, NAXIS2=2048, CRPIX1=1024.5, CRPIX2=1024.5)
    return header


def frame_points(solution: Solution) -> tuple[np.ndarray, np.ndarray]:
    x, y = np.meshgrid(np.linspace(0, solution.width_px - 1, 9), np.linspace(0, solution.height_px - 1, 7))
    return x.ravel(), y.ravel()
