"""What the two pages of charts make of a diary."""

from collections.abc import Mapping
from datetime import date
from typing import Any

import pytest
from msgspec.structs import replace

from sitegen.diary.diary import Diary
from sitegen.diary.public_position import public_site
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.pages import sky_page, totals_page
from sitegen.pages.card import card_of, with_ribbons
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.fact_formatter import FactFormatter
from tests.charts.speaking import VOICE, WORDS
from tests.diaries import SCULPTOR, diary, entry, run

HOUR = 3600.0


def book_of(whole: Diary) -> DiaryIndex:
    cards = tuple(with_ribbons(card_of(view, facts_of(view)), view, 9.0) for view in views_of(whole, whole.entries))
    sites = {slug: public_site(site, whole.settings.privacy) for slug, site in whole.sites.items()}
    return DiaryIndex(whole.settings, sites, whole.rigs, cards, FactFormatter(VOICE.numbers, WORDS))


def context(page_kind: Any, book: DiaryIndex) -> Mapping[str, Any]:
    (page,) = page_kind.pages(book)
    return page.context


BROAD = entry(run("2026-10-12T11:00:00", 12, 600.0, gap_s=0.0), wanted_hours={"L": 5.0}, stage="gathering")
THROUGH_HA = run("2026-10-12T12:00:01", 12, 600.0, gap_s=0.0, filter="Ha")  # a second later: other frames
NARROW = entry(THROUGH_HA, slug="second", published=date(2026, 11, 1), wanted_hours={"Ha": 9.0})


def test_filters_stand_in_order_with_what_is_missing() -> None:
    """Broadband first; only an entry that is still gathering has something to go."""
    lights = totals_page.filter_lights(book_of(diary(BROAD, NARROW)).cards)
    assert [(one.short, one.gathered_s, one.missing_s) for one in lights] == [("L", 2 * HOUR, 3 * HOUR), ("Ha", 2 * HOUR, 0.0)]


def test_two_entries_of_one_night_use_it_once() -> None:
    """Two hours and two hours that overlap by one are three of the dark hours, as the ribbons of both tell; to a
    thousandth (the ribbon's coordinates have two decimals of a percent)."""
    book = book_of(diary(BROAD, NARROW))
    (night,) = totals_page.used_nights(book.by_evening)
    alone = [card.nights[0].used_share for card in book.cards]
    assert night.dark_s == book.cards[0].nights[0].dark_s
    assert all(share is not None and share < night.share for share in alone)
    assert night.share == pytest.approx(3 * HOUR / night.dark_s, abs=1e-3)


def test_years_run_through_and_months_have_the_language_of_the_diary() -> None:
    """A year without a night is a gap, not left out; month names come from CLDR."""
    early = entry(run("2024-02-03T12:00:00", 3, 600.0), slug="early", published=date(2024, 3, 1))
    nights = [night for cards in book_of(diary(BROAD, early)).by_evening.values() for night in cards]
    assert [column.label for column in totals_page.by_year(nights)] == ["2024", "2025", "2026"]
    months = totals_page.by_month(nights, "de")
    assert [column.label for column in months if column.total_s] == ["Februar", "Oktober"]
    assert totals_page.by_year([]) == ()


def test_the_sums_are_those_of_the_entries() -> None:
    """Four hours in all, half of them narrowband, each explained as an entry's number is."""
    sums = {one.path: one.text for one in context(totals_page, book_of(diary(BROAD, NARROW)))["sums"]}
    assert sums["integration.total_s"] == "4\u202fh"
    assert sums["integration.narrowband_s"] == "2\u202fh"
    assert sums["integration.kept"] == "24"


def test_hidden_sites_are_told() -> None:
    """Their hours are missing under the Moon's chart, which says so."""
    privacy = replace(diary().settings.privacy, site_position="hidden")
    found = context(totals_page, book_of(diary(BROAD, privacy=privacy)))["drawn"]
    assert "dark_hours_used" not in [chart.name for chart in found]
    assert [chart.name for chart in found][:2] == ["light_gathered", "hours_by_year"]


def test_a_diary_without_light_has_no_charts() -> None:
    """The page stands, and says that nothing has been gathered."""
    assert context(totals_page, book_of(diary(entry())))["drawn"] == []


def test_the_sky_has_every_target_once() -> None:
    """Two entries on one target are one mark, with the light of both; what moves has no mark but is named."""
    comet = replace(SCULPTOR, slug="comet", name="A comet", ra_deg=None, dec_deg=None, kind="moving")
    found = context(sky_page, book_of(diary(BROAD, NARROW, entry(slug="third", targets=(comet,)))))
    assert [(name, [one.target.name for one in ones]) for name, ones in found["constellations"]] == [("Sculptor", ["NGC 253"])]
    assert found["constellations"][0][1][0].total_s == 4 * HOUR
    assert [one.target.name for one in found["moving"]] == ["A comet"]
    assert found["map"].table.links == ("../targets/ngc-253/index.html",)


def test_a_diary_of_gear_has_no_map() -> None:
    """No target, no sky."""
    assert context(sky_page, book_of(diary(entry(targets=()))))["map"] is None
