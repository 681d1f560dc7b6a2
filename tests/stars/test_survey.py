"""Star surveys of frames whose truth is known."""

from dataclasses import replace

import numpy as np
import pytest

from sitegen.stars.detection import SurveyProblem
from sitegen.stars.survey import star_survey
from tests.stars.cases import random_sky
from tests.stars.recorded_profile import narrow_frame, recorded
from tests.stars.synthetic import Sky, draw, stamp
from tests.stars.truth import errors_of


@pytest.mark.parametrize("seed", range(8))
def test_zones_are_what_was_drawn(seed):
    """FWHM within 3 %, elongation within 0.02, angle within 5° where it exceeds 1.1, on a random frame: our own limits."""
    _, sky = random_sky(seed, 1500, 1000)
    frame, _ = draw(sky)
    errors = errors_of(star_survey(frame, scale_arcsec_px=None, bayer=sky.bayer), sky)
    assert len(errors.fwhm_share) >= 12
    assert np.abs(errors.fwhm_share).max() < 0.03
    assert np.abs(errors.elongation).max() < 0.02
    assert errors.angle_deg.max(initial=0) < 5


@pytest.mark.parametrize("fwhm", [0.95, 1.2, 1.5])
def test_stars_as_narrow_as_a_pixel(fwhm):
    """FWHM within 1 % and elongation within 0.02 of the profile as pixels record it, computed on a fine grid: our own limits,
    from 1.2 px up (0.95 before the pixels gives 1.29 px). More of them in tests/bench/stars.py."""
    truth = recorded(fwhm, 1.3, 20.0)
    survey = star_survey(narrow_frame(fwhm, 1.3, 20.0, 4.0), scale_arcsec_px=None)
    assert survey.star_count > 150
    assert survey.fwhm_px == pytest.approx(truth.fwhm, rel=0.01)
    assert survey.elongation == pytest.approx(truth.elongation, abs=0.02)


@pytest.mark.parametrize("dtype", [np.uint16, ">i4", ">f4", np.float64])
def test_every_kind_of_number(dtype):
    """Whole and floating numbers of either byte order give the same FWHM, and the frame handed in stays untouched."""
    frame, _ = draw(Sky(width=400, height=300, stars=150, hot=20), dtype=np.uint16)
    given = frame.astype(dtype)
    asked, plain = (star_survey(image, scale_arcsec_px=None).fwhm_px for image in (given, frame))
    assert asked == pytest.approx(plain, rel=1e-6)
    assert (given == frame).all()


def test_eight_bit_frame():
    """An 8-bit picture of stars is coarse but measurable: FWHM within 3 %."""
    sky = Sky(width=500, height=400, stars=200, level=20, noise=1.5, brightest=220, faintest=40, gain=0, hot=0)
    frame, _ = draw(sky, dtype=np.uint8)
    assert star_survey(frame, scale_arcsec_px=None).fwhm_px == pytest.approx(3.5, rel=0.03)


def test_a_colour_frame_is_not_demosaiced():
    """The same sky through a colour sensor gives the FWHM of the mono frame, in full-resolution pixels, within 1 %."""
    sky = Sky(width=1000, height=700, stars=500, fwhm=2.4, elongation=1.2, angle_deg=70)
    mono, colour = (
        star_survey(draw(replace(sky, bayer=bayer))[0], scale_arcsec_px=None, bayer=bayer) for bayer in (None, "GRBG")
    )
    assert colour.fwhm_px == pytest.approx(mono.fwhm_px, rel=0.01)
    assert colour.elongation == pytest.approx(mono.elongation, abs=0.01)
    assert colour.angle_deg == pytest.approx(70, abs=1.5)


@pytest.mark.parametrize("pattern", ["RGGB", "GBRG"])
def test_only_green_pixels_are_measured(pattern):
    """Where red and blue light is spread wider than green (they are out of focus), the FWHM is the green one's, within 1 %."""
    sky = Sky(width=800, height=600, stars=300, hot=0)
    sharp, wide = (draw(replace(sky, fwhm=fwhm), dtype=np.float32)[0] for fwhm in (3.0, 4.2))
    green = np.tile(np.array([letter == "G" for letter in pattern]).reshape(2, 2), (300, 400))
    survey = star_survey(np.where(green, sharp, wide), scale_arcsec_px=None, bayer=pattern)
    assert survey.fwhm_px == pytest.approx(3.0, rel=0.01)


def test_row_nought_is_the_bottom():
    """Zones count from the array's first row; stars drawn only there fill zones 0 to 4 and leave the others None."""
    frame = np.random.default_rng(5).normal(100, 5, (600, 900)).astype(np.float32)
    for number in range(60):
        stamp(frame, 30 + 14.3 * number, 40 + (number * 37) % 120, 2000, 3, 0.1, 0, 3)
    zones = star_survey(frame, scale_arcsec_px=None).zones
    assert [zone.fwhm_px is not None for zone in zones] == [True] * 5 + [False] * 10
    assert (zones[0].x, zones[0].y) == (89.5, 99.5)
    assert all(zone.angle_deg % 178 < 2 for zone in zones[:5])


