"""Scale, field and limits against what instruments publish."""

import pytest

from sitegen.sky import optics
from tests.published_values import optics as published


@pytest.mark.parametrize("case", published.SCALES, ids=lambda case: case.instrument)
def test_image_scale_is_the_published_one(case: published.Scale) -> None:
    """206.265 × pixel ÷ focal length gives the scale that the instrument's own page prints."""
    assert case.arcsec_px.agrees(optics.image_scale_arcsec_px(case.pixel_um, 1, case.focal_length_mm))


@pytest.mark.parametrize("case", published.FIELDS, ids=lambda case: case.optics)
def test_field_is_the_published_one(case: published.Field) -> None:
    """The field is the exact one, 2·atan(d / 2f): the small-angle form would be 1.6° off at 50 mm."""
    assert case.field_deg.agrees(optics.field_deg(case.pixels, case.pixel_um, case.focal_length_mm))


def test_binning_doubles_the_scale_and_leaves_the_field() -> None:
    """Binned pixels are larger; the sensor is not."""
    single, double = (optics.image_scale_arcsec_px(3.76, binning, 1000.0) for binning in (1, 2))
    assert double == pytest.approx(2 * single)


def test_a_measured_scale_gives_the_focal_length_back() -> None:
    """focal_length_from_scale_mm undoes image_scale_arcsec_px."""
    scale = optics.image_scale_arcsec_px(3.76, 2, 1600.0)
    assert optics.focal_length_from_scale_mm(3.76, 2, scale) == pytest.approx(1600.0)


def test_limits_of_resolution() -> None:
    """Rayleigh at 550 nm and Dawes for 100 mm, and Dawes as printed for inches."""
    assert published.RAYLEIGH_100_MM_ARCSEC.agrees(optics.rayleigh_arcsec(100.0))
    assert published.DAWES_100_MM_ARCSEC.agrees(optics.dawes_arcsec(100.0))
    assert published.DAWES_ONE_INCH_ARCSEC.agrees(optics.dawes_arcsec(25.4))


@pytest.mark.parametrize(("pixels", "word"), [(1.99, "under"), (2.0, "good"), (4.0, "good"), (4.01, "over")])
def test_sampling_words(pixels: float, word: str) -> None:
    """Under below 2 px over a star, over above 4 (common practice, no source)."""
    assert optics.sampling_of(pixels) == word
