"""The solver on pictures of the real sky with known truth, on pictures of another place, and on what ships with packages.

The benchmark tests/bench/solving.py does the same at full size; here are a few fixed seeds.
"""

from pathlib import Path

import astropy
import numpy as np
import pytest
from astropy.io import fits
from astropy.wcs import WCS
from simulated_pictures import Picture, simulated_picture

from sitegen.catalogue.star_field import stars_to_solve
from sitegen.stars.solving.detection import DetectedStars, detect_stars
from sitegen.stars.solving.scene import SolvePrior
from sitegen.stars.solving.solution import NotSolved, Solution
from sitegen.stars.solving.solver import solve
from sitegen.stars.solving.transforms import flipped_left_right

KNOTTY = (1, 5, 9, 13)
ASTROPY = Path(astropy.__file__).parent


def solved_before(detected: DetectedStars, frame: tuple[int, int], prior: SolvePrior) -> Solution | NotSolved:
    near = stars_to_solve(prior.ra_deg, prior.dec_deg, prior.search_radius_deg(*frame))
    return solve(detected, *frame, near.ra_deg, near.dec_deg, near.magnitude, prior)


def solved(picture: Picture) -> Solution | NotSolved:
    return solved_before(detect_stars(picture.pixels), picture.frame, picture.prior)


@pytest.fixture(scope="module")
def three_degrees() -> Picture:
    """A picture of a 3 degree field, with all that befalls one."""
    return simulated_picture(5, 3.0)


@pytest.mark.parametrize(("seed", "field_deg"), [(3, 1.5), (4, 2.0), (7, 6.0), (9, 10.0)])
def test_places_are_found(seed: int, field_deg: float) -> None:
    """Gaps, decoys, turn, mirror, lens, stretch, crop, a wrong focal length and a wrong place: right to 2 pixels."""
    picture = simulated_picture(seed, field_deg)
    solution = solved(picture)
    assert isinstance(solution, Solution)
    assert solution.mirrored is picture.lens.mirrored
    assert picture.error_px(solution) < 2.0


@pytest.mark.parametrize(("seed", "field_deg"), [(3, 30.0), (4, 40.0), (6, 60.0)])
def test_wide_fields_are_right_to_the_corners(seed: int, field_deg: float) -> None:
    """Zenithal lenses with up to 2 % of distortion, cropped off their axes: found in the middle, fitted to the edges. No corner
    is farther off than the solution says, nor by 3 pixels (what this project asks of wide fields)."""
    picture = simulated_picture(seed, field_deg)
    solution = solved(picture)
    assert isinstance(solution, Solution)
    assert solution.corner_arcsec is not None
    assert picture.error_px(solution, margin=0.0) * solution.scale_arcsec_px < solution.corner_arcsec
    assert picture.error_px(solution, margin=0.0) < 3.0
    assert solution.is_sure_of_corners


@pytest.mark.parametrize("seed", [11044, 11077])
def test_few_stars_do_not_vouch_for_corners(seed: int) -> None:
    """Four to six stars in 0.4 degrees place a picture, but a lens's bend would not show in them: the corner's error is published
    as larger than a pixel, and than what it is (computed)."""
    picture = simulated_picture(seed, 0.4)
    solution = solved(picture)
    assert isinstance(solution, Solution)
    assert solution.corner_arcsec is not None
    assert picture.error_px(solution, margin=0.0) * solution.scale_arcsec_px < solution.corner_arcsec
    assert not solution.is_sure_of_corners


@pytest.mark.parametrize("seed", KNOTTY)
def test_knots_of_a_nebula_are_no_stars(seed: int) -> None:
    """Compact bright knots, brighter than most stars, do not outrank them: the place is found, right to 2 pixels (computed)."""
    picture = simulated_picture(seed, 1.5, knots=True)
    solution = solved(picture)
    assert isinstance(solution, Solution)
    assert picture.error_px(solution) < 2.0


@pytest.mark.parametrize("seed", range(20, 23))
def test_another_place_is_refused(seed: int) -> None:
    """A picture before the catalogue of another place is not solved, whatever can be made to match."""
    picture = simulated_picture(seed, (1.0, 2.0, 4.0)[seed % 3])
    elsewhere = SolvePrior((picture.prior.ra_deg + 100) % 360, -picture.prior.dec_deg, picture.prior.scale_arcsec_px)
    answer = solved_before(detect_stars(picture.pixels), picture.frame, elsewhere)
    assert isinstance(answer, NotSolved)
    assert "chance cannot be ruled out" in answer.reason


def test_a_scale_beyond_the_prior_is_refused(three_degrees: Picture) -> None:
    """Right place, but a focal length 15 % off where 5 % are allowed: not solved."""
    prior = three_degrees.prior
    wrong = SolvePrior(prior.ra_deg, prior.dec_deg, prior.scale_arcsec_px * 1.15, centre_tolerance_deg=prior.centre_tolerance_deg)
    assert isinstance(solved_before(detect_stars(three_degrees.pixels), three_degrees.frame, wrong), NotSolved)