def test_too_few_stars_give_no_number():
    """Four stars in a zone are counted and not measured, never guessed at."""
    frame = np.random.default_rng(5).normal(100, 5, (600, 900)).astype(np.float32)
    for number in range(4):
        stamp(frame, 60 + 25 * number, 90, 2000, 3, 0.1, 0, 3)
    zone = star_survey(frame, scale_arcsec_px=1.2).zones[0]
    assert zone.stars == 4
    assert (zone.fwhm_px, zone.fwhm_arcsec, zone.elongation, zone.angle_deg, zone.scatter_px) == (None,) * 5


def test_arcseconds_only_with_a_scale():
    """fwhm_arcsec is FWHM times the scale, in the three decimals it means, and null without one."""
    frame, _ = draw(Sky(width=400, height=300, stars=150, hot=20))
    with_scale, without = (star_survey(frame, scale_arcsec_px=scale) for scale in (1.5, None))
    assert with_scale.fwhm_arcsec == round(1.5 * with_scale.fwhm_px, 3)
    assert without.fwhm_arcsec is None


def test_what_spoils_a_star_is_rejected_for_its_reason():
    """Hot pixels, clipped, double and edge stars are each counted under their own name; the sound star alone is measured."""
    frame = np.random.default_rng(5).normal(100, 5, (300, 300)).astype(np.float32)
    for x, y, peak in ((60, 60, 3000), (150, 60, 200_000), (240, 60, 3000), (247, 60, 2000), (60, 2, 3000)):
        stamp(frame, x, y, peak, 3.5, 0, 0, 3)
    for x, y in ((150, 150), (220, 240), (31, 211)):
        frame[y, x] += 9000
    survey = star_survey(np.clip(frame, 0, 65535).astype(np.uint16), scale_arcsec_px=None)
    rejected = survey.rejected
    assert (rejected.hot_pixel, rejected.saturated, rejected.edge) == (3, 1, 1)
    assert rejected.blended >= 1
    assert survey.star_count == 1


def test_clipping_is_seen_where_nobody_states_it():
    """A 12-bit sensor in a 16-bit file clips at 4095: the level is found from the peaks, and its stars are left out."""
    sky = Sky(width=800, height=600, stars=300, brightest=20_000, faintest=500, level=300, hot=0)
    frame, truth = draw(sky)
    survey = star_survey(np.minimum(frame, 4095), scale_arcsec_px=None)
    assert survey.saturation == 4095
    assert survey.rejected.saturated > 0.2 * (truth.peak > 3800).sum()
    assert survey.fwhm_px == pytest.approx(3.5, rel=0.02)


def test_pixels_that_are_no_numbers():
    """A masked corner and a dead column of NaN change no zone's FWHM by more than 2 %."""
    frame, _ = draw(Sky(width=800, height=600, stars=400, hot=0), dtype=np.float32)
    spoilt = frame.copy()
    spoilt[:100, :100], spoilt[:, 333] = np.nan, np.nan
    whole, holed = (star_survey(image, scale_arcsec_px=None) for image in (frame, spoilt))
    pairs = [(one.fwhm_px, other.fwhm_px) for one, other in zip(whole.zones, holed.zones, strict=True) if other.fwhm_px]
    assert len(pairs) >= 14
    assert [other for _, other in pairs] == pytest.approx([one for one, _ in pairs], rel=0.02)


def test_an_empty_sky():
    """Noise alone holds no star: every zone is None, and nothing is raised."""
    survey = star_survey(np.random.default_rng(1).normal(500, 8, (300, 400)).astype(np.float32), scale_arcsec_px=None)
    assert (survey.star_count, survey.fwhm_px, survey.elongation) == (0, None, None)
    assert all(zone.fwhm_px is None for zone in survey.zones)


def test_frames_that_cannot_be_measured_say_why():
    """A flat frame, one of NaN, a cube and an unknown colour pattern are refused in words."""
    with pytest.raises(SurveyProblem, match="no noise at all"):
        star_survey(np.full((200, 200), 7, np.uint16), scale_arcsec_px=None)
    with pytest.raises(SurveyProblem, match="more than half of the frame's pixels are not numbers"):
        star_survey(np.full((200, 200), np.nan), scale_arcsec_px=None)
    with pytest.raises(ValueError, match=r"one plane of at least 64 × 64 px, not shape \(3, 200, 200\)"):
        star_survey(np.zeros((3, 200, 200)), scale_arcsec_px=None)
    with pytest.raises(ValueError, match="colour pattern 'RGBG' is not known; one of RGGB, BGGR, GRBG, GBRG"):
        star_survey(np.zeros((200, 200)), scale_arcsec_px=None, bayer="RGBG")
