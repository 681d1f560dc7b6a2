"""What the zones say together."""

import math

import numpy as np
import pytest
from msgspec.structs import replace

from sitegen.stars.pattern import field_pattern
from sitegen.stars.records import Rejected, StarSurvey, Zone
from sitegen.stars.survey import star_survey
from tests.stars.cases import random_sky
from tests.stars.synthetic import Sky, draw, truth_of

WIDTH, HEIGHT = 3000, 2000


def survey_of(size, elongation=lambda u, v: 1.0, angle=lambda u, v: 0.0, scatter=0.03, stars=30):
    """Zones from functions of place: u and v from the middle, over half the width."""
    zones = []
    for row in range(3):
        for column in range(5):
            x, y = (column + 0.5) * WIDTH / 5 - 0.5, (row + 0.5) * HEIGHT / 3 - 0.5
            u, v = (x - WIDTH / 2) / (WIDTH / 2), (y - HEIGHT / 2) / (WIDTH / 2)
            zones.append(Zone(x, y, stars, size(u, v), None, elongation(u, v), angle(u, v), scatter, 0.01))
    return StarSurvey(
        WIDTH, HEIGHT, None, None, 999, 900, 450, 3.0, None, 1.0, None, 100.0, 5.0, None, Rejected(), tuple(zones)
    )


def test_even():
    """Equal zones are even, surely."""
    pattern = field_pattern(survey_of(lambda u, v: 3.0))
    assert (pattern.kind, pattern.direction_deg, pattern.orientation) == ("even", None, None)
    assert pattern.sureness > 0.99
    assert pattern.words == "Even: stars are alike over the whole frame."


def test_one_side_worse():
    """A gradient to the upper right is a tilt, with its direction and size: 3.6 px against 2.4 px in the corners is 50 %."""
    pattern = field_pattern(survey_of(lambda u, v: 3 + 0.36 * (u + v)))
    assert pattern.kind == "tilt"
    assert pattern.direction_deg == pytest.approx(45, abs=2)
    assert pattern.words == "One side is worse, the upper right: the camera or the focuser is tilted."
    assert pattern.effects[0].size == pytest.approx(0.5, abs=0.04)
    assert pattern.evidence == (
        "450 stars in 15 of 15 zones, FWHM 2.55 to 3.45 px.",
        "FWHM grows by 52 ± 2 % from the lower left to the upper right (direction 45°).",
    )


def test_a_tilt_through_focus():
    """Left and right both worse, top and bottom not: a tilt whose focus lies on the line between."""
    pattern = field_pattern(survey_of(lambda u, v: 3 + 0.6 * u * u))
    assert pattern.kind == "tilt"
    assert (pattern.direction_deg + 90) % 180 == pytest.approx(90, abs=2)
    assert pattern.words == "Two opposite sides are worse, left and right: a tilt, with the focus set on the line between them."


@pytest.mark.parametrize(("turn", "orientation", "words"), [(0, "radial", "along"), (90, "tangential", "across")])
def test_worse_outward(turn, orientation, words):
    """Corners wider and stretched along (or across) the radius: the corrector's distance, with the orientation named."""
    pattern = field_pattern(
        survey_of(
            lambda u, v: 3 + 0.5 * (u * u + v * v),
            elongation=lambda u, v: 1 + 0.2 * (u * u + v * v),
            angle=lambda u, v: (math.degrees(math.atan2(v, u)) + turn) % 180,
        )
    )
    assert (pattern.kind, pattern.orientation) == ("outward", orientation)
    assert f"stretched {words} the radius" in pattern.words


def test_same_way_everywhere():
    """One elongation at one angle in every zone is guiding or wind."""
    pattern = field_pattern(survey_of(lambda u, v: 3.0, elongation=lambda u, v: 1.3, angle=lambda u, v: 120.0))
    assert pattern.kind == "same-way"
    assert pattern.direction_deg == pytest.approx(120, abs=1)
    assert pattern.effects[4].size == pytest.approx(0.3, abs=0.01)
    assert pattern.words == "Elongated the same way everywhere: guiding or wind, not the optics' field."


def test_the_middle_out_of_focus_is_no_pattern_of_the_optics():
    """Widest in the middle: the focus sits on the edges, and that is said instead of a name."""
    pattern = field_pattern(survey_of(lambda u, v: 3.6 - 0.6 * (u * u + v * v)))
    assert pattern.kind == "unclear"
    assert pattern.words == "Stars are widest in the middle: the focus sits on the edges. Refocus before judging the field."


def test_too_few_zones():
    """With eight zones measured nothing is said, but how many there were."""
    survey = survey_of(lambda u, v: 3.0)
    zones = tuple(zone if number < 8 else Zone(zone.x, zone.y, 2) for number, zone in enumerate(survey.zones))
    pattern = field_pattern(replace(survey, zones=zones))
    assert (pattern.kind, pattern.sureness) == ("unclear", 0.0)
    assert pattern.words == "Too few stars over the frame to tell."
    assert pattern.evidence == ("8 of 15 zones hold enough stars to be measured.",)


def test_a_lost_edge_is_not_made_up():
    """With the whole right half missing, size cannot be told over the frame: unclear, not a guess."""
    survey = survey_of(lambda u, v: 3 + 0.3 * u)
    zones = tuple(zone if zone.x < 1600 else Zone(zone.x, zone.y, 2) for zone in survey.zones)
    few = tuple(replace(zone, scatter_px=0.5, stars=5) if zone.fwhm_px else zone for zone in zones)
    assert field_pattern(replace(survey, zones=few)).kind == "unclear"


def test_noise_makes_unsure():
    """A tilt as small as the zones' own errors is not named."""
    pattern = field_pattern(survey_of(lambda u, v: 3 + 0.12 * u, scatter=0.6, stars=6))
    assert pattern.kind == "unclear"
    assert pattern.sureness < 0.8


def test_the_same_survey_gives_the_same_words():
    """Sureness comes from seeded draws: twice the same survey, twice the same pattern."""
    survey = survey_of(lambda u, v: 3 + 0.15 * u)
    assert field_pattern(survey) == field_pattern(survey)


def test_random_fields_are_named_rightly():
    """Of 12 random frames (100 in tests/bench/stars.py) at most one is not named, and none is named wrongly."""
    named = []
    for seed in range(100, 112):
        kind, sky = random_sky(seed, 1200, 800, stars=500)
        frame, _ = draw(sky)
        named.append((kind, field_pattern(star_survey(frame, scale_arcsec_px=None, bayer=sky.bayer)).kind))
    assert sum(kind == found for kind, found in named) >= 11, named
    assert all(found in (kind, "unclear") for kind, found in named), named


def test_the_drawing_itself_is_tilted_as_it_says():
    """The truth behind these tests: FWHM grows towards tilt_deg as the frame is displayed, y up."""
    truth = truth_of(Sky(tilt=0.2, tilt_deg=90), np.random.default_rng(1))
    assert np.corrcoef(truth.y, truth.fwhm)[0, 1] > 0.999
