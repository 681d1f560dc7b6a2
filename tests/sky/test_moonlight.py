"""Moonlight against published_values/sky_moonlight.py."""

import numpy as np
import pytest

from sitegen.sky import moonlight
from tests.published_values import sky_moonlight as published


def test_worked_value_of_specsim() -> None:
    """A half-lit Moon at 50 degrees makes the sky as bright as the published documentation says."""
    computed = moonlight.moonlight_nl(**published.SPECSIM.values)
    assert published.SPECSIM_NL.agrees(computed)
    assert published.SPECSIM_MAG.agrees(moonlight.mag_arcsec2(computed))


def test_full_moon() -> None:
    """A full Moon at 60 degrees, and a nearer one, brighten a dark zenith as eqs 15 to 22 do worked independently."""
    dark = moonlight.nanolamberts(published.DARK_ZENITH_MAG.values)
    assert published.FULL_MOON_NL.agrees(moonlight.moonlight_nl(**published.FULL_MOON.values))
    near = moonlight.moonlight_nl(**published.NEAR_MOON.values)
    assert published.NEAR_MOON_NL.agrees(near)
    assert published.NEAR_MOON_TOTAL_MAG.agrees(moonlight.mag_arcsec2(near + dark))


def test_brightening_at_the_zenith() -> None:
    """The brightening is positive and is that of eq. 22."""
    value = brightening(target=90.0, moon=30.0, separation=60.0)
    assert published.FULL_MOON_BRIGHTENING.agrees(value)


@pytest.mark.parametrize("zenith", published.SCATTERING_AIRMASS)
def test_scattering_airmass(zenith: float) -> None:
    """Eq. 3 runs from 1 at the zenith to 5 at the horizon."""
    assert published.SCATTERING_AIRMASS.at(zenith).agrees(moonlight.scattering_airmass(zenith))


@pytest.mark.parametrize("separation", published.SCATTERING_FUNCTION)
def test_scattering_function(separation: float) -> None:
    """Both branches of Mie scattering and the Rayleigh term, separations in degrees."""
    assert published.SCATTERING_FUNCTION.at(separation).agrees(moonlight.scattering_function(separation))


@pytest.mark.parametrize("phase_angle", published.ILLUMINANCE_FC)
def test_illuminance(phase_angle: float) -> None:
    """Eq. 20 at full Moon and at quarter, on either side of full."""
    assert published.ILLUMINANCE_FC.at(phase_angle).agrees(moonlight.illuminance_fc(phase_angle))
    assert moonlight.illuminance_fc(-phase_angle) == moonlight.illuminance_fc(phase_angle)


@pytest.mark.parametrize("magnitude", published.NANOLAMBERTS)
def test_nanolamberts(magnitude: float) -> None:
    """Eq. 1 and its inverse."""
    assert published.NANOLAMBERTS.at(magnitude).agrees(moonlight.nanolamberts(magnitude))
    assert abs(moonlight.mag_arcsec2(moonlight.nanolamberts(magnitude)) - magnitude) <= 1e-9


def test_dark_sky_brightens_towards_the_horizon() -> None:
    """Eq. 2: at 70 degrees from the zenith, k = 0.172, the moonless sky is 2.0 times the zenith's."""
    zenith_mag = published.DARK_ZENITH_MAG.values
    assert published.DARK_SKY_AT_70.agrees(moonlight.dark_sky_nl(zenith_mag, 70.0, 0.172) / moonlight.nanolamberts(zenith_mag))


def brightening(target: float, moon: float, separation: float, sky: float = published.DARK_ZENITH_MAG.values) -> float:
    """One value at full Moon with the paper's extinction."""
    columns = (np.array([value]) for value in (target, moon, separation, 0.0))
    return float(moonlight.brightening_mag(*columns, 0.172, sky)[0])


def test_no_moonlight_with_the_moon_down() -> None:
    """With the Moon's centre at or below the horizon the brightening is 0, dark sky known or not."""
    assert brightening(60.0, 0.0, 60.0) == 0.0
    assert brightening(60.0, -10.0, 60.0, sky=np.nan) == 0.0
    assert brightening(60.0, 0.01, 60.0) > 0.1


def test_unknown_brightening() -> None:
    """Without a target, with the target down, or with the Moon up over an unmeasured sky nothing is claimed."""
    assert np.isnan(brightening(np.nan, 30.0, np.nan))
    assert np.isnan(brightening(np.nan, -30.0, np.nan))
    assert np.isnan(brightening(-1.0, 30.0, 60.0))
    assert np.isnan(brightening(60.0, 30.0, 60.0, sky=np.nan))


def test_inside_the_moons_disc() -> None:
    """Pointing at the Moon itself stays finite."""
    assert np.isfinite(moonlight.scattering_function(0.0))
    assert moonlight.scattering_function(0.0) == moonlight.scattering_function(0.25)
