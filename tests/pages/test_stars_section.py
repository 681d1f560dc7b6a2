"""Stars across the field: the drawings' geometry, the words, and both pages of the demo that show them."""

import json
import re
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest

from sitegen.diary.entry import PictureType
from sitegen.facts.views import RingView, SurveyView
from sitegen.number_text import NumberText
from sitegen.pages.entry_sections.stars import stars_shown
from sitegen.pages.fact_formatter import fact_value
from sitegen.pages.star_maps import DISC, ring_sketches, whisker_maps
from sitegen.pages.star_words import evidence_words, pattern_words, ring_title, survey_title
from sitegen.pages.words import words_from
from tests.conftest import ROOT
from tests.diaries import HILL
from tests.pages.sample import layout_of, sample_book
from tests.pages.test_year_cloth import prepared_at
from tests.stars.measured_frames import ringed, surveyed

WORDS = words_from("en", ((ROOT / "themes/default/words/en.yaml").read_text("utf-8"),))
NUMBERS = NumberText("en", WORDS)


def maps(*frames):
    return whisker_maps(frames, WORDS, NUMBERS)


def test_a_whisker_points_along_the_stars():
    """At 90° it stands upright, at 0° it lies, at 30° it rises to the right; its length grows with the elongation."""
    ends = [maps(surveyed(angle=angle, elongation=1.3))[0].zones[0].whisker for angle in (90.0, 0.0, 30.0)]
    upright, lying, rising = [(x2 - x1, y1 - y2) for x1, y1, x2, y2 in ends]
    assert upright[0] == 0 < upright[1]
    assert lying[1] == 0 < lying[0]
    assert rising[1] / rising[0] == pytest.approx(0.577, abs=0.01)  # tan 30°
    shorter = maps(surveyed(angle=0.0, elongation=1.15), surveyed(angle=0.0, elongation=1.3))
    lengths = [one.zones[0].whisker[2] - one.zones[0].whisker[0] for one in shorter]
    assert lengths[1] / lengths[0] == pytest.approx(2, abs=0.02)


def test_the_first_zone_lies_at_the_bottom_left():
    """Rows run upwards, as in the frame."""
    zones = maps(surveyed())[0].zones
    assert (zones[0].x, zones[4].x) == (0, 320)
    assert zones[0].y > zones[5].y > zones[10].y == 0


def test_maps_side_by_side_have_one_scale():
    """The ground is as dark as the stars are wide, in every map alike; an even field stays pale."""
    before, after = maps(surveyed(slope=0.2), surveyed())
    assert before.zones[4].shade == max(zone.shade for zone in (*before.zones, *after.zones))
    assert after.zones[0].shade == before.zones[0].shade
    assert max(zone.shade for zone in maps(surveyed(slope=0.005))[0].zones) < 0.1


def test_a_zone_without_a_measurement_shows_none():
    """No ground, no whisker, no number; what it says tells how many stars there were."""
    zone = maps(surveyed(empty=(7,)))[0].zones[7]
    assert (zone.shade, zone.whisker, zone.dot, zone.label) == (0, None, None, "too few")
    assert zone.said == "middle row, column 3: 2 stars, too few to measure"


def test_rings_are_exaggerated_alike_and_inside():
    """The shadow stays in its disc; two sketches share the smaller exaggeration; up in the frame is up on the page."""
    far, near = ring_sketches([ringed(offset=6.0), ringed(offset=0.5)], WORDS, NUMBERS)
    assert (far.exaggeration, near.exaggeration) == (5, 5)
    x, y, radius = far.shadow
    assert (x, radius) == (200, pytest.approx(DISC / 3, abs=0.1))
    assert y == pytest.approx(160 - 6 * 5 * 2 * DISC / 120, abs=0.1)
    assert 160 - y + radius < DISC


