"""Drift and turn of the field against spheres that are really turned about a displaced axis, and against worked examples."""

import math

import numpy as np
import pytest

from sitegen.sky.polar_error import SIDEREAL_RAD_S, TYPICAL_SHARE, greatest_drift_arcsec_min, greatest_turn_rad
from tests.published_values.record import Published

WORKED = "worked by hand from e·θ/cos δ, θ = 7.2921e-5 rad/s × 300 s, for e = 10′"
TURNS_DEG = {
    0.0: Published(0.003646, 5e-7, WORKED, "half of the last digit"),
    30.0: Published(0.00421, 1e-5, WORKED, "the last digit"),
    60.0: Published(0.00729, 1e-5, WORKED, "the last digit"),
    75.0: Published(0.01409, 1e-5, WORKED, "the last digit"),
}
DRIFT_OF_AN_ARCMIN = Published(0.2625, 5e-5, "worked by hand: 60″ × 7.2921e-5 rad/s × 60 s", "half of the last digit")
CORNER_WORST_PX = Published(0.10, 0.005, "worked by hand: e 1.5′, δ −69.1°, 300 s, 3757.5 px", "half of the last digit")
CORNER_TYPICAL_PX = Published(0.06, 0.005, "worked by hand: 2/π of it, the mean of |cos|", "half of the last digit")
ANY_HOUR = np.linspace(0.0, 2 * math.pi, 721)


def direction(hour_angle: float | np.ndarray, dec: float) -> np.ndarray:
    """Unit vectors (…, 3): x to the meridian, y to the west, z to the pole."""
    hour = np.asarray(hour_angle, float)
    return np.stack([math.cos(dec) * np.cos(hour), math.cos(dec) * np.sin(hour), np.full_like(hour, math.sin(dec))], axis=-1)


def angle_to(pole: np.ndarray, star: np.ndarray) -> np.ndarray:
    """Position angle at the star of a pole, from true north, in radians."""
    north = np.array([0.0, 0.0, 1.0]) - star[..., 2:] * star
    north /= np.linalg.norm(north, axis=-1, keepdims=True)
    toward = pole - np.sum(pole * star, axis=-1, keepdims=True) * star
    return np.arctan2(np.sum(np.cross(north, toward) * star, axis=-1), np.sum(north * toward, axis=-1))


@pytest.mark.parametrize("dec_deg", [0.0, 30.0, -69.1, 75.0, 85.0])
@pytest.mark.parametrize("error_arcmin", [1.0, 10.0])
def test_the_turn_is_that_of_rotation_matrices(error_arcmin: float, dec_deg: float) -> None:
    """A camera that is guided keeps its angle to the mount's own pole: over all hours, the greatest change in an exposure."""
    error, dec = math.radians(error_arcmin / 60), math.radians(dec_deg)
    mount = direction(0.7, math.pi / 2 - error)
    start, end = direction(ANY_HOUR, dec), direction(ANY_HOUR + SIDEREAL_RAD_S * 300, dec)
    turned = float(np.max(np.abs(angle_to(mount, end) - angle_to(mount, start))))
    assert greatest_turn_rad(error_arcmin, 300.0, dec_deg) == pytest.approx(turned, rel=0.01 + error * abs(math.tan(dec)))


@pytest.mark.parametrize("dec_deg", [0.0, 45.0, 80.0])
def test_the_drift_is_that_of_rotation_matrices(dec_deg: float) -> None:
    """A mount that nothing guides turns about its own axis: a star's way in a minute, at any declination."""
    error, dec, turn = math.radians(10 / 60), math.radians(dec_deg), SIDEREAL_RAD_S * 60
    mount, pole = direction(0.7, math.pi / 2 - error), np.array([0.0, 0.0, 1.0])
    star = direction(ANY_HOUR, dec)
    apart = np.linalg.norm(_turned(star, pole, turn) - _turned(star, mount, turn), axis=-1)
    assert greatest_drift_arcsec_min(10.0) == pytest.approx(3600 * math.degrees(float(np.max(apart))), rel=0.01)


def _turned(star: np.ndarray, axis: np.ndarray, by: float) -> np.ndarray:
    """By Rodrigues' formula."""
    along = np.sum(star * axis, axis=-1, keepdims=True) * axis
    return along + (star - along) * math.cos(by) + np.cross(axis, star) * math.sin(by)


@pytest.mark.parametrize("dec_deg", TURNS_DEG)
def test_worked_turns(dec_deg: float) -> None:
    """Ten arc-minutes over five minutes."""
    turn = greatest_turn_rad(10.0, 300.0, dec_deg)
    assert turn is not None
    assert TURNS_DEG[dec_deg].agrees(math.degrees(turn))


def test_worked_drift_and_smear() -> None:
    """An arc-minute a minute of time; and what 1.5′ cost a corner of the demo's camera."""
    turn = greatest_turn_rad(1.5, 300.0, -69.1)
    assert turn is not None
    assert DRIFT_OF_AN_ARCMIN.agrees(greatest_drift_arcsec_min(1.0))
    assert CORNER_WORST_PX.agrees(turn * 3757.5)
    assert CORNER_TYPICAL_PX.agrees(turn * 3757.5 * TYPICAL_SHARE)


@pytest.mark.parametrize("dec_deg", [89.5, -89.01])
def test_nothing_is_said_within_a_degree_of_the_pole(dec_deg: float) -> None:
    """There the first order does not hold."""
    assert greatest_turn_rad(1.0, 300.0, dec_deg) is None
