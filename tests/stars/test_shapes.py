"""Ellipses and their vectors."""

import numpy as np
import pytest

from sitegen.stars.shapes import angle_deg_of, axes_of, elongation_of, scatter_of, vector_of
from tests.published_values.star_profiles import ELLIPSES


@pytest.mark.parametrize("moments", ELLIPSES)
def test_axes_and_angle_follow_the_published_definition(moments):
    """A, B, theta and elongation from the inverse moment matrix are those of the SExtractor manual (to the five digits given)."""
    x2, y2, xy = moments
    det = x2 * y2 - xy**2
    axes = axes_of(*(np.array([value]) for value in (y2 / det, -xy / det, x2 / det)))
    e1, e2 = (float(value[0]) for value in vector_of(*axes))
    assert ELLIPSES[moments].agrees([float(axes[0][0]), float(axes[1][0]), angle_deg_of(e1, e2), elongation_of(e1, e2)])


def test_an_angle_and_its_opposite_are_one():
    """The same axis at 20° and at 200° has one vector, and reads 20°."""
    here, there = (vector_of(np.array(2.0), np.array(1.0), np.radians(np.array(angle))) for angle in (20.0, 200.0))
    assert np.array(here) == pytest.approx(np.array(there))
    assert angle_deg_of(float(here[0]), float(here[1])) == pytest.approx(20)


def test_a_round_star_has_no_angle():
    """Below an elongation of 1.008 the direction is noise, and None."""
    assert angle_deg_of(0.003, 0.0) is None
    assert angle_deg_of(0.0, 0.005) == pytest.approx(45)


def test_scatter_is_a_standard_deviation():
    """Of Gaussian values the robust scatter is their sigma, within its own error at 20,000 draws."""
    assert scatter_of(np.random.default_rng(3).normal(5, 2, 20_000)) == pytest.approx(2, rel=0.03)
