"""A real star field that astropy ships, measured by photutils too: an independent library with a fit of its own."""

from importlib.resources import files

import numpy as np
import pytest
from astropy.io import fits
from astropy.table import QTable
from photutils.background import LocalBackground
from photutils.detection import DAOStarFinder
from photutils.psf import GaussianPSF, MoffatPSF, PSFPhotometry
from scipy.spatial import cKDTree

from sitegen.stars.shapes import vector_of
from sitegen.stars.survey import measured_stars

SKY = 117  # counts
PEAK = 300  # counts over the sky, from which the independent fit, which has no prior on anything, is steady
pytestmark = pytest.mark.filterwarnings("ignore")  # photutils warns of single stars that did not converge; medians do not mind


@pytest.fixture(scope="module")
def frame():
    """Messier 13, 300 × 300 px (SkyView, digitised sky survey), from astropy's own test data."""
    return fits.getdata(files("astropy") / "io/fits/hdu/compressed/tests/data/m13.fits")


@pytest.fixture(scope="module")
def pairs(frame):
    """(our stars, photutils' places and peaks): the same bright stars, each found by both, matched within a pixel."""
    ours = measured_stars(frame)
    theirs = DAOStarFinder(threshold=100, fwhm=3.2)(frame.astype(float) - SKY)
    places = np.column_stack([theirs["x_centroid"], theirs["y_centroid"]])
    apart, number = cKDTree(places).query(np.column_stack([ours.x, ours.y]))
    same = (apart < 1) & (np.asarray(theirs["peak"])[number] > PEAK)
    number = number[same]
    return ours.of(same), QTable(
        {"x": places[number, 0], "y": places[number, 1], "flux": np.asarray(theirs["peak"])[number] * 10}
    )


def fitted(frame, stars, model, free):
    for name in free:
        getattr(model, name).fixed = False
    photometry = PSFPhotometry(model, (15, 15), local_bkg_estimator=LocalBackground(8, 12))
    fit = photometry(frame.astype(float) - SKY, init_params=stars)
    return [np.asarray(fit[f"{name}_fit"], float) for name in free]


def test_both_find_the_same_stars(pairs):
    """Twenty stars or more are found by both within a pixel, so that the medians below rest on something."""
    assert len(pairs[1]) >= 20


def test_fwhm_agrees_with_photutils(frame, pairs):
    """Star by star our FWHM is that of photutils' Moffat fit: in the median within 2 %, for nine in ten within 10 %."""
    ours, theirs = pairs
    alpha, beta = fitted(frame, theirs, MoffatPSF(alpha=3.0, beta=3.0), ("alpha", "beta"))
    ratio = ours.fwhm_px / (2 * alpha * np.sqrt(2 ** (1 / beta) - 1))
    assert np.median(ratio) == pytest.approx(1, abs=0.02)
    assert np.percentile(np.abs(ratio - 1), 90) < 0.10


def test_shape_agrees_with_photutils(frame, pairs):
    """Star by star our shape vector is that of photutils' elliptical Gaussian: in the median within 0.01 (0.02 in elongation)."""
    ours, theirs = pairs
    wide, high, theta = fitted(frame, theirs, GaussianPSF(x_fwhm=3.3, y_fwhm=3.1, theta=0), ("x_fwhm", "y_fwhm", "theta"))
    e1, e2 = vector_of(wide, high, np.radians(theta))
    assert [np.median(ours.e1 - e1), np.median(ours.e2 - e2)] == pytest.approx([0, 0], abs=0.01)
    assert np.corrcoef(ours.e1, e1)[0, 1] > 0.8
