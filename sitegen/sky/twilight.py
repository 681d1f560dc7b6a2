"""Scattered sunlight in the sky overhead, from civil twilight to its end, in nanolamberts of the V band.

F. Patat, O. S. Ugolnikov & O. V. Postylyakov 2006, A&A 455, 385, table 1: the whole sky at the zenith of Paranal as a
parabola in the Sun's zenith distance, 95 to 105 deg, with a scatter of 0.18 mag. The night sky in it is that of F. Patat
2003, A&A 400, 1183. Both rows were read in transcriptions that agree, not in the papers themselves.
A site at low altitude is about 30 % brighter (the paper's abstract). The direction to the Sun is not modelled.
"""

import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats
from sitegen.sky.moonlight import mag_arcsec2, nanolamberts

PARABOLA_V = (11.84, 1.518, -0.057)
"""V magnitudes per square arcsecond: constant, per degree and per degree squared beyond PARABOLA_FROM_DEG."""
PARABOLA_FROM_DEG = 95.0
PARABOLA_TO_DEG = 103.0
"""Zenith distances of the Sun. Beyond 103 the parabola flattens towards its turn at 108.3 and is not used."""
NIGHT_V = 21.61
ENDS_DEG = -18.0


def whole_sky_mag(sun_zenith_distance_deg: ArrayLike) -> Floats:
    """The twilit sky, the night's own light included: the paper's parabola, meant for 95 to 105 deg."""
    beyond = np.asarray(sun_zenith_distance_deg, float) - PARABOLA_FROM_DEG
    constant, slope, bend = PARABOLA_V
    return np.asarray(constant + slope * beyond + bend * beyond**2)


def _measured_nl(sun_zenith_distance_deg: ArrayLike) -> Floats:
    return np.asarray(nanolamberts(whole_sky_mag(sun_zenith_distance_deg)) - nanolamberts(NIGHT_V))


def _tangent() -> tuple[float, float]:
    """Magnitude of the twilight alone where the parabola is left, and how many magnitudes a degree it fades there."""
    alone_nl, whole_mag = float(_measured_nl(PARABOLA_TO_DEG)), float(whole_sky_mag(PARABOLA_TO_DEG))
    whole_slope = PARABOLA_V[1] + 2.0 * PARABOLA_V[2] * (PARABOLA_TO_DEG - PARABOLA_FROM_DEG)
    return float(mag_arcsec2(alone_nl)), whole_slope * float(nanolamberts(whole_mag)) / alone_nl


TANGENT_MAG, TANGENT_SLOPE = _tangent()


def twilight_nl(sun_altitude_deg: ArrayLike) -> Floats:
    """Sunlight in the sky, the night's own light taken off. NaN with the Sun above -5 deg, 0 at -18 deg and below.

    Beyond 103 deg from the zenith it goes straight on in magnitudes with the slope there (own extension: the measured
    curve is lost in the night). The end at -18 deg is a step of less than 0.05 mag for a sky of 21.5.
    """
    altitude = np.asarray(sun_altitude_deg, float)
    distance = 90.0 - altitude
    extended = nanolamberts(TANGENT_MAG + TANGENT_SLOPE * (distance - PARABOLA_TO_DEG))
    light = np.where(distance <= PARABOLA_TO_DEG, _measured_nl(distance), extended)
    return np.where(altitude <= ENDS_DEG, 0.0, np.where(distance >= PARABOLA_FROM_DEG, light, np.nan))
