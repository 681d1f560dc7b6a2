"""Guiding errors of one exposure: their RMS about the mean, and their drift.

The RMS keeps the drift and leaves out the offset, since a star that stands beside its place all along makes no star wider. Common
practice, no source; worked examples in `tests/sky/test_guiding.py`.
"""

import math
from typing import NamedTuple

import numpy as np

from sitegen.sky.arrays import Floats

FEWEST_SAMPLES = 10
LEAST_COVERED = 0.8
GAP_IN_CADENCES = 3.0
"""A pause longer than so many usual intervals is not covered."""


class Guiding(NamedTuple):
    ra_rms_arcsec: float
    dec_rms_arcsec: float
    drift_arcsec_min: float

    @property
    def rms_arcsec(self) -> float:
        return math.hypot(self.ra_rms_arcsec, self.dec_rms_arcsec)


def covered_share(times_s: Floats, start_s: float, end_s: float) -> float:
    """Share of the span from start to end that samples at these times cover, 0 to 1; both ends count as gaps like any other."""
    if len(times_s) < 2:
        return 0.0
    cadence_s = float(np.median(np.diff(times_s)))
    gaps_s = np.diff(np.concatenate(([start_s], times_s, [end_s])))
    return 1.0 - float(gaps_s[gaps_s > GAP_IN_CADENCES * cadence_s].sum()) / (end_s - start_s)


def guiding_of(times_s: Floats, ra_arcsec: Floats, dec_arcsec: Floats, start_s: float, end_s: float) -> Guiding | None:
    """Samples inside an exposure, in order of time, RA error on the sky. None below ten of them or four fifths of it covered."""
    if len(times_s) < FEWEST_SAMPLES or covered_share(times_s, start_s, end_s) < LEAST_COVERED:
        return None
    slopes = [_slope(times_s, errors) for errors in (ra_arcsec, dec_arcsec)]
    return Guiding(float(np.std(ra_arcsec)), float(np.std(dec_arcsec)), 60.0 * math.hypot(*slopes))


def _slope(times_s: Floats, errors: Floats) -> float:
    """Of the straight line through them, by least squares."""
    centred = times_s - times_s.mean()
    spread = float(centred @ centred)
    return float(centred @ errors) / spread if spread else 0.0
