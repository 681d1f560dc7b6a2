"""A list that would grow without bound: its newest entries on the page itself, and all of each year on a page of its own."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import rows_of_time
from sitegen.pages.page import Page

NEWEST = 24
"""So many entries stand on the page itself."""


class ListYear(Struct, frozen=True):
    """A year of a list: how many of its entries were published in it, and where they stand."""

    year: int
    count: int
    address: str


def list_years(address: str, cards: Sequence[EntryCard]) -> tuple[ListYear, ...]:
    """The years of a list, newest first; none where the page itself holds all of it."""
    if len(cards) <= NEWEST:
        return ()
    counts: dict[int, int] = {}
    for card in cards:
        counts[card.published.year] = counts.get(card.published.year, 0) + 1
    return tuple(ListYear(year, count, addresses.in_year(address, year)) for year, count in sorted(counts.items(), reverse=True))


def addresses_by_year(lists: Iterable[tuple[str, Sequence[EntryCard]]]) -> list[str]:
    """Of every list, its page and those of its years."""
    return [place for address, cards in lists for place in (address, *(year.address for year in list_years(address, cards)))]


def pages_by_year(page: Page, cards: Sequence[EntryCard], book: DiaryIndex) -> Iterable[Page]:
    """The page, and one for each year of its list where it does not hold all of it. `cards` newest first."""
    yield page
    years = list_years(page.address, cards)
    for place in years:
        rows = rows_of_time([card for card in cards if card.published.year == place.year], book)
        yield Page(
            place.address,
            "list_year.html",
            book.formatter.words.say("group.of_year", name=page.title, year=place.year),
            {"list": (page.address, page.title), "year": place.year, "years": years, "rows": rows},
            chapter=page.chapter,
        )
