"""When a smooth curve crosses zero: samples bracket it, the exact curve refines it."""

from collections.abc import Callable

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.sky.arrays import Floats, Indices

Curve = Callable[[Indices, Floats], Floats]
"""Value of the curves of the given rows at the given times, one each."""

# Not scipy's find_root, which takes 0.45 s to load: half of what a changed sentence may take, whose nights are asked for anew.

TIME_TOLERANCE_S = 0.02
MOST_STEPS = 40


class Crossings(Struct, frozen=True, eq=False):
    """Zero crossings of many curves in order of row, then time; `rising` where the curve goes up."""

    row: Indices
    time_s: Floats
    rising: NDArray[np.bool_]


def refine(curve: Curve, row: Indices, low_s: Floats, high_s: Floats) -> Floats:
    """The zero of each row's curve between two times of opposite sign, to 0.02 s (Illinois rule)."""
    a, b = low_s.astype(float), high_s.astype(float)
    fa, fb = curve(row, a), curve(row, b)
    for _ in range(MOST_STEPS):
        c = np.where(fb == fa, b, b - fb * (b - a) / np.where(fb == fa, 1.0, fb - fa))
        fc = curve(row, c)
        flipped = np.signbit(fc) != np.signbit(fb)
        a, fa = np.where(flipped, b, a), np.where(flipped, fb, fa / 2.0)
        done = np.abs(c - b) < TIME_TOLERANCE_S
        b, fb = c, fc
        if np.all(done | (fc == 0.0)):
            break
    return b


def crossings(curve: Curve, times_s: Floats, samples: Floats) -> Crossings:
    """Every crossing of rows sampled at times_s (rows, T), those between two samples on one side included."""
    row, at = np.nonzero((samples[:, 1:] > 0.0) != (samples[:, :-1] > 0.0))
    peak_row, peak_s, before_s, after_s = hidden_peaks(curve, times_s, samples)
    rows = np.concatenate([row, peak_row, peak_row])
    low = np.concatenate([times_s[row, at], before_s, peak_s])
    high = np.concatenate([times_s[row, at + 1], peak_s, after_s])
    if not rows.size:
        return Crossings(rows, low, np.zeros(0, bool))
    moments_s = refine(curve, rows, low, high)
    rising = curve(rows, high) > 0.0
    order = np.lexsort((moments_s, rows))
    return Crossings(rows[order], moments_s[order], rising[order])


def hidden_peaks(curve: Curve, times_s: Floats, samples: Floats) -> tuple[Indices, Floats, Floats, Floats]:
    """Extremes between samples that reach across zero though no sample does: row, time, samples' times around."""
    left, middle, right = samples[:, :-2], samples[:, 1:-1], samples[:, 2:]
    same_side = ((left > 0.0) == (middle > 0.0)) & ((right > 0.0) == (middle > 0.0))
    nearest = (np.abs(middle) <= np.abs(left)) & (np.abs(middle) <= np.abs(right))
    row, at = np.nonzero(same_side & nearest)
    peak_s = vertex(times_s, samples, row, at + 1)
    across = (curve(row, peak_s) > 0.0) != (samples[row, at + 1] > 0.0) if row.size else np.zeros(0, bool)
    row, at, peak_s = row[across], at[across], peak_s[across]
    return row, peak_s, times_s[row, at], times_s[row, at + 2]


def vertex(times_s: Floats, samples: Floats, row: Indices, at: Indices) -> Floats:
    """Time of the extreme of the parabola through samples at-1, at, at+1 of evenly spaced rows."""
    left, middle, right = samples[row, at - 1], samples[row, at], samples[row, at + 1]
    bend = left - 2.0 * middle + right
    step_s = times_s[row, at + 1] - times_s[row, at]
    shift = np.where(bend == 0.0, 0.0, (left - right) / np.where(bend == 0.0, 1.0, 2.0 * bend))
    return np.asarray(times_s[row, at] + np.clip(shift, -1.0, 1.0) * step_s)
