"""Airmass against published_values/sky_airmass.py."""

import numpy as np
import pytest

from sitegen.sky.airmass import airmass, kasten_young
from sitegen.sky.refraction import refraction_deg
from tests.published_values import sky_airmass as published
from tests.published_values.record import Table
from tests.published_values.sky_coordinates import SAEMUNDSSON_AT_10_DEG_ARCMIN


@pytest.mark.parametrize("altitude", published.KASTEN_YOUNG_TABLE)
def test_table_of_kasten_and_young(altitude: float) -> None:
    """The formula keeps to its authors' table within the half per cent they claim."""
    assert published.KASTEN_YOUNG_TABLE.at(altitude).agrees(kasten_young(altitude))


@pytest.mark.parametrize("table", [published.KASTEN_YOUNG_FORMULA, published.KASTEN_YOUNG_COMPUTED])
def test_formula_of_kasten_and_young(table: Table) -> None:
    """The formula gives the values of an independent library and of an independent computation."""
    assert all(table.at(altitude).agrees(kasten_young(altitude)) for altitude in table)


def test_airmass_is_taken_at_the_refracted_altitude() -> None:
    """At an airless 10 degrees refraction lifts the target by 5.4' and takes 0.05 off the airmass."""
    lifted = 10.0 + SAEMUNDSSON_AT_10_DEG_ARCMIN.value / 60.0
    assert abs(airmass(10.0) - kasten_young(lifted)) <= 1e-3
    assert kasten_young(10.0) - airmass(10.0) > 0.04
    assert SAEMUNDSSON_AT_10_DEG_ARCMIN.agrees(refraction_deg(10.0) * 60.0)


def test_no_airmass_below_the_horizon() -> None:
    """Below the horizon, and without an altitude, there is no airmass; at the horizon there is."""
    values = airmass(np.array([-0.01, np.nan, 0.0]))
    assert np.isnan(values[:2]).all()
    assert 28.0 < values[2] < 38.0
