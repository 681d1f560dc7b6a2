"""The weight of a sub against published_values/sky_twilight.py, and where nothing is known."""

import random

import numpy as np
import pytest

from sitegen.sky.airmass import airmass
from sitegen.sky.dark_equivalent import dark_sky_weight
from sitegen.sky.moonlight import brightening_mag, dark_sky_nl
from sitegen.sky.twilight import twilight_nl
from tests.published_values import sky_twilight as published
from tests.published_values.sky_twilight import Weighed
from tests.sky import independent_weight

NAN = float("nan")
K, ZENITH, PHASE, APART = (
    published.EXTINCTION_MAG.values,
    published.ZENITH_MAG.values,
    published.PHASE_ANGLE_DEG.values,
    published.SEPARATION_DEG.values,
)


def weight(sun: float, target: float, moonlight: float = 0.0, k: float = K, zenith: float = ZENITH) -> float:
    """One sub's weight."""
    return float(dark_sky_weight(sun, target, moonlight, k, zenith))


def moonlight_mag(case: Weighed) -> float:
    """The Moon's share alone, magnitudes."""
    moon = -10.0 if case.moon_altitude_deg is None else case.moon_altitude_deg
    columns = (np.array([value]) for value in (case.target_altitude_deg, moon, APART, PHASE))
    return float(brightening_mag(*columns, K, ZENITH)[0])


@pytest.mark.parametrize("case", published.WEIGHED)
def test_the_table(case: Weighed) -> None:
    """Moon, twilight, both together, and a low target: the weight of each, and the lights it is made of."""
    moon = moonlight_mag(case)
    dark = float(dark_sky_nl(ZENITH, 90.0 - case.target_altitude_deg, K))
    assert case.dark_nl.agrees(dark)
    assert case.moon_nl.agrees(dark * (10.0 ** (0.4 * moon) - 1.0))
    assert case.twilight_nl.agrees(float(twilight_nl(case.sun_altitude_deg)))
    assert case.airmass.agrees(float(airmass(case.target_altitude_deg)))
    assert case.weight.agrees(weight(case.sun_altitude_deg, case.target_altitude_deg, moon))


@pytest.mark.parametrize("case", published.WEIGHED)
def test_the_table_worked_out_again(case: Weighed) -> None:
    """The same equations written a second time give the table's row."""
    target, moon_altitude = case.target_altitude_deg, -10.0 if case.moon_altitude_deg is None else case.moon_altitude_deg
    dark = independent_weight.dark_nl(ZENITH, target, K)
    moon = independent_weight.moon_nl(target, moon_altitude, APART, PHASE, K)
    twilight = independent_weight.twilight_nl(case.sun_altitude_deg)
    air = independent_weight.airmass(target)
    assert all(light.agrees(nl) for light, nl in ((case.dark_nl, dark), (case.moon_nl, moon), (case.twilight_nl, twilight)))
    assert case.brightening_mag.agrees(2.5 * np.log10((dark + moon + twilight) / dark))
    assert case.airmass.agrees(air)
    assert case.weight.agrees(independent_weight.weight(dark, moon, twilight, air, K))


def test_lights_add_as_light() -> None:
    """Moon 2.377 mag and twilight 1.677 mag brighten by 2.752 mag. Their sum, 4.054, would weigh 3.3 times too little."""
    moon, dusk, both = (case.brightening_mag for case in published.WEIGHED[:3])
    skies = ((-30.0, moon.value), (-12.0, 0.0), (-12.0, moon.value))
    darkened = [2.5 * np.log10(weight(-30.0, 50.0) / weight(sun, 50.0, moonlight)) for sun, moonlight in skies]
    assert all(printed.agrees(mag) for printed, mag in zip((moon, dusk, both), darkened, strict=True))
    assert 10.0 ** (0.4 * (darkened[0] + darkened[1] - darkened[2])) == pytest.approx(3.3, abs=0.05)  # 10^(0.4 × 1.302) by hand


def test_random_skies_worked_out_again() -> None:
    """A thousand skies agree with the second writing of the equations within 0.05 %."""
    chance = random.Random(20261130)
    for _ in range(1000):
        target, sun = chance.uniform(1.0, 89.0), chance.uniform(-25.0, -6.0)
        moon_altitude, apart, phase = chance.uniform(-10.0, 80.0), chance.uniform(11.0, 150.0), chance.uniform(0.0, 150.0)
        k, zenith = chance.uniform(0.0, 0.6), chance.uniform(17.0, 22.0)
        columns = (np.array([value]) for value in (target, moon_altitude, apart, phase))
        moonlight = float(brightening_mag(*columns, k, zenith)[0])
        expected = independent_weight.weight(
            independent_weight.dark_nl(zenith, target, k),
            independent_weight.moon_nl(target, moon_altitude, apart, phase, k),
            independent_weight.twilight_nl(sun),
            independent_weight.airmass(target),
            k,
        )
        assert weight(sun, target, moonlight, k, zenith) == pytest.approx(expected, rel=5e-4)


@pytest.mark.parametrize("target", [5.0, 33.3, 50.0, 90.0])
def test_a_dark_sky_without_air_counts_whole(target: float) -> None:
    """Without extinction, Moon and twilight the weight is exactly 1."""
    assert weight(-30.0, target, k=0.0) == 1.0


def test_twice_as_bright_counts_half() -> None:
    """A sky brighter by 2.5 log10(2) = 0.7526 mag halves the weight."""
    assert weight(-30.0, 50.0, 0.752575) / weight(-30.0, 50.0) == pytest.approx(0.5, abs=1e-6)


@pytest.mark.parametrize("moonlight", [0.0, 2.5])
def test_the_deeper_the_sun_the_more_it_counts(moonlight: float) -> None:
    """The weight never falls while the Sun sinks from +10 to -20 deg, with the Moon and without."""
    sinking = np.linspace(10.0, -20.0, 6001)
    weights = dark_sky_weight(sinking, 50.0, moonlight, K, ZENITH)
    assert (np.diff(weights) >= 0.0).all()
    assert weights[0] == 0.0 < weights[-1]


def test_daylight_counts_nothing() -> None:
    """Above -6 deg the weight is 0, however little else is known; at -6 deg twilight is weighed."""
    for sun in (-5.999, 0.0, 45.0):
        assert weight(sun, 50.0) == 0.0
        assert weight(sun, NAN, NAN, zenith=NAN) == 0.0
    assert 0.0 < weight(-6.0, 50.0) < 0.001


def test_below_the_horizon_counts_nothing() -> None:
    """A target that is not up was not gathered, whatever the Moon and the sky."""
    assert weight(-30.0, -0.001, NAN) == 0.0
    assert weight(-12.0, -20.0, NAN, zenith=NAN) == 0.0
    assert 0.0 < weight(-30.0, 0.0) < 0.01


def test_what_is_not_known() -> None:
    """No place, no target, or an unmeasured sky in moonlight or twilight: no claim. A dark hour needs no measured sky."""
    assert np.isnan(weight(NAN, 50.0))
    assert np.isnan(weight(-30.0, NAN))
    assert np.isnan(weight(-30.0, 50.0, NAN))
    assert np.isnan(weight(-17.9, 50.0, zenith=NAN))
    assert weight(-18.0, 50.0, zenith=NAN) == weight(-18.0, 50.0)
