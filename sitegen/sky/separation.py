"""How far apart two places on the sky are."""

import erfa
import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats


def separation_deg(ra_deg: ArrayLike, dec_deg: ArrayLike, other_ra_deg: ArrayLike, other_dec_deg: ArrayLike) -> Floats:
    """Great-circle angle, 0 to 180, of numbers or arrays; by ERFA's seps, exact for small angles and near opposite places too."""
    angles_rad = (np.radians(np.asarray(angle, float)) for angle in (ra_deg, dec_deg, other_ra_deg, other_dec_deg))
    return np.asarray(np.degrees(erfa.seps(*angles_rad)))