def test_what_the_titles_say():
    """Sentences with their numbers, for one frame and for a pair; more than double is not called 100 %."""
    tilted, even = surveyed(slope=0.2), surveyed()
    assert re.fullmatch(r"Stars stayed near 4\.5″: first FWHM rises 1\d\d\u202f% to one side, then even over the frame",
                        survey_title([tilted, even], WORDS, NUMBERS))  # fmt: skip
    assert survey_title([even], WORDS, NUMBERS) == "Stars across the field: 4.5″ wide, even over the frame"
    assert pattern_words(tilted.pattern, WORDS) == "One side is worse, the right: the camera or the focuser is tilted."
    assert evidence_words(even, WORDS, NUMBERS)[:2] == (
        "450 stars in 15 of 15 zones.",
        "Nothing differs over the field by as much as is noticed.",
    )
    assert ring_title([ringed()], WORDS, NUMBERS) == "Shadow offset 5.0\u202f% of the disc's diameter"
    pair = [ringed(), ringed(offset=0.6)]
    assert ring_title(pair, WORDS, NUMBERS) == "The shadow went from 5.0\u202f% off the middle of its disc to 0.5\u202f%"


def section_of(language: str, surveys: Sequence[SurveyView] = (), rings: Sequence[RingView] = ()) -> str:
    """What an entry's page draws, and below it what its rig's history does."""
    layout, book = layout_of("default", language, sample_book())
    shown = stars_shown(surveys, rings, book)
    calls = [f"stars.{name}(shown) }}}}{{{{ stars.in_history(shown, {name == 'rings'})" for name in ("surveys", "rings")]
    wanted = [call for call, views in zip(calls, (surveys, rings), strict=True) if views]
    source = "{% import 'stars.html' as stars with context %}{{ " + " }}{{ ".join(wanted) + " }}"
    return layout.env.from_string(source).render(link=lambda address: address, shown=shown)


def survey_view(frame_type: PictureType, **shape: float) -> SurveyView:
    return SurveyView(surveyed(**shape), date(2026, 9, 12), "long", frame_type)


def ring_view(frame_type: PictureType, offset: float = 6.0) -> RingView:
    return RingView(ringed(offset=offset), date(2026, 9, 12), "long", frame_type)


LABEL = {"en": "Simulation, not an observation", "de": "Simulation, keine Beobachtung"}


@pytest.mark.parametrize("language", LABEL)
@pytest.mark.parametrize("kind", ["surveys", "rings"])
def test_a_simulated_frame_says_so_wherever_it_or_its_numbers_are_shown(language: str, kind: str) -> None:
    """In the titles, beside each drawing, in its alternative text and in its table, on the entry's page and on its rig's."""
    make = survey_view if kind == "surveys" else ring_view
    html = section_of(language, **{kind: [make("simulation")]})
    label = LABEL[language]
    said = re.findall(r'<svg class="(?:field-map|ring-sketch)"[^>]*aria-label="([^"]*)"', html)
    assert len(said) == 2 and all(words.startswith(f"{label}: ") for words in said)
    assert len(re.findall(rf"<(h3|strong)>[^<]*\({label}\)</\1>", html)) == 2
    captions = re.findall(r"<figcaption>.*?</figcaption>", html, re.S)
    assert len(captions) == 2 and all(f"({label})" in caption for caption in captions)
    tables = re.findall(r"<table>.*?</table>", html, re.S)
    assert len(tables) == 1 and f"({label})" in tables[0]


def test_each_frame_says_what_it_is_by_itself() -> None:
    """A simulated field beside an observed one: the title of both says 'in part', the observed one has no label."""
    html = section_of("en", surveys=[survey_view("observation"), survey_view("simulation")])
    captions = re.findall(r"<figcaption>.*?</figcaption>", html, re.S)
    assert [LABEL["en"] in caption for caption in captions] == [False, True, False, True]
    assert len(re.findall(rf"<(h3|strong)>[^<]*\(in part: {LABEL['en']}\)</\1>", html)) == 2
    assert LABEL["en"] not in section_of("en", surveys=[survey_view("observation")], rings=[ring_view("observation")])


