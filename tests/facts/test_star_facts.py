"""Star shapes and rings among the facts, from measurements written by hand."""

import json
from datetime import UTC, date, datetime

import jsonschema
import pytest
from msgspec.structs import replace

from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of
from sitegen.facts.star_views import ring_view, survey_view
from sitegen.feeds.facts_schema import facts_schema
from tests.diaries import HILL, RIG, diary, entry
from tests.stars.measured_frames import ringed, surveyed

RIGS, SITES = {"long": RIG}, {"hill": HILL}
ZONE_KEYS = ["x", "y", "stars", "fwhm_px", "fwhm_arcsec", "elongation", "angle_deg"]
RING_KEYS = ["file", "outer_px", "inner_px", "offset_px", "offset_percent", "direction_deg"]


def facts(surveys=(), rings=(), **changes):
    one = entry(**changes)
    view = views_of(diary(one), (one,))[0]
    shown = tuple(survey_view(each, one, RIGS, SITES) for each in surveys)
    discs = tuple(ring_view(each, one, RIGS, SITES) for each in rings)
    return as_json(facts_of(replace(view, surveys=shown, rings=discs)))


def test_the_keys_of_schema_1():
    """`star_shapes` and `star_rings` are lists with every key of schema 1; further keys may stand beside them."""
    found = facts([surveyed()], [ringed()])
    (shapes,), (rings,) = found["star_shapes"], found["star_rings"]
    assert set(shapes) >= {"file", "star_count", "zones"}
    assert len(shapes["zones"]) == 15
    assert all(set(zone) >= set(ZONE_KEYS) for zone in shapes["zones"])
    assert set(rings) >= set(RING_KEYS)
    assert (shapes["file"], rings["file"]) == ("pictures/field.fits", "pictures/ring.fits")


def test_an_entry_without_frames_has_empty_lists():
    """Empty, not absent and not null."""
    found = facts()
    assert (found["star_shapes"], found["star_rings"]) == ([], [])


def test_facts_with_stars_keep_to_the_published_schema():
    """Plain JSON without NaN, valid against facts.schema.json (judged by the jsonschema library)."""
    found = json.loads(json.dumps(facts([surveyed(empty=(0, 7))], [ringed(direction=None)]), allow_nan=False))
    jsonschema.validate(found, facts_schema())
    assert found["star_shapes"][0]["taken"] == "2026-09-12T12:30:00Z"


def test_a_zone_with_too_few_stars_is_null():
    """Its count stands, every measurement is null; a ring that is as good as centred has no direction."""
    found = facts([surveyed(empty=(4,))], [ringed(offset=0.1, direction=None)])
    zone = found["star_shapes"][0]["zones"][4]
    assert zone["stars"] == 2
    assert [zone[key] for key in ZONE_KEYS[3:]] == [None] * 4
    assert found["star_rings"][0]["direction_deg"] is None


def test_the_pattern_has_its_words_and_evidence():
    """A field that grows from left to right is named a tilt towards the right (0°), and says how sure it is."""
    pattern = facts([surveyed(slope=0.1)])["star_shapes"][0]["pattern"]
    assert pattern["kind"] == "tilt"
    assert pattern["direction_deg"] == pytest.approx(0, abs=3) or pattern["direction_deg"] == pytest.approx(360, abs=3)
    assert pattern["sureness"] > 0.95
    assert pattern["evidence"][0].startswith("450 stars in 15 of 15 zones")


@pytest.mark.parametrize(
    ("taken", "binning", "scale"),
    [
        (datetime(2026, 9, 12, 12, 30, tzinfo=UTC), None, 0.77556),  # 206.265 × 3.76 / 1000
        (datetime(2026, 9, 12, 12, 30, tzinfo=UTC), 2, 1.55111),
        (datetime(2026, 9, 20, 12, 30, tzinfo=UTC), None, 0.96944),  # the reducer of 20 September: / 0.8
        (datetime(2026, 9, 19, 16, 30, tzinfo=UTC), None, 0.77556),  # two in the morning of the 20th: still the evening before
        (None, None, 0.96944),  # without a date: the train of the day of publication
    ],
)
def test_the_train_of_the_evening_gives_the_scale(taken, binning, scale):
    """Where the header tells none: 206.265 × pixel µm × binning / focal length mm (the textbook's formula)."""
    shapes = facts([surveyed(taken=taken, binning=binning, scale=None)])["star_shapes"][0]
    assert shapes["scale_arcsec_px"] == pytest.approx(scale, abs=6e-4)
    assert shapes["fwhm_arcsec"] == pytest.approx(3 * scale, abs=2e-3)


def test_a_simulated_frame_says_so_beside_its_numbers():
    """Its author's word; every other frame is an observation. The published schema knows the words."""
    one = entry()
    view = views_of(diary(one), (one,))[0]
    surveys = (survey_view(surveyed(), one, RIGS, SITES, "simulation"), survey_view(surveyed(), one, RIGS, SITES))
    rings = (ring_view(ringed(), one, RIGS, SITES, "simulation"), ring_view(ringed(), one, RIGS, SITES))
    found = as_json(facts_of(replace(view, surveys=surveys, rings=rings)))
    for name in ("star_shapes", "star_rings"):
        assert [frame["type"] for frame in found[name]] == ["simulation", "observation"]
    jsonschema.validate(found, facts_schema())
    found["star_rings"][0]["type"] = "simulated"
    with pytest.raises(jsonschema.ValidationError, match="'simulated' is not one of"):
        jsonschema.validate(found, facts_schema())


def test_the_frame_s_own_scale_wins():
    """1.5 ″/px in its header stays, whatever the rig says."""
    assert facts([surveyed()])["star_shapes"][0]["scale_arcsec_px"] == 1.5


def test_without_a_rig_there_are_pixels_only():
    """No guess at a scale."""
    shapes = facts([surveyed(scale=None)], rig=None)["star_shapes"][0]
    assert (shapes["fwhm_px"], shapes["fwhm_arcsec"], shapes["scale_arcsec_px"]) == (3, None, None)


def test_the_evening_is_the_rig_s():
    """A frame of four in the morning, local time, belongs to the evening before; the rig is the entry's."""
    view = ring_view(ringed(taken=datetime(2026, 9, 12, 18, 30, tzinfo=UTC)), entry(), RIGS, SITES)
    assert (view.evening, view.rig) == (date(2026, 9, 12), "long")
