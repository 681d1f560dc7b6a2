"""The field model's moments and errors, worked by hand."""

import numpy as np
import pytest
from msgspec.structs import replace

from sitegen.stars import field_model
from tests.stars.test_pattern import survey_of

NINE = slice(0, 9)


def test_moments_are_those_of_the_axes() -> None:
    """Axes of 3.3 and 3.0 px at 30°: T = (a² + b²)/2, S = (a² − b²)/2 · (cos 60°, sin 60°), in units of a·b (worked by hand)."""
    width, elongation = np.sqrt(3.3 * 3.0), 3.3 / 3.0
    zones = survey_of(lambda u, v: width, lambda u, v: elongation, lambda u, v: 30.0).zones
    moments = field_model._moments(list(zones[NINE]))
    assert moments.t == pytest.approx((3.3**2 + 3.0**2) / 2 / 9.9, rel=1e-12)
    assert moments.s1 == pytest.approx((3.3**2 - 3.0**2) / 2 / 9.9 * 0.5, rel=1e-12)
    assert moments.s2 == pytest.approx((3.3**2 - 3.0**2) / 2 / 9.9 * np.sqrt(0.75), rel=1e-12)


def test_the_error_of_a_median_is_wider_than_that_of_a_mean() -> None:
    """Round stars of 3 ± 0.6 px, 225 in a zone: the error of FWHM² is twice the share of the scatter of medians, which is
    simulated here (30,000 medians, so to 0.4 %; at 225 stars the limit sqrt(pi/2) = 1.2533 is off by 0.2 %)."""
    zones = [replace(zone, scatter_px=0.6) for zone in survey_of(lambda u, v: 3.0, stars=225).zones[NINE]]
    medians = np.median(np.random.default_rng(8).normal(3.0, 0.6, (30_000, 225)), axis=1)
    share = np.hypot(medians.std() / 3.0, field_model.FLOORS[0])
    assert field_model._moments(zones).t_error == pytest.approx(2 * share, rel=0.015)
