"""Lists that would grow without bound: the newest on the page itself, all of a year on its own, nights by month."""

import gzip
import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta
from functools import cache

import pytest
from msgspec.structs import replace as changed

from sitegen.build.records import dump
from sitegen.diary import addresses
from sitegen.pages.by_year import NEWEST
from sitegen.pages.card import EntryCard, without_words
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Page, PageKind
from sitegen.pages.registry import PAGE_KINDS
from tests.pages.sample import LONG, layout_of, long_book
from tests.pages.test_page_contract import leads_to

CLICKS = 3
LISTS = [kind for kind in PAGE_KINDS if kind.name not in ("sky", "totals", "outlook")]


def pages_of_lists(book: DiaryIndex) -> list[Page]:
    """But for the maps and charts of the whole diary, which are no lists and take long to draw."""
    return [page for kind in LISTS for page in kind.pages(book)]


@cache
def links(count: int) -> dict[str, set[str]]:
    """Where the links of every list page lead; an entry's own page is not drawn."""
    layout, book = layout_of("default", "en", long_book(count))
    return {page.address: leads_to(page.address, layout.draw(page)) for page in pages_of_lists(book)}


def within(clicks: int, ways: dict[str, set[str]]) -> set[str]:
    """What the front page leads to."""
    reached = {addresses.INDEX}
    for _ in range(clicks):
        reached |= {there for here in reached for there in ways.get(here, ())}
    return reached


def wanted(cards: Iterable[EntryCard]) -> set[str]:
    """Every entry and every night."""
    return {address for card in cards for address in (addresses.entry(card.slug), addresses.night(card.nights[0].evening))}


def test_every_entry_and_night_is_three_clicks_away() -> None:
    """From the front page, through pages that hold a year or a month, without script."""
    assert wanted(long_book(75).cards) - within(CLICKS, links(75)) == set()


def test_every_lesson_is_two_clicks_away() -> None:
    """On the page of lessons or that of its year."""
    layout, book = layout_of("default", "en", long_book(60))
    drawn = {page.address: layout.draw(page) for page in pages_of_lists(book)}
    near = within(2, links(60)) & drawn.keys()
    text = "".join(drawn[address] for address in near if address.startswith(addresses.LESSONS))
    assert [number for number in range(60) if f"Lesson {number}." not in text] == []


@pytest.mark.parametrize(
    "address", [addresses.target("ngc-253"), addresses.rig("long"), addresses.site("hill"), addresses.topic("dew")]
)
def test_a_list_holds_its_newest_and_its_years_all(address: str) -> None:
    """24 rows on the page; each entry once on the page of the year in which it was published."""
    book = long_book(60)
    pages = {page.address: page for page in pages_of_lists(book)}
    assert [row.slug for row in pages[address].context["rows"]] == [card.slug for card in book.cards[:NEWEST]]
    years = {card.published.year for card in book.cards}
    by_year = [row.slug for year in years for row in pages[addresses.in_year(address, year)].context["rows"]]
    assert sorted(by_year) == sorted(card.slug for card in book.cards)
    assert [(place.year, place.address) for place in pages[address].context["years"]] == [
        (year, addresses.in_year(address, year)) for year in sorted(years, reverse=True)
    ]


def test_a_short_list_has_no_pages_of_years() -> None:
    pages = pages_of_lists(long_book(NEWEST))
    assert [page.address for page in pages if page.template == "list_year.html"] == []


@pytest.mark.parametrize("kind", LISTS, ids=lambda kind: kind.name)
def test_addresses_are_told_without_a_page(kind: object) -> None:
    """Those of years and months, too, and all may be withdrawn."""
    book = long_book(60)
    pages = [page.address for page in kind.pages(book)]  # type: ignore[attr-defined]
    assert sorted(kind.addresses(book)) == sorted(pages)  # type: ignore[attr-defined]
    assert [address for address in pages if not addresses.may_be_ours(addresses.file_of(address))] == []


def test_pages_do_not_grow_with_the_diary() -> None:
    """A diary twice as old has pages no larger, but for one link a year: the search page, lists, lessons, nights."""
    small, large = (_sizes(long_book(count)) for count in (75, 150))
    assert {address: (size, large[address]) for address, size in small.items() if large[address] > 1.3 * size} == {}
    assert len(small) > 40