def test_the_mirrored_picture_gives_the_mirrored_solution(three_degrees: Picture) -> None:
    """Both parities are tried as equals: of the flipped pixels, the flipped solution, to 0.5 px of noise."""
    solution = solved(three_degrees)
    mirrored = solved_before(detect_stars(three_degrees.pixels[:, ::-1]), three_degrees.frame, three_degrees.prior)
    assert isinstance(solution, Solution)
    assert isinstance(mirrored, Solution)
    expected = flipped_left_right(solution)
    assert mirrored.mirrored is not solution.mirrored
    x, y = mirrored.to_pixel(*expected.to_sky([50, 900], [60, 600]))
    assert np.hypot(x - [50, 900], y - [60, 600]).max() < 0.5


def test_the_same_picture_has_the_same_solution(three_degrees: Picture) -> None:
    """Solving is deterministic to the last bit."""
    assert solved(three_degrees) == solved(three_degrees)


def test_the_evidence_says_what_was_found(three_degrees: Picture) -> None:
    """A solution carries its matches, its residual, and how far it left chance and the control behind."""
    solution = solved(three_degrees)
    assert isinstance(solution, Solution)
    assert solution.evidence is not None
    assert solution.evidence.convinces
    assert solution.evidence.control_matched * 2 <= solution.evidence.matched
    assert solution.matched >= 6
    assert solution.rms_arcsec is not None
    assert 0 < solution.rms_arcsec / solution.scale_arcsec_px < 1.0


def test_a_bent_lens_is_straightened(three_degrees: Picture) -> None:
    """With a lens that shifts the corners by 1 % (8 px), the distortion is fitted and the corners are right to 2 px."""
    picture = simulated_picture(41, 8.0)
    detected = detect_stars(picture.pixels)
    width, height = picture.frame
    u, v = detected.x_px - width / 2, detected.y_px - height / 2
    bend = 1 + 0.01 * (u**2 + v**2) / (width**2 + height**2) * 4
    bent = DetectedStars(width / 2 + u * bend, height / 2 + v * bend, detected.flux)
    solution = solved_before(bent, picture.frame, picture.prior)
    assert isinstance(solution, Solution)
    assert solution.distortion is not None
    straight = solved_before(detected, picture.frame, picture.prior)
    x, y = np.array([0.1, 0.9, 0.1, 0.9]) * width, np.array([0.1, 0.1, 0.9, 0.9]) * height
    bend = 1 + 0.01 * ((x - width / 2) ** 2 + (y - height / 2) ** 2) / (width**2 + height**2) * 4
    moved = solution.to_pixel(*straight.to_sky(x, y))
    assert np.hypot(width / 2 + (x - width / 2) * bend - moved[0], height / 2 + (y - height / 2) * bend - moved[1]).max() < 2.0


@pytest.mark.parametrize(("name", "reason"), [
    ("nddata/tests/data/sip-wcs.fits", "only 3 stars found in the picture; 4 are needed"),
    ("io/fits/hdu/compressed/tests/data/m13.fits",
     "the best placement matches 2 of 2 catalogue stars, the mirrored sky 2: chance cannot be ruled out"),
    ("wcs/tests/data/dss.14.29.56-62.41.05.fits.gz", "the catalogue has only 1 stars near the target; 4 are needed"),
])
@pytest.mark.filterwarnings("ignore::astropy.wcs.FITSFixedWarning", "ignore::astropy.io.fits.verify.VerifyWarning")
def test_frames_too_small_for_the_catalogue_are_not_solved(name: str, reason: str) -> None:
    """Real frames of a few arcminutes, in which hardly a star is as bright as G = 10: an honest refusal, with its reason."""
    with fits.open(ASTROPY / name) as frame:
        pixels, wcs = frame[0].data, WCS(frame[0].header)
    height, width = pixels.shape
    middle, beside = (wcs.pixel_to_world(width / 2 + step, height / 2) for step in (0, 1))
    prior = SolvePrior(middle.ra.deg, middle.dec.deg, middle.separation(beside).arcsec)
    assert solved_before(detect_stars(pixels), (width, height), prior) == NotSolved(reason)


def test_an_empty_picture_is_not_solved() -> None:
    """Nothing in, a reason out."""
    picture = detect_stars(np.zeros((100, 150), dtype=np.uint8))
    assert solved_before(picture, (150, 100), SolvePrior(10, 40, 60.0)) == NotSolved(
        "only 0 stars found in the picture; 4 are needed")


def test_a_field_too_wide_is_not_solved() -> None:
    """Where a plane cannot hold the sky, no solution is claimed."""
    stars = DetectedStars(np.arange(9.0), np.arange(9.0) ** 2, np.ones(9))
    assert solved_before(stars, (1500, 1000), SolvePrior(10, 40, 200.0)) == NotSolved(
        "the field is 100 degrees from corner to corner; up to 90 are solved")
