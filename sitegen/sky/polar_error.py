"""What a mount's axis that misses the pole does to a picture: stars drift, and the field turns.

Source: the rotation of a sphere about a displaced axis, to first order in the error; derived, and held against rotation matrices
in `tests/sky/test_polar_error.py`. Its relative error is the polar error in radians times tan(declination). Refraction is left
out; below some 30 degrees of altitude it turns the field too.
"""

import math

SIDEREAL_RAD_S = 7.292115e-5
"""How fast the sky turns (IERS Conventions 2010, table 1.1: the Earth's nominal mean angular velocity)."""
NEAR_POLE_DEG = 1.0
"""Closer to the pole the formulae do not hold."""
TYPICAL_SHARE = 2.0 / math.pi
"""Mean of |cos| over all directions: what the worst case comes to where the direction of the error is not known."""


def greatest_drift_arcsec_min(error_arcmin: float) -> float:
    """How fast stars move over the sensor at most where nothing guides, whatever their declination."""
    return 60.0 * error_arcmin * SIDEREAL_RAD_S * 60.0


def greatest_turn_rad(error_arcmin: float, exposure_s: float, dec_deg: float) -> float | None:
    """By how much the field turns about the guide star at most during an exposure. None within a degree of the pole."""
    if abs(dec_deg) > 90.0 - NEAR_POLE_DEG:
        return None
    return math.radians(error_arcmin / 60.0) * SIDEREAL_RAD_S * exposure_s / math.cos(math.radians(dec_deg))
