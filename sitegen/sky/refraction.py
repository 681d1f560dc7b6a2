"""Bending of light in the air."""

import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats

HORIZON_REFRACTION_DEG = 34.0 / 60.0
"""What almanacs take for every rise and set."""


def refraction_deg(airless_altitude_deg: ArrayLike) -> Floats:
    """Saemundsson's formula at 1010 hPa and 10 C (Meeus, Astronomical Algorithms, eq. 16.4).

    Within 4 arcseconds of Bennett's, itself good to 0.07 arcminutes above the horizon (Meeus p. 106, from
    memory). Below -1 deg the formula means nothing; the value at -1 deg is kept there.
    """
    altitude = np.maximum(np.asarray(airless_altitude_deg, float), -1.0)
    arcmin = 1.02 / np.tan(np.radians(altitude + 10.3 / (altitude + 5.11)))
    return np.asarray(arcmin / 60.0)
