"""What moonlit hours are worth in hours under a dark sky."""

import numpy as np
from numpy.typing import ArrayLike


def dark_equivalent_s(exposure_s: ArrayLike, brightening_mag: ArrayLike) -> float | None:
    """Dark-sky time that meets the same sky-limited noise: the sum of exposure x 10^(-0.4 brightening).

    Where the sky's photons make the noise, signal to noise goes as the root of exposure over sky
    brightness (Howell, Handbook of CCD Astronomy, 2nd ed., sec. 4.4, from memory), so a sky twice as bright
    halves the time. None where any brightening is unknown (NaN); 0.0 for no subs.
    """
    total_s = float(np.sum(np.asarray(exposure_s, float) * 10.0 ** (-0.4 * np.asarray(brightening_mag, float))))
    return None if np.isnan(total_s) else total_s