def _sizes(book: DiaryIndex) -> dict[str, int]:
    """Tags of every list page, but of the year in which the smaller diary ends, and of the list of years."""
    layout, book = layout_of("default", "en", book)
    pages = (page for page in pages_of_lists(book) if "2023" not in page.address and page.address != addresses.NIGHTS)
    return {page.address: layout.draw(page).count("<") for page in pages}


@pytest.mark.parametrize("kind", PAGE_KINDS, ids=lambda kind: kind.name)
def test_a_kind_shows_no_more_than_it_says(kind: PageKind) -> None:
    """Else a changed title would leave its pages as they were."""
    book = long_book(LONG)
    fewer = {"cards": book.cards, "numbers": tuple(without_words(card) for card in book.cards), "no entries": ()}
    plain = replace(book, cards=fewer[kind.shows])
    assert [dump(page) for page in kind.pages(plain)] == [dump(page) for page in kind.pages(book)]


def busy_book(count: int) -> DiaryIndex:
    """So many entries of one year, each of a night, two lessons; several share an evening."""
    plain = long_book(count)
    return replace(plain, cards=tuple(_within_a_year(card, count - 1 - place, count) for place, card in enumerate(plain.cards)))


def _within_a_year(card: EntryCard, number: int, count: int) -> EntryCard:
    evening = date(2021, 1, 1) + timedelta(days=number * 360 // count)
    night = changed(card.nights[0], evening=evening, thread=(30.0 + number % 20, 60.0 + number % 20))
    return changed(card, published=evening, nights=(night,))


@cache
def busy_pages() -> dict[str, tuple[Page, str]]:
    layout, book = layout_of("default", "en", busy_book(800))
    kinds = [kind for kind in LISTS if kind.name in ("years", "lessons", "rigs")]
    return {page.address: (page, layout.draw(page)) for kind in kinds for page in kind.pages(book)}


@pytest.mark.parametrize(
    "address",
    [addresses.year(2021), addresses.month(date(2021, 3, 1)), addresses.NIGHTS, addresses.in_year(addresses.rig("long"), 2021),
     addresses.in_year(addresses.LESSONS, 2021)],
)  # fmt: skip
def test_a_year_of_eight_hundred_entries_stays_light(address: str) -> None:
    """No list of it has more than 3,000 elements or 60 kB gzipped, as a diary of 8,000 in ten years would have."""
    _, html = busy_pages()[address]
    assert len(re.findall("<[a-z]", html)) <= 3000
    assert len(gzip.compress(html.encode("utf-8"), 9)) <= 60_000


def test_every_entry_and_night_of_a_busy_year_stands_in_its_lists() -> None:
    """As lines where they are many: no entry, lesson or evening is left out."""
    book, pages = busy_book(800), busy_pages()
    entries = {addresses.entry(card.slug) for card in book.cards}
    evenings = {addresses.night(card.nights[0].evening) for card in book.cards}
    lists = addresses.rig("long"), addresses.LESSONS
    for address in (addresses.year(2021), *(addresses.in_year(list_of, 2021) for list_of in lists)):
        assert entries - leads_to(address, pages[address][1]) == set()
    months = [address for address in pages if address.count("/") == 3 and address.startswith("years/")]
    assert evenings - {there for address in months for there in leads_to(address, pages[address][1])} == set()


def test_a_month_s_links_add_up_to_its_hours() -> None:
    """An evening of several entries is one link with the light of all."""
    page, html = busy_pages()[addresses.month(date(2021, 3, 1))]
    (links,) = page.context["links"]
    assert sum(gathered_s for _, gathered_s in links.nights) == pytest.approx(page.context["month"].total_s, rel=1e-9)
    assert len(links.nights) == page.context["month"].night_count < len(page.context["month"].nights)
    assert html.count("<svg class=\"ribbon medium\"") == 0


def test_threads_of_a_busy_year_are_one_an_evening() -> None:
    """From the first start to the last end."""
    page, _ = busy_pages()[addresses.year(2021)]
    cloth = page.context["cloth"]
    assert len(cloth.threads) == 800 and not cloth.names_threads
    ((_, path),) = cloth.thread_paths
    assert path.count("M") == len({thread.y for thread in cloth.threads}) < 366
    first = [thread for thread in cloth.threads if thread.y == 0]
    left, right = min(thread.x for thread in first), max(thread.x + thread.width for thread in first)
    assert path.startswith(f"M{left} 0h{round(right - left, 2)}v")
