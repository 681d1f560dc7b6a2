"""Which detections rise as steeply as stars do: compact knots of a nebula are brighter than many stars, but softer.

The steepest slope of a star is that of the picture's own point spread. It grows with the star's brightness and, where a
stretch or a full well levels bright stars, no longer; it never falls. So what is much flatter than stars of no more than its
own peak is no star.
"""

import numpy as np
import numpy.typing as npt
from scipy import ndimage

from sitegen.stars.solving.tangent_plane import FloatArray

_ALIKE_SHARE, _ALIKE = 0.15, (7, 40)
"""Of the detections, and no fewer or more than so many: those of about one peak, of which the steep ones are the stars."""

_STEEP_QUANTILE = 0.8
_LEAST_SHARE = 0.7
"""Of the slope of stars as bright: least slope of a star, whose centre may lie between pixels or in another's light."""


def steepest_slopes(plane: npt.NDArray[np.float32], segments: npt.NDArray[np.int32], count: int) -> FloatArray:
    """The largest gradient within each of the count segments (numbered from 1), in the picture's unit a pixel."""
    across, down = (ndimage.sobel(plane, axis=axis, mode="nearest") for axis in (1, 0))
    slope = np.hypot(across, down) / 8
    inside = np.flatnonzero(segments)
    inside = inside[np.argsort(segments.ravel()[inside], kind="stable")]
    starts = np.searchsorted(segments.ravel()[inside], np.arange(1, count + 1))
    return np.maximum.reduceat(slope.ravel()[inside], starts).astype(np.float64) if count else np.empty(0)


def star_like(peaks: FloatArray, slopes: FloatArray) -> npt.NDArray[np.bool_]:
    """Whether each detection is nearly as steep as the steep ones among those of about its peak, and of any lower one."""
    if len(peaks) == 0:
        return np.zeros(0, dtype=bool)
    order = np.argsort(peaks, kind="stable")
    usual = _usual_slopes(peaks[order], slopes[order])
    alike = np.empty(len(order), dtype=bool)
    alike[order] = slopes[order] >= _LEAST_SHARE * np.maximum.accumulate(usual)
    return alike


def _usual_slopes(peaks: FloatArray, slopes: FloatArray) -> FloatArray:
    """Of the steep ones among the neighbours in peak, which are sorted. A brighter star is steeper, at most in proportion to its
    peak: where bright stars are few, a neighbour of three times the peak says what a third of its slope would."""
    half = int(np.clip(_ALIKE_SHARE * len(peaks), *_ALIKE)) // 2
    around = np.clip(np.arange(len(peaks))[:, None] + np.arange(-half, half + 1), 0, len(peaks) - 1)
    expected = slopes[around] * np.minimum(1.0, peaks[:, None] / peaks[around])
    return np.asarray(np.quantile(expected, _STEEP_QUANTILE, axis=1))
