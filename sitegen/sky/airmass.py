"""How much air a target is seen through."""

import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats
from sitegen.sky.refraction import refraction_deg


def kasten_young(apparent_altitude_deg: ArrayLike) -> Floats:
    """Relative optical airmass (Kasten & Young 1989, Applied Optics 28, 4735).

    Takes the refracted altitude, 0 to 90 deg; within 0.5 % of their table; 0.9997 at the zenith.
    """
    apparent = np.asarray(apparent_altitude_deg, float)
    return np.asarray(1.0 / (np.sin(np.radians(apparent)) + 0.50572 * (apparent + 6.07995) ** -1.6364))


def airmass(airless_altitude_deg: ArrayLike) -> Floats:
    """Kasten & Young at the refracted altitude; NaN where the airless altitude is below 0 or NaN."""
    altitude = np.asarray(airless_altitude_deg, float)
    shown = np.where(altitude >= 0.0, altitude, 0.0)
    return np.where(altitude >= 0.0, kasten_young(shown + refraction_deg(shown)), np.nan)
