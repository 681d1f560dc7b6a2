"""An entry of many nights: its page holds one of them and leads to the others, and grows by a link a night."""

import re
from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import Entry, NightNote
from sitegen.diary.sub import Sub
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.pages.card import card_of, with_ribbons
from sitegen.pages.entry_page import entry_page
from sitegen.pages.entry_sections.nights import MOST_NIGHTS, Nights, section
from sitegen.pages.page import Page
from sitegen.pages.prepared import PreparedEntry
from tests.diaries import HILL, diary, entry, run
from tests.pages.sample import layout_of, sample_book
from tests.pages.test_page_contract import leads_to

FIRST = date(2026, 4, 20)
FULLEST = 17
HALF_H = 8.0


def evening(number: int) -> date:
    return FIRST + timedelta(days=3 * number)


def entry_of(nights: int, **changes: object) -> Entry:
    """Three subs a night, one more in the fullest one."""
    subs: list[Sub] = []
    for number in range(nights):
        subs += run(f"{evening(number)} 12:00", 4 if number == min(FULLEST, nights - 1) else 3)
    return entry(subs, **changes)


def page_of(told: Entry) -> Page:
    (view,) = views_of(book := diary(told), book.entries)
    facts = facts_of(view)
    prepared = PreparedEntry(view, facts, with_ribbons(card_of(view, facts), view, HALF_H), ())
    return entry_page(prepared, sample_book())


def nights_on(page: Page) -> Nights:
    nights = page.context["sections"]["nights"]
    assert isinstance(nights, Nights)
    return nights


def drawn(told: Entry, language: str = "en") -> str:
    layout, _ = layout_of("default", language, sample_book())
    return layout.draw(page_of(told))


def elements(html: str) -> int:
    return len(re.findall(r"<[a-z]", html))


def test_a_dozen_nights_stand_on_the_page() -> None:
    """Each with its ribbon, its row, its column of numbers."""
    page = page_of(entry_of(MOST_NIGHTS))
    assert len(nights_on(page).cards) == MOST_NIGHTS == 12
    assert nights_on(page).months == ()
    assert [len(table.columns) for table in page.context["numbers_tables"] if table.title_key == "numbers.night"] == [MOST_NIGHTS]


def test_of_more_the_fullest_stands_on_the_page() -> None:
    """Drawn, in the table, among the numbers; 13 nights are one more than a dozen."""
    for count in (MOST_NIGHTS + 1, 30):
        page, chosen = page_of(entry_of(count)), evening(min(FULLEST, count - 1))
        assert [card.evening for card in nights_on(page).cards] == [chosen]
        fullest = nights_on(page).fullest
        assert fullest is not None and fullest.night.evening == chosen
        (table,) = (table for table in page.context["numbers_tables"] if table.title_key == "numbers.night")
        assert table.columns == (f"{chosen.day} {chosen:%b}",)


@pytest.mark.parametrize("language", ["en", "de"])
def test_every_night_is_a_click_away(language: str) -> None:
    """A link to the page of each of 30 nights, without script, with the light that it gathered; months in order."""
    layout, book = layout_of("default", language, sample_book())
    page = page_of(entry_of(30))
    html = layout.draw(page)
    links = leads_to(page.address, html)
    assert {f"nights/{evening(number)}/" for number in range(30)} <= links
    months = nights_on(page).months
    assert [month.first_day for month in months] == [date(2026, month, 1) for month in (4, 5, 6, 7)]
    assert sum(len(month.nights) for month in months) == 30
    assert {gathered_s for month in months for _, gathered_s in month.nights} == {900.0, 1200.0}
    assert book.formatter.numbers.duration(1200.0) in html


def test_a_night_costs_three_elements() -> None:
    """A link, its day and its hours, and three for each further month: six nights more of the same train."""
    more = elements(drawn(entry_of(42))) - elements(drawn(entry_of(36)))
    months = len(nights_on(page_of(entry_of(42))).months) - len(nights_on(page_of(entry_of(36))).months)
    assert more == 3 * 6 + 3 * months


def test_notes_and_their_cautions_are_those_of_the_night_shown() -> None:
    """What was noted of another night stands on its own page, and the cautions with it."""
    notes = {evening(number): NightNote(note="Climb the ladder to the top.") for number in (3, FULLEST)}
    page = page_of(entry_of(30, night_notes=notes))
    assert [card.evening for card, _ in nights_on(page).notes] == [evening(FULLEST)]
    assert list(page.context["cautions"].nights) == [evening(FULLEST)]


def test_a_night_at_two_sites_is_one_link() -> None:
    """With the light of both."""
    away = replace(HILL, slug="away", name="Away", latitude_deg=-30.0)
    told = entry([*entry_of(MOST_NIGHTS + 1).subs, *run(f"{evening(2)} 14:00", 2, site="away")])
    book = diary(told)
    (view,) = views_of(replace(book, sites={**book.sites, "away": away}), (told,))
    nights = section(PreparedEntry(view, facts_of(view), card_of(view, facts_of(view)), ()), sample_book())
    assert nights is not None
    assert [gathered_s for month in nights.months for day, gathered_s in month.nights if day == evening(2)] == [1500.0]
