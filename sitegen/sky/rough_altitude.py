"""Altitudes to a tenth of a degree, for many moments at once and any number of clocks tried: to doubt a log, never to be printed.

UTC stands for UT1 and TT but for the 69 s between them (0.9 s and some seconds: 0.004°); nutation, aberration, refraction and
parallax (0.02° in all) are left out.
"""

import erfa
import numpy as np

from sitegen.sky.arrays import Floats
from sitegen.sky.diurnal_path import altitude_deg
from sitegen.sky.solar_time import DAY_S

UNIX_EPOCH_DAYS_OF_J2000 = -10957.5
TT_MINUS_UTC_S = 69.184
_J2000_JD = 2451545.0


def sun_altitude_deg(unix_s: Floats, latitude_deg: float, longitude_deg: float) -> Floats:
    """Of the Sun's centre; its place to 0.01° from 1950 to 2050 (The Astronomical Almanac, section C, low precision formulas)."""
    days = _days(unix_s + TT_MINUS_UTC_S)
    anomaly = np.radians(357.528 + 0.9856003 * days)
    ecliptic = np.radians(280.460 + 0.9856474 * days + 1.915 * np.sin(anomaly) + 0.020 * np.sin(2 * anomaly))
    tilt = np.radians(23.439 - 0.0000004 * days)
    ra = np.arctan2(np.cos(tilt) * np.sin(ecliptic), np.cos(ecliptic))
    dec = np.arcsin(np.sin(tilt) * np.sin(ecliptic))
    return _altitude(unix_s, ra, np.degrees(dec), latitude_deg, longitude_deg)


def fixed_altitude_deg(unix_s: Floats, ra_deg: float, dec_deg: float, latitude_deg: float, longitude_deg: float) -> Floats:
    """Of an ICRS place, precessed to the middle of the moments (IAU 2006)."""
    if not len(unix_s):
        return np.empty(0)
    ra, dec = of_date(ra_deg, dec_deg, float(np.median(unix_s)))
    return _altitude(unix_s, np.radians(ra), dec, latitude_deg, longitude_deg)


def of_date(ra_deg: float, dec_deg: float, unix_s: float) -> tuple[float, float]:
    """An ICRS place on the mean equator and equinox of the date, degrees."""
    matrix = erfa.pmat06(_J2000_JD, float(_days(np.asarray(unix_s))))
    ra, dec = erfa.c2s(matrix @ erfa.s2c(np.radians(ra_deg), np.radians(dec_deg)))
    return float(np.degrees(ra)) % 360, float(np.degrees(dec))


def _days(unix_s: Floats) -> Floats:
    return np.asarray(unix_s / DAY_S + UNIX_EPOCH_DAYS_OF_J2000)


def _altitude(unix_s: Floats, ra_rad: Floats, dec_deg: Floats | float, latitude_deg: float, longitude_deg: float) -> Floats:
    """With Greenwich's mean sidereal time (Meeus, Astronomical Algorithms, eq. 12.4, first terms)."""
    sidereal_deg = 280.46061837 + 360.98564736629 * _days(unix_s) + longitude_deg
    return altitude_deg(latitude_deg, dec_deg, np.radians(sidereal_deg) - ra_rad)
