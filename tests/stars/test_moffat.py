"""The batched Moffat fit, on single profiles drawn by another library."""

import numpy as np
import pytest
from astropy.modeling.models import Gaussian2D, Moffat2D

from sitegen.stars.moffat import fit_moffats
from sitegen.stars.shapes import angle_deg_of, elongation_of
from tests.published_values.star_profiles import (
    BLURRED_ELONGATION,
    BLURRED_FWHM,
    GAUSSIAN_FWHM_OVER_SIGMA,
    MOFFAT_FWHM_OVER_GAMMA,
)
from tests.stars.recorded_profile import pixels_of, recorded

ROWS, COLUMNS = np.mgrid[-15:16, -15:16].astype(float)
WIDE_ROWS, WIDE_COLUMNS = np.mgrid[-30:31, -30:31].astype(float)


def fit(*images, noise=0.1, fwhm=4.5):
    """Of images whose pixels were taken at their centres, unless a narrower first guess makes the fit average over pixels."""
    cutouts = np.array(images, np.float32)
    return fit_moffats(cutouts, np.ones_like(cutouts), noise, np.full(len(images), fwhm))


@pytest.mark.parametrize("beta", MOFFAT_FWHM_OVER_GAMMA)
def test_fwhm_of_a_moffat_star(beta):
    """The FWHM is the published multiple of gamma, whatever the exponent: to 0.1 %, what single precision allows."""
    found = fit(Moffat2D(amplitude=1000, x_0=0.3, y_0=-0.4, gamma=6.0, alpha=beta)(WIDE_COLUMNS, WIDE_ROWS), fwhm=6.0)
    assert MOFFAT_FWHM_OVER_GAMMA.at(beta).agrees(found.fwhm_px[0] / 6)
    assert [found.x[0], found.y[0]] == pytest.approx([0.3, -0.4], abs=0.005)
    assert found.beta[0] == pytest.approx(beta, rel=0.02)


def test_an_elongated_star():
    """sqrt(major × minor), the elongation and the angle of a Gaussian turned by 30°: counter-clockwise from +x to +y."""
    found = fit(Gaussian2D(1000, 0, 0, x_stddev=2.0, y_stddev=1.6, theta=np.radians(30))(COLUMNS, ROWS))
    assert GAUSSIAN_FWHM_OVER_SIGMA.agrees(found.fwhm_px[0] / np.sqrt(2.0 * 1.6))
    assert elongation_of(found.e1[0], found.e2[0]) == pytest.approx(1.25, abs=2e-3)
    assert angle_deg_of(found.e1[0], found.e2[0]) == pytest.approx(30, abs=0.1)


def test_angles_turn_from_x_to_y():
    """A star drawn out along the rising diagonal (x and y growing together) lies at 45°, along a column at 90°."""
    along = np.exp(-((COLUMNS - ROWS) ** 2) / 8 - (COLUMNS + ROWS) ** 2 / 32) * 1000
    upright = np.exp(-(COLUMNS**2) / 6 - ROWS**2 / 10) * 1000
    found = fit(along, upright)
    assert [angle_deg_of(*pair) for pair in zip(found.e1, found.e2, strict=True)] == pytest.approx([45, 90], abs=0.1)


def test_a_hot_pixel_beside_the_star_changes_nothing():
    """A neighbour pixel as bright as the star's peak moves its FWHM by less than 1 %."""
    image = Moffat2D(amplitude=1000, gamma=3.0, alpha=3.0)(COLUMNS, ROWS)
    image[15 + 6, 15 - 5] += 1000
    assert fit(image, noise=3.0).fwhm_px[0] == pytest.approx(3 * MOFFAT_FWHM_OVER_GAMMA.at(3.0).value, rel=0.01)


def test_pixels_without_weight_are_not_looked_at():
    """With only one colour's pixels weighted, whatever the others hold leaves the result as it is."""
    image = Moffat2D(amplitude=1000, gamma=3.0, alpha=3.0)(COLUMNS, ROWS).astype(np.float32)
    green = ((np.arange(31) + np.arange(31)[:, None]) % 2).astype(np.float32)
    spoilt = np.where(green > 0, image, 77.0).astype(np.float32)
    found = fit_moffats(np.array([spoilt]), np.array([green]), 0.1, np.array([4.5]))
    assert found.fwhm_px[0] == pytest.approx(3 * MOFFAT_FWHM_OVER_GAMMA.at(3.0).value, rel=2e-3)


NARROW = [(fwhm, beta, turn) for fwhm in (0.85, 1.0, 1.2, 1.6, 2.4, 3.2) for beta in (2.5, 6.0) for turn in (0.0, 25.0, 45.0)]


@pytest.mark.parametrize(("fwhm", "beta", "angle_deg"), NARROW)
def test_a_star_as_narrow_as_a_pixel(fwhm, beta, angle_deg):
    """FWHM within 1 % and elongation within 0.01 of the profile as pixels record it, computed on a fine grid, wherever in its
    pixel the star stands: our own limits, for elongation half of a frame's, as there is no noise. The narrowest is 1.2 px once
    recorded."""
    truth = recorded(fwhm, 1.3, angle_deg, beta)
    places = [(0.0, 0.0), (0.3, -0.2), (-0.4, 0.1), (0.35, 0.4)]
    images = [1000 * pixels_of(13, x, y, fwhm, 1.3, angle_deg, beta) for x, y in places]
    found = fit(*images, fwhm=truth.fwhm)
    assert found.fwhm_px == pytest.approx(truth.fwhm, rel=0.01)
    elongations = [elongation_of(*pair) for pair in zip(found.e1, found.e2, strict=True)]
    assert elongations == pytest.approx([truth.elongation] * 4, abs=0.01)
    assert np.hypot(*(np.array([found.x, found.y]) - np.transpose(places))).max() < 0.01


def test_the_pixel_rounds_a_narrow_star():
    """1.30 before the pixels reads about 1.22 at 1.2 px."""
    found = fit(1000 * pixels_of(13, 0.2, 0.1, 1.2, 1.3, 90.0, 25.0), fwhm=1.4)
    assert BLURRED_ELONGATION.agrees(elongation_of(found.e1[0], found.e2[0]))
    assert BLURRED_FWHM.agrees(found.fwhm_px[0])


def test_the_peak_is_the_recorded_one():
    """What a pixel in the middle of a narrow star holds, not the peak of the light before it: to 1 %."""
    image = 1000 * pixels_of(13, 0.0, 0.0, 1.0)
    assert fit(image, fwhm=1.3).peak[0] == pytest.approx(image.max(), rel=0.01)
