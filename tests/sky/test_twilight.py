"""Twilight against published_values/sky_twilight.py."""

import numpy as np
import pytest

from sitegen.sky import moonlight, twilight
from tests.published_values import sky_twilight as published
from tests.sky import independent_weight


@pytest.mark.parametrize("distance", published.WHOLE_SKY_MAG)
def test_whole_sky(distance: float) -> None:
    """The table's parabola in the Sun's zenith distance."""
    assert published.WHOLE_SKY_MAG.at(distance).agrees(twilight.whole_sky_mag(distance))


@pytest.mark.parametrize("depth", published.BRIGHTENING_OVER_21_5)
def test_brightening_of_a_dark_zenith(depth: str) -> None:
    """How much twilight adds to a zenith of 21.5, from bright twilight to its end."""
    table = published.BRIGHTENING_OVER_21_5[depth]
    assert all(table.at(sun).agrees(brightening(sun, 21.5)) for sun in table)


def brightening(sun: float, zenith_mag: float) -> float:
    dark = moonlight.nanolamberts(zenith_mag)
    return float(2.5 * np.log10(1.0 + twilight.twilight_nl(sun) / dark))


def test_brightening_of_a_bright_zenith() -> None:
    """The same light adds less to a brighter sky."""
    assert published.BRIGHTENING_OVER_20_5.agrees(brightening(-12.0, 20.5))


def test_the_tangent() -> None:
    """Where the parabola is left: the magnitude of the twilight alone and its slope."""
    assert published.TANGENT_MAG.agrees(twilight.TANGENT_MAG)
    assert published.TANGENT_SLOPE.agrees(twilight.TANGENT_SLOPE)


def test_continuous_where_the_parabola_is_left() -> None:
    """On either side of zenith distance 103 the light is the same within 0.01 mag, and so is its slope within 0.005 mag/deg."""
    before, at, after = (float(moonlight.mag_arcsec2(twilight.twilight_nl(90.0 - zd))) for zd in (102.99, 103.0, 103.01))
    assert after - before < 0.02
    assert abs((after - at) - (at - before)) < 1e-4


def test_the_end_is_a_small_step() -> None:
    """At -18 deg the light ends; over a zenith of 21.5 the step is below 0.05 mag."""
    assert 0.0 < brightening(-17.9999, 21.5) < 0.05
    assert brightening(-18.0, 21.5) == 0.0
    assert brightening(-40.0, 21.5) == 0.0


def test_the_deeper_the_sun_the_darker() -> None:
    """The light never grows while the Sun sinks from -5 to -20 deg."""
    light = twilight.twilight_nl(np.linspace(-5.0, -20.0, 3001))
    assert (np.diff(light) <= 0.0).all()


def test_nothing_is_claimed_of_the_day() -> None:
    """Above -5 deg the paper's parabola is not meant; an unknown Sun gives no light either."""
    assert np.isnan(twilight.twilight_nl([-4.99, 0.0, 60.0, np.nan])).all()
    assert np.isfinite(twilight.twilight_nl(-5.0))


def test_worked_out_again() -> None:
    """Every tenth of a degree agrees with the same equations written a second time."""
    for sun in np.arange(-19.95, -5.0, 0.1):
        assert float(twilight.twilight_nl(sun)) == pytest.approx(independent_weight.twilight_nl(float(sun)), rel=3e-4)
