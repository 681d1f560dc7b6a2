"""Where the Moon is, how wide, and how much of it is lit."""

import erfa
import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats
from sitegen.sky.sun import AU_KM, SPEED_OF_LIGHT_AU_DAY

MOON_RADIUS_KM = 1737.4


def apparent_moon(tt: tuple[float, Floats]) -> Floats:
    """Geocentric apparent Moon in km, GCRS axes; shape (..., 3).

    ERFA moon98, which is Meeus, Astronomical Algorithms, chapter 47 (10 arcsec in longitude, 4 in latitude)
    without light-time; set back here by the 1.3 s that light takes (0.7 arcsec). Annual aberration is in that:
    Earth and Moon share it.
    """
    geometric = erfa.moon98(*tt)
    travel_days = np.linalg.norm(geometric["p"], axis=-1, keepdims=True) / SPEED_OF_LIGHT_AU_DAY
    return np.asarray((geometric["p"] - geometric["v"] * travel_days) * AU_KM)


def semidiameter_deg(distance_km: ArrayLike) -> Floats:
    """Angular radius of the disc at a distance from the observer."""
    return np.asarray(np.degrees(np.arcsin(MOON_RADIUS_KM / np.asarray(distance_km, float))))


def phase_angle_deg(moon_km: Floats, sun_km: Floats) -> Floats:
    """Angle Sun-Moon-Earth from geocentric vectors (..., 3) on the same axes: 0 at full, 180 at new Moon.

    The Sun's finite distance included (Meeus eq. 48.3), which is worth 0.001 of illuminated fraction.
    """
    return angle_deg(-moon_km, sun_km - moon_km)


def illuminated_fraction(phase_angle: ArrayLike) -> Floats:
    """Lit part of the disc, 0 to 1, from the phase angle in degrees (Meeus eq. 48.1)."""
    return np.asarray((1.0 + np.cos(np.radians(phase_angle))) / 2.0)


def angle_deg(vector: Floats, other: Floats) -> Floats:
    """Angle between vectors (..., 3), of any length, exact near 0 and 180 too."""
    return np.asarray(np.degrees(erfa.sepp(vector, other)))
