"""In which constellation a direction lies."""

import math
from functools import cache, lru_cache

import erfa
import numpy as np
import numpy.typing as npt

from sitegen.catalogue.tables import boundaries, constellations


@lru_cache(maxsize=4_000)
def constellation_of(ra_deg: float, dec_deg: float) -> str:
    """Full Latin name of the constellation around an ICRS direction ('Ursa Major').

    Delporte's boundaries run along the equator's grid of 1875.0: the direction is precessed to that
    equinox (IAU 2006, without aberration) and looked up in Roman (1987), PASP 99, 695 (CDS VI/42).
    """
    ra_hours, dec_1875_deg = _to_1875(ra_deg, dec_deg)
    short = next(name for low, high, south, name in boundaries() if dec_1875_deg >= south and low <= ra_hours < high)
    return _full_names()[short]


@cache
def _full_names() -> dict[str, str]:
    return {row[0]: row[1] for row in constellations()}


@cache
def _precession() -> npt.NDArray[np.float64]:
    first, second = erfa.epb2jd(1875.0)
    return np.asarray(erfa.pmat06(first, second))


def _to_1875(ra_deg: float, dec_deg: float) -> tuple[float, float]:
    """Right ascension in hours 0..24 and declination in degrees for the mean equinox B1875.0."""
    direction = erfa.s2c(math.radians(ra_deg), math.radians(dec_deg))
    longitude, latitude = erfa.c2s(_precession() @ direction)
    return math.degrees(float(longitude)) % 360.0 / 15.0, math.degrees(float(latitude))
