"""Phases of the Moon: names by the elongation in apparent ecliptic longitude, and the new Moon before a moment."""

import erfa
import numpy as np

from sitegen.sky.arrays import Floats
from sitegen.sky.moon import apparent_moon
from sitegen.sky.sun import apparent_sun

PHASE_NAMES = (
    "new", "waxing crescent", "first quarter", "waxing gibbous",
    "full", "waning gibbous", "last quarter", "waning crescent",
)  # fmt: skip
MEAN_NEW_MOON_JDE = 2451550.09766
SYNODIC_MONTH_DAYS = 29.530588861
DEGREES_PER_DAY = 360.0 / SYNODIC_MONTH_DAYS


def elongation_deg(moon: Floats, sun: Floats, to_ecliptic: Floats) -> Floats:
    """Moon's ecliptic longitude less the Sun's, 0 to 360, from vectors (..., 3) and matrices (..., 3, 3)."""
    return (ecliptic_longitude_deg(moon, to_ecliptic) - ecliptic_longitude_deg(sun, to_ecliptic)) % 360.0


def ecliptic_longitude_deg(vector: Floats, to_ecliptic: Floats) -> Floats:
    """Longitude, -180 to 180, of vectors (..., 3)."""
    longitude_rad, _ = erfa.c2s(erfa.rxp(to_ecliptic, vector))
    return np.asarray(np.degrees(longitude_rad))


def phase_names(start_deg: Floats, end_deg: Floats) -> list[str]:
    """Name of each night from the elongations at its two noons.

    A principal phase (0, 90, 180, 270 deg of elongation, as almanacs define it) names the night that
    contains its instant; all others have the phase between. The opening noon belongs to the night.
    """
    before = np.ceil(start_deg / 90.0 - 1e-12).astype(int)
    end = np.where(end_deg < start_deg, end_deg + 360.0, end_deg)
    principal = end > 90.0 * before
    names = np.where(principal, 2 * before, 2 * before - 1) % 8
    return [PHASE_NAMES[name] for name in names]


def principal_phase(lunation: Floats) -> tuple[float, Floats]:
    """TT (two-part Julian date) at which the elongation is 360 x the fractional lunation.

    Lunations count from the new Moon of 2000-01-06 (Meeus, Astronomical Algorithms, eq. 49.2): -283 is the
    new Moon of February 1977, -282.75 the first quarter after it. Good to 20 s, the Moon's series.
    """
    wanted_deg = 360.0 * (lunation % 1.0)
    days = SYNODIC_MONTH_DAYS * lunation
    for _ in range(10):
        days = days - wrapped_deg(elongation_at((MEAN_NEW_MOON_JDE, days)) - wanted_deg) / DEGREES_PER_DAY
    return MEAN_NEW_MOON_JDE, days


def elongation_at(tt: tuple[float, Floats]) -> Floats:
    """Geocentric elongation at a moment, degrees."""
    return elongation_deg(apparent_moon(tt), apparent_sun(tt), erfa.ecm06(*tt))


def wrapped_deg(angle: Floats) -> Floats:
    """Into -180 to 180."""
    return np.asarray((angle + 180.0) % 360.0 - 180.0)


def age_days(tt: tuple[float, Floats], elongation: Floats) -> Floats:
    """Days since the last new Moon, for moments whose elongation in degrees is known."""
    epoch, days = tt
    since_first = days + (epoch - MEAN_NEW_MOON_JDE)
    lunation, back = np.unique(np.rint((since_first - elongation / DEGREES_PER_DAY) / SYNODIC_MONTH_DAYS), return_inverse=True)
    _, new_moon = principal_phase(lunation)
    return np.maximum(since_first - new_moon[back.reshape(-1)], 0.0)
