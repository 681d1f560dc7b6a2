"""The year as a cloth: every night of it, dusk in dusk, the Moon, and what was gathered."""

import re

import pytest
from msgspec.structs import replace

from sitegen.diary.public_position import public_site
from sitegen.diary.settings import Privacy
from sitegen.diary.site import Site
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.number_text import NumberText
from sitegen.pages.card import card_of, with_ribbons
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.words import words_from
from sitegen.pages.year_cloth import YearCloth, year_cloth
from tests.conftest import ROOT
from tests.diaries import HILL, diary, entry, run
from tests.published_values.sky_sun import NO_ASTRONOMICAL_DARKNESS_2026, NO_NAUTICAL_DARKNESS_2026, NO_SUNSET_2026

ENGLISH = words_from("en", ((ROOT / "themes/default/words/en.yaml").read_text("utf-8"),))
HALF_H = 9.0


def book_at(site: Site, privacy: Privacy = Privacy("exact")) -> DiaryIndex:  # noqa: B008  a frozen record
    book = diary(entry([*run("2026-06-12 22:00", 3), *run("2026-09-12 14:00", 4)]), site=site, privacy=privacy)
    views = views_of(book, book.entries)
    cards = tuple(with_ribbons(card_of(view, facts_of(view)), view, HALF_H) for view in views)
    formatter = FactFormatter(NumberText("en", ENGLISH), ENGLISH)
    return DiaryIndex(book.settings, {site.slug: public_site(site, privacy)}, book.rigs, cards, formatter, half_hours=HALF_H)


def prepared_at(site: Site) -> PreparedEntry:
    """The one entry of that diary, ready for its page."""
    book = diary(entry([*run("2026-06-12 22:00", 3), *run("2026-09-12 14:00", 4)]), site=site, privacy=Privacy("exact"))
    (view,) = views_of(book, book.entries)
    facts = facts_of(view)
    return PreparedEntry(view, facts, with_ribbons(card_of(view, facts), view, HALF_H), ())


def cloth_at(latitude_deg: float) -> YearCloth:
    cloth = year_cloth(2026, book_at(replace(HILL, latitude_deg=latitude_deg, longitude_deg=18.0)))
    assert cloth is not None
    return cloth


def nights_of(path: str) -> set[int]:
    """Which rows (days of the year, from 0) an area covers; each of its shapes goes down one side and up the other."""
    rows: set[int] = set()
    for shape in filter(None, path.split("Z")):
        (first,) = re.findall(r"^M[\d.]+ (\d+)", shape)
        steps = [int(rows_down) for rows_down in re.findall(r"v(-?\d+)", shape)]
        assert sum(steps) == 0
        rows |= set(range(int(first), int(first) + sum(step for step in steps if step > 0)))
    return rows


def test_summer_without_darkness_is_a_hole() -> None:
    """At Stockholm's latitude, nights without astronomical darkness and without nautical one, as many as the ephemeris counts."""
    areas = dict(cloth_at(59.33).areas)
    assert NO_ASTRONOMICAL_DARKNESS_2026.at("Stockholm").agrees(365 - len(nights_of(areas[4])))
    assert NO_NAUTICAL_DARKNESS_2026.at("Stockholm").agrees(365 - len(nights_of(areas[3])))
    assert len(nights_of(areas[1])) == 365


def test_midnight_sun_leaves_no_night_and_polar_night_is_whole() -> None:
    """At Tromsø's latitude, nights without a sunset, as many as the ephemeris counts."""
    areas = dict(cloth_at(69.65).areas)
    assert NO_SUNSET_2026.at("Tromso").agrees(365 - len(nights_of(areas[1])))


def test_kept_subs_are_threads_in_their_night() -> None:
    """One thread a night, in its row, as wide as its subs took of the clock."""
    threads = cloth_at(-32.64).threads
    assert [thread.y for thread in threads] == [162, 254]  # 12 June and 12 September of a year that is no leap year
    assert threads[1].width == pytest.approx(100 * (4 * 300 + 3 * 10) / (2 * HALF_H * 3600), abs=0.05)


def test_the_clock_is_the_ribbons() -> None:
    """The cloth reads the diary's common clock off a ribbon: nine hours on either side."""
    assert cloth_at(-32.64).hours[0] == (pytest.approx(50 - 50 * 8 / 9, abs=0.01), "16")


def test_a_hidden_site_has_no_cloth() -> None:
    """Its nights would tell where it lies."""
    assert year_cloth(2026, book_at(HILL, Privacy("hidden"))) is None
