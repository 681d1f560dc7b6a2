"""What an hour under a bright or a low sky is worth in hours under a dark one overhead."""

import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.airmass import airmass
from sitegen.sky.arrays import Floats
from sitegen.sky.moonlight import dark_sky_nl
from sitegen.sky.twilight import twilight_nl

DAYLIGHT_ABOVE_DEG = -6.0
"""With the Sun higher than this a sub is worth nothing."""


def dark_sky_weight(
    sun_altitude_deg: ArrayLike,
    target_altitude_deg: ArrayLike,
    moonlight_mag: ArrayLike,
    extinction_mag: ArrayLike,
    sky_mag_arcsec2: ArrayLike,
) -> Floats:
    """Share of an exposure that a moonless, fully dark sky with the target overhead would have taken for the same noise.

    10^(-0.4 D) x 10^(-0.8 k (X - 1)), D = 2.5 log10(1 + (moonlight + twilight) / dark sky): the three are added as light.
    moonlight_mag is `moonlight.brightening_mag` at the target (NaN: unknown), sky_mag_arcsec2 the zenith's (NaN: unknown).
    Where the sky's photons make the noise, signal to noise goes as the signal times the root of exposure over sky
    brightness (Howell, Handbook of CCD Astronomy, 2nd ed., sec. 4.4, from memory): light lost to extinction counts twice.

    0 with the Sun above -6 deg or the target below the horizon, whatever else is unknown; NaN where the Moon is up or
    twilight not over and the dark sky unknown, and without a target or a place. Good to about 20 % in moonlight and 30 %
    in twilight. Left out: haze, seeing, the camera's noise, and that the dark sky itself is brighter low down.
    """
    sun, target = np.asarray(sun_altitude_deg, float), np.asarray(target_altitude_deg, float)
    brightened = 10.0 ** (0.4 * np.asarray(moonlight_mag, float)) + _twilight_ratio(sun, target, extinction_mag, sky_mag_arcsec2)
    weight = 10.0 ** (-0.8 * np.asarray(extinction_mag, float) * (airmass(target) - 1.0)) / brightened
    return np.where((sun > DAYLIGHT_ABOVE_DEG) | (target < 0.0), 0.0, weight)


def _twilight_ratio(sun: Floats, target: Floats, extinction_mag: ArrayLike, sky_mag_arcsec2: ArrayLike) -> Floats:
    """Twilight over the dark sky at the target; 0 after its end, how dark the sky may be."""
    twilight = twilight_nl(sun)
    ratio = twilight / dark_sky_nl(sky_mag_arcsec2, 90.0 - target, extinction_mag)
    return np.where(twilight == 0.0, 0.0, ratio)
