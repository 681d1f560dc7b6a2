"""Where the Sun is."""

import erfa
import numpy as np

from sitegen.sky.arrays import Floats

AU_KM = 149597870.7
SPEED_OF_LIGHT_AU_DAY = 173.144632674
RISE_ALTITUDE_DEG = -50.0 / 60.0
"""Centre of the Sun at sunrise and sunset: 34' of refraction and 16' of semidiameter (almanac convention)."""
NAUTICAL_ALTITUDE_DEG = -12.0
DARK_ALTITUDE_DEG = -18.0


def earth_velocity(tt: tuple[float, Floats]) -> Floats:
    """Barycentric velocity of the Earth in units of the speed of light, GCRS axes; shape (..., 3)."""
    _, barycentric = erfa.epv00(*tt)
    return np.asarray(barycentric["v"] / SPEED_OF_LIGHT_AU_DAY)


def apparent_sun(tt: tuple[float, Floats]) -> Floats:
    """Geocentric apparent Sun in km, GCRS axes, aberration included; shape (..., 3).

    ERFA epv00 (VSOP2000, 0.01 arcsec) and first-order aberration (second order: 0.001 arcsec).
    """
    heliocentric, barycentric = erfa.epv00(*tt)
    sun = -heliocentric["p"]
    distance = np.linalg.norm(sun, axis=-1, keepdims=True)
    return np.asarray(AU_KM * (sun + distance * barycentric["v"] / SPEED_OF_LIGHT_AU_DAY))