def stars_section(page: str) -> str:
    section = page[page.index('<section id="stars"') :]
    return section[: section.index("</section>")]


def test_the_demo_s_entry_shows_the_shadow_before_and_after(demo_site: Path):
    """Two sketches and one map of 15 focusable zones; the numbers as tables; what was done since the entry before, with why."""
    page = (demo_site / "entries/collimation/index.html").read_text("utf-8")
    section = stars_section(page)
    assert section.count('class="ring-sketch"') == 2
    assert section.count('class="zone" tabindex="0"') == 15
    assert len(re.findall(r"<figcaption><strong>(Before|After)</strong>", section)) == 2
    assert section.count("<table>") >= 2
    since = page[page.index("Since the last entry with this rig") : page.index('<section id="stars"')]
    assert "Set by an artificial star across the sports field" in since
    assert "Since " in since and "looking away from the Sun" in since


def test_the_demo_s_follow_up_shows_the_field_before_and_after(demo_site: Path):
    """Two maps of 15 zones each, and no sketch."""
    section = stars_section((demo_site / "entries/grain-of-sand/index.html").read_text("utf-8"))
    assert section.count('class="zone" tabindex="0"') == 30
    assert section.count('class="ring-sketch"') == 0
    assert len(re.findall(r"<figcaption><strong>(Before|After)</strong>", section)) == 2


def test_the_demo_s_rig_shows_what_was_measured_at_its_date(demo_site: Path):
    """In the rig's history, with small pictures of before and after and the way to the entry."""
    page = (demo_site / "rigs/long-mono/index.html").read_text("utf-8")
    history = page[page.index('<ol class="history"') :]
    rows = [item for item in re.findall(r"<li>.*?</li>", history, re.S) if "field-map" in item]
    by_date = {re.findall(r'datetime="([^"]+)"', row)[0]: row for row in rows}
    drawn = {date: (row.count('class="field-map"'), row.count('class="ring-sketch"')) for date, row in by_date.items()}
    assert drawn == {"2025-08-02": (1, 2), "2025-08-23": (2, 0)}
    assert "entries/collimation/index.html" in by_date["2025-08-02"]
    assert "entries/grain-of-sand/index.html" in by_date["2025-08-23"]
    label = rf"<figcaption>[^/]*\({LABEL['en']}\)</span></figcaption>"
    assert {date: len(re.findall(label, row)) for date, row in by_date.items()} == {"2025-08-02": 3, "2025-08-23": 2}


def test_the_demo_s_facts_have_what_was_measured(demo_site: Path):
    """The shadow moved into the middle; what stayed was a tilt, and the follow-up ends even, as its text says."""
    day = json.loads((demo_site / "entries/collimation/facts.json").read_text("utf-8"))
    assert [ring["file"].rpartition("/")[2] for ring in day["star_rings"]] == ["ring-before.fits", "ring-after.fits"]
    before, after = day["star_rings"]
    assert (round(before["offset_percent"], 1), round(after["offset_percent"], 1)) == (6.4, 0.3)
    follow_up = json.loads((demo_site / "entries/grain-of-sand/facts.json").read_text("utf-8"))
    fields = [*day["star_shapes"], *follow_up["star_shapes"]]
    assert [field["pattern"]["kind"] for field in fields] == ["tilt", "tilt", "even"]
    assert {frame["type"] for frame in (*fields, *day["star_rings"])} == {"simulation"}
    assert [round(max(zone["fwhm_arcsec"] for zone in field["zones"]), 1) for field in fields] == [4.7, 4.6, 3.3]
    assert [round(min(zone["fwhm_arcsec"] for zone in field["zones"]), 1) for field in fields] == [3.4, 3.4, 3.3]


def test_a_table_of_stars_is_no_number_for_the_text():
    """A marker in an author's text that names it gets a sentence instead of a page that cannot be drawn."""
    with pytest.raises(LookupError, match="'star_rings' is a table, not one number; write the number, or lead to figure:stars"):
        fact_value(prepared_at(HILL).facts, "star_rings")
