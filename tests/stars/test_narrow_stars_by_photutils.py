"""Frames of undersampled stars drawn and measured by photutils too, whose own model averages over pixels."""

import numpy as np
import pytest
from astropy.table import QTable
from photutils.psf import GaussianPRF, PSFPhotometry

from sitegen.stars.survey import measured_stars
from tests.stars.recorded_profile import recorded

GAUSSIAN_BETA = 400.0  # of a Moffat profile that is a Gaussian to a thousandth of its width
pytestmark = pytest.mark.filterwarnings("ignore")  # photutils warns of single stars that did not converge; medians do not mind


def drawn(x_fwhm, y_fwhm):
    """Two hundred stars, 20 px apart and each elsewhere in its pixel, with noise; their places and light."""
    rng = np.random.default_rng(5)
    rows, columns = np.mgrid[10:210:20, 10:410:20]
    places = np.column_stack([columns.ravel(), rows.ravel()]) + rng.uniform(-0.5, 0.5, (200, 2))
    y, x = np.mgrid[:220, :420].astype(float)
    frame = rng.normal(0, 5, x.shape)
    for left, up in places:
        near = np.s_[int(up) - 9 : int(up) + 10, int(left) - 9 : int(left) + 10]
        star = GaussianPRF(flux=20_000, x_0=left, y_0=up, x_fwhm=x_fwhm, y_fwhm=y_fwhm)
        frame[near] += star(x[near], y[near])
    return frame, QTable({"x": places[:, 0], "y": places[:, 1], "flux": np.full(200, 20_000.0)})


@pytest.mark.parametrize("widths", [(1.5, 1.5), (1.7, 1.35), (2.3, 2.0), (3.2, 2.6)])
def test_both_measure_the_same_stars(widths):
    """From 1.5 px up the FWHM is within 1 %, the elongation within 0.02 of photutils' fit, whose widths are those before the
    pixels and are blurred by a pixel on a fine grid here: our own limits."""
    frame, stars = drawn(*widths)
    ours = measured_stars(frame)
    model = GaussianPRF(x_fwhm=1.8, y_fwhm=1.6)
    model.x_fwhm.fixed = model.y_fwhm.fixed = False
    fit = PSFPhotometry(model, (11, 11))(frame, init_params=stars)
    wide, high = (float(np.median(fit[f"{name}_fwhm_fit"])) for name in "xy")
    theirs = recorded(np.sqrt(wide * high), max(wide, high) / min(wide, high), 0.0, GAUSSIAN_BETA)
    size = np.hypot(np.median(ours.e1), np.median(ours.e2))
    assert len(ours.x) > 150
    assert np.median(ours.fwhm_px) == pytest.approx(theirs.fwhm, rel=0.01)
    assert (1 + size) / (1 - size) == pytest.approx(theirs.elongation, abs=0.02)
