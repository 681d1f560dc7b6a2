"""What the pages say is what the code does: sentences that were not so, each held against what they speak of."""

import re
import tomllib
from dataclasses import replace as with_changes
from datetime import date, datetime
from zoneinfo import ZoneInfo

import pytest
from msgspec.structs import replace

from sitegen.catalogue.credits import CREDITS
from sitegen.facts.night_moon import MOON_RISE
from sitegen.facts.places import PLACES
from sitegen.number_text import NumberText
from sitegen.pages.credits_page import LIBRARIES
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_numbers import number_tables
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.linked_data import entry_linked_data
from sitegen.pages.night_pages import night_pages
from sitegen.pages.words import Words, words_from
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import year_sheet
from sitegen.stars.survey import STARS_PER_ZONE
from sitegen.stars.zones import FEWEST_STARS
from tests.conftest import ROOT
from tests.diaries import HILL
from tests.pages.sample import layout_of, prepared_sample, sample_book
from tests.pages.test_year_cloth import book_at, prepared_at

LANGUAGES = ("en", "de")


def words(language: str) -> Words:
    return words_from(language, ((ROOT / f"themes/default/words/{language}.yaml").read_text("utf-8"),))


def formatter(language: str = "en") -> FactFormatter:
    return FactFormatter(NumberText(language, words(language)), words(language))


def how(path: str, language: str) -> str:
    return formatter(language).how(PLACES[path], path)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_footer_does_not_claim_every_number(language: str) -> None:
    """Temperatures, seeing, a Bortle class and catalogue values come from no log; the numbers that are links say where they
    come from on `explained/`, whose introduction claims no more than that."""
    footer, intro = words(language)["footer.computed"], words(language)["explained.intro"]
    assert not re.match(r"(Every|Each|Jede) ", footer) and not re.match(r"(Every|Each|Jede) ", intro)
    assert re.search("catalogue|Katalog", footer) and re.search("author|Verfasser", footer)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_zone_needs_as_many_stars_as_the_code_asks(language: str) -> None:
    said = how("star_shapes", language)
    assert str(STARS_PER_ZONE) in said and str(FEWEST_STARS) in said
    assert not re.search("five|fünf", said)


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_comes_in_ones_with_a_plural(language: str) -> None:
    """Sentences whose count may be one have a form for it."""
    spoken = words(language)
    one_star = spoken.count("stars.zone_empty", 1, place="there")
    one_night = spoken.say("chart.used.title", nights=spoken.count("chart.used.nights", 1), share="40 %")
    assert not re.search(r"1 (stars|Sterne)\b", one_star)
    assert not re.search(r"\b(their|ihrer)\b|nutzten", one_night)
    assert re.search("1 sub-exposure of 1 night |1 Einzelbild aus 1 Nacht ", spoken.say(
        "data.description", subs=spoken.count("data.subs", 1), of_nights=spoken.count("data.of_nights", 1), total="", title="",
    ))  # fmt: skip


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_target_without_hours_of_its_own_is_not_waiting_for_any(language: str) -> None:
    """A second target outside the field stands beside an entry with hours, which may be finished."""
    assert not re.search(r"\b(yet|noch)\b", words(language)["sky.no_light"])


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_work_written_down_is_not_no_work_done(language: str) -> None:
    assert re.search("written down|aufgeschrieben", words(language)["since.nothing"])


@pytest.mark.parametrize("language", LANGUAGES)
def test_only_what_hangs_on_the_place_comes_from_the_rounded_one(language: str) -> None:
    assert not re.search("all numbers come|alle Zahlen kommen", words(language)["site.rounded"])


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_moonrise_of_the_next_day_carries_its_date(language: str) -> None:
    """Rise and set are the first from noon to noon: a rise at ten in the morning otherwise reads as before the set at seven in
    the evening. On the night's page and in the entry's table."""
    prepared, book = prepared_at(HILL), with_changes(book_at(HILL), formatter=formatter(language))
    zone, seen = ZoneInfo(HILL.time_zone), set()
    tables = number_tables(prepared.facts, prepared.view, prepared.card.nights, book.formatter)
    (table,) = (table for table in tables if table.title_key == "numbers.night")
    for column, (page, night) in enumerate(zip(night_pages([prepared], book), prepared.facts.nights, strict=True)):
        evening = date.fromisoformat(night.evening_of)
        on_page = {one.path: one.text for one in page.context["parts_of_night"][0]["facts"]}
        in_table = {row[column].path: row[column].text for row in table.rows}
        for path, moment in (("nights.moon.rise", night.moon.rise), ("nights.moon.set", night.moon.set)):
            assert moment is not None
            local = datetime.fromisoformat(moment).astimezone(zone)
            is_dated = book.formatter.numbers.short_day(local.date()) in on_page[path]
            assert is_dated is (local.date() != evening)
            assert on_page[path] == in_table[path]
            seen.add(is_dated)
    assert seen == {True, False}


def test_a_moonrise_in_a_sentence_carries_its_date() -> None:
    """There nothing else tells the evening, and the clock is UTC."""
    assert formatter().show("nights.moon.rise", "2026-09-29T23:39:29Z").text == "29 Sept, 23:39 UTC"
    assert formatter().text(MOON_RISE, "nights.moon.rise", None) == "—"


