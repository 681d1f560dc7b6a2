"""Airmass against published_values/sky_airmass.py."""

import numpy as np
import pytest

from sitegen.sky.airmass import airmass, kasten_young
from sitegen.sky.refraction import refraction_deg
from tests.published_values import sky_airmass as published


@pytest.mark.parametrize(("altitude", "printed"), published.KASTEN_YOUNG_TABLE.items())
def test_table_of_kasten_and_young(altitude: float, printed: float) -> None:
    """The formula keeps to its authors' table within the half per cent they claim."""
    assert abs(kasten_young(altitude) / printed - 1.0) <= published.KASTEN_YOUNG_TABLE_RELATIVE


@pytest.mark.parametrize(
    ("altitude", "printed"), [*published.KASTEN_YOUNG_FORMULA.items(), *published.KASTEN_YOUNG_COMPUTED.items()]
)
def test_formula_of_kasten_and_young(altitude: float, printed: float) -> None:
    """The formula gives the values of an independent library and of an independent computation."""
    assert abs(kasten_young(altitude) - printed) <= published.KASTEN_YOUNG_TOLERANCE


def test_airmass_is_taken_at_the_refracted_altitude() -> None:
    """At an airless 10 degrees refraction lifts the target by 5.4' and takes 0.05 off the airmass."""
    lifted = 10.0 + 5.41 / 60.0  # Saemundsson at 10 deg, Meeus eq. 16.4 worked by hand
    assert abs(airmass(10.0) - kasten_young(lifted)) <= 1e-3
    assert kasten_young(10.0) - airmass(10.0) > 0.04
    assert abs(refraction_deg(10.0) * 60.0 - 5.41) <= 0.01


def test_no_airmass_below_the_horizon() -> None:
    """Below the horizon, and without an altitude, there is no airmass; at the horizon there is."""
    values = airmass(np.array([-0.01, np.nan, 0.0]))
    assert np.isnan(values[:2]).all()
    assert 28.0 < values[2] < 38.0
