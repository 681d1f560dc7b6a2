"""Saved measurements: everything back as it was, nothing private, and strict about what is no measurement."""

import json

import pytest

from sitegen.reading.measurement_files import (
    as_text,
    read_ring,
    read_survey,
    ring_as_dict,
    save,
    saved_name,
    survey_as_dict,
)
from sitegen.reading.star_measuring import ring_of, survey_of
from tests.stars.frames_on_disk import write_fits
from tests.stars.synthetic import Sky, draw
from tests.stars.synthetic_rings import Disc, draw_disc


@pytest.fixture(scope="module")
def surveyed(tmp_path_factory):
    path = tmp_path_factory.mktemp("private place") / "field.fits"
    write_fits(path, draw(Sky(width=700, height=480, stars=400, fwhm=3.0, tilt=0.2, seed=3))[0], BAYERPAT=None)
    return survey_of(path, str(path), "pictures/field.fits")[0]


@pytest.fixture(scope="module")
def ringed(tmp_path_factory):
    path = tmp_path_factory.mktemp("private place") / "ring.fits"
    write_fits(path, draw_disc(Disc(x=330.0)))
    return ring_of(path, str(path), "pictures/ring.fits")[0]


@pytest.mark.parametrize("name", ["m.yaml", "m.json"])
def test_a_survey_comes_back(tmp_path, surveyed, name):
    """All values to seven figures, in YAML and in JSON; the pattern, worked out again, is the same."""
    save(survey_as_dict(surveyed), tmp_path / name)
    found, problems = read_survey(tmp_path / name, name, "field.survey")
    assert problems == ()
    assert survey_as_dict(found) == {**survey_as_dict(surveyed), "frame": "field.survey"}
    assert (found.pattern.kind, found.pattern.words) == (surveyed.pattern.kind, surveyed.pattern.words)
    assert found.pattern.sureness == pytest.approx(surveyed.pattern.sureness, abs=0.002)


@pytest.mark.parametrize("name", ["m.yaml", "m.json"])
def test_a_ring_comes_back(tmp_path, ringed, name):
    """With its warning that the star stands off the axis."""
    save(ring_as_dict(ringed), tmp_path / name)
    found, problems = read_ring(tmp_path / name, name, "ring.fits")
    assert problems == ()
    assert ring_as_dict(found) == ring_as_dict(ringed)
    assert len(found.ring.warnings) == 1


def test_nothing_private_is_saved(surveyed, ringed):
    """No folder, no position, no name of an observer, all of which the frames' headers and paths hold."""
    text = as_text(survey_as_dict(surveyed), False) + as_text(ring_as_dict(ringed), True)
    for private in ("private", "pictures", "32.6", "139.0", "keeper", "SITE"):
        assert private not in text
    assert json.loads(as_text(ring_as_dict(ringed), True))["schema"] == 1


@pytest.mark.parametrize(
    ("frame", "kind", "name"),
    [
        ("field.fits.fz", "star survey", "field.survey.yaml"),
        ("a/field-2.fit", "star survey", "field-2.survey.yaml"),
        ("ring.png", "ring", "ring.ring.yaml"),
    ],
)
def test_a_saved_measurement_is_called_like_its_frame(frame, kind, name):
    """Whatever endings the frame has."""
    assert saved_name(frame, kind) == name


def lines(text, changes):
    """The saved text with lines replaced by their beginning; None drops one."""
    kept = []
    for line in text.splitlines():
        start = next((start for start in changes if line.startswith(start)), None)
        if start is None:
            kept.append(line)
        elif changes[start] is not None:
            kept.append(changes[start])
    return "\n".join(kept) + "\n"


AS_SAVED = "keep the file as it was saved"
MISTAKES = (
    ({"schema:": "schema: 2"}, ["2:9: error: 'schema' is '2', not one of 1; write 1"]),
    ({"fwhm_px:": "fwhm_px: wide"}, ["14:10: error: 'fwhm_px' is 'wide', not a number; give px, as digits with a point"]),
    ({"star_count:": "star_counts: 3"}, [
        "2:1: error: 'star_count' is missing in a saved star survey; give it as in 'star_count: 580'",
        "13:1: error: unknown key 'star_counts' in a saved star survey; did you mean 'star_count'?",
    ]),
    ({"taken:": "taken: yesterday"},
     ["5:8: error: 'taken' is 'yesterday', not a date and time; write it as in 2026-04-18T21:03:12Z"]),
    ({"- {x: 69.5, y: 79.5": None}, [f"23:1: error: 'zones' has 14 items, not 15; {AS_SAVED}"]),
    ({"- {x: 69.5, y: 79.5": "- {x: 69.5, y: 79.5, stars: 9, fwhm_px: 3.0}"},
     [f"23:3: error: 'elongation' is missing in a zone that has 'fwhm_px'; {AS_SAVED}"]),
)  # fmt: skip


@pytest.mark.parametrize(("changes", "wanted"), MISTAKES, ids=lambda value: next(iter(value)) if isinstance(value, dict) else "")
def test_mistakes_get_their_line(tmp_path, surveyed, changes, wanted):
    """Each with line and column, word for word, and no measurement."""
    text = as_text(survey_as_dict(surveyed), False)
    (tmp_path / "m.yaml").write_text(lines(text, changes), "utf-8")
    found, problems = read_survey(tmp_path / "m.yaml", "m.yaml", "m.yaml")
    assert found is None
    assert sorted(map(str, problems)) == sorted(f"m.yaml:{each}" for each in wanted)


def test_one_kind_is_not_the_other(tmp_path, surveyed, ringed):
    """A ring named in 'star_survey' says where it belongs, in one line; so does a survey in 'star_rings'."""
    save(ring_as_dict(ringed), tmp_path / "r.yaml")
    save(survey_as_dict(surveyed), tmp_path / "s.yaml")
    _, ring_problems = read_survey(tmp_path / "r.yaml", "r.yaml", "r.yaml")
    _, survey_problems = read_ring(tmp_path / "s.yaml", "s.yaml", "s.yaml")
    assert [str(each) for each in (*ring_problems, *survey_problems)] == [
        "r.yaml:3:11: error: this file measures 'ring', not 'star survey'; name it in 'star_rings'",
        "s.yaml:3:11: error: this file measures 'star survey', not 'ring'; name it in 'star_survey'",
    ]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("", "1:1: error: is empty; name a frame, or what 'sitegen survey --save' wrote"),
        ("- 1\n", "1:1: error: the measurement is a list, not a mapping; write it as {schema: 1, measures: star survey, …}"),
    ],
)
def test_what_is_no_measurement_at_all(tmp_path, text, wanted):
    """An empty file and a list."""
    (tmp_path / "m.yaml").write_text(text, "utf-8")
    found, problems = read_survey(tmp_path / "m.yaml", "m.yaml", "m.yaml")
    assert found is None
    assert [str(problem) for problem in problems] == [f"m.yaml:{wanted}"]