def two_places() -> DiaryIndex:
    """The nights of the hill, and one of them told again from far in the north by another entry."""
    book = book_at(HILL)
    (card,) = book.cards
    away = replace(card.nights[0], site="north", entry="away")
    more = replace(card, slug="away", nights=(away,))
    places = {**book.sites, "north": replace(book.sites["hill"], slug="north", latitude_deg=60.0)}
    return with_changes(book, sites=places, cards=(card, more))


def test_no_night_is_drawn_on_the_darkness_of_another_place() -> None:
    """The cloth is one place's: threads of other places would lie on a dusk that they never saw. They are counted below."""
    cloth = year_cloth(2026, two_places())
    assert cloth is not None
    assert (cloth.site, len(cloth.threads), cloth.elsewhere) == (HILL.name, 2, 1)
    layout, _ = layout_of("default", "en", sample_book())
    source = "{% import 'cloth.html' as cloths with context %}{{ cloths.year(cloth, 365) }}"
    assert "One night at another place is not drawn" in layout.env.from_string(source).render(cloth=cloth)


def test_a_night_of_which_nothing_was_kept_gathered_nothing() -> None:
    """'35 min gathered in 2 nights' counts the nights that gave them."""
    book = book_at(HILL)
    (card,) = book.cards
    first, second = card.nights
    light = tuple(replace(light, kept=0, kept_s=0.0) for light in first.light)
    lost = replace(first, kept=0, integration_s=0.0, counted_s=0.0, light=light)
    sheet = year_sheet(2026, with_changes(book, cards=(replace(card, nights=(lost, second)),)))
    assert (sheet.night_count, sheet.total_s) == (1, 1200.0)


def test_the_licence_of_the_pictures_is_not_put_on_the_log() -> None:
    """`licence` is that of the pictures, says the reference of keys."""
    _, book = layout_of("default", "en", sample_book())
    book = with_changes(book, settings=replace(book.settings, licence="CC-BY-4.0"))
    assert "license" not in entry_linked_data(prepared_sample(), book, None)


@pytest.mark.parametrize("language", LANGUAGES)
def test_explanations_say_where_the_numbers_come_from(language: str) -> None:
    """A position and a kind may be the author's, a magnitude may be B, a measured scale may come from the file."""
    assert not re.search("^(Catalogue position|Ort aus dem Katalog)", how("target.ra_deg", language))
    assert re.search(r"\bB\b", how("target.magnitude", language))
    source = words(language).phrase(PLACES["optics.measured_scale_arcsec_px"].source)
    assert not re.search("least squares|kleinste Quadrate", source)
    assert re.search("−12°", how("nights.target.max_altitude_deg", language))


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_the_model_of_moonlight_leaves_out_is_said(language: str) -> None:
    """The docstring of sky/moonlight.py names it for developers; a reader finds it on `explained/`."""
    left_out = {"en": ("V band", "distance", "haze", "twilight"), "de": ("V-Band", "Entfernung", "Dunst", "Dämmerung")}
    moonlight = how("subs.sky_brightening_mag", language)
    assert [word for word in left_out[language] if word not in moonlight] == []
    worth = how("integration.dark_equivalent_s", language)
    assert re.search("V band|V-Band", worth) and re.search("distance|Entfernung", worth)
    assert re.search("camera's own noise|Rauschen der Kamera", worth)


def test_every_library_of_the_package_is_credited() -> None:
    """Those that pyproject.toml asks for, by the names of their packages."""
    asked = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]
    names = {re.split(r"[><=~!]", line)[0].lower() for line in asked}
    assert names - {name.lower() for name in LIBRARIES} == set()


def test_every_table_in_a_site_is_credited() -> None:
    """Besides catalogues and figures: the Earth's rotation, the leap seconds, and the clocks of time zones."""
    told = " ".join(f"{one.name} {one.used_for} {one.licence}" for one in CREDITS)
    for table in ("OpenNGC", "Gaia", "Hipparcos", "d3-celestial", "Roman (1987)", "IERS", "time zone"):
        assert table in told, table


def test_drawings_from_share_alike_stars_name_their_terms() -> None:
    """On the credits page: charts drawn from Gaia's stars keep the licence of Gaia's data."""
    said = words("en")["credits.drawn_from_stars"]
    assert "CC BY-SA 3.0 IGO" in said and "ESA/Gaia/DPAC" in said
    assert "credits.drawn_from_stars" in (ROOT / "themes/default/html/credits.html").read_text("utf-8")


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_rule_of_the_moon_has_the_diary_s_own_limits(language: str) -> None:
    """Both are keys of `moon_rule`: 'most of the dark' would be a half whatever the author wrote. And a rig may be the
    entry's."""
    assert not re.search(r"\bmost of|die meiste Zeit", how("nights.advice", language))
    assert re.search("entry|Eintrag", how("optics.rig", language))


def test_the_fullest_filter_need_not_have_most_of_the_light() -> None:
    """It has the most of any; in German both are one word."""
    assert words("en")["chart.gathered.title"].startswith("The most light")
