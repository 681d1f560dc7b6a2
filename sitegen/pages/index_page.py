"""The front page: the newest picture, what is being gathered, the year at a glance, the other entries as a wall of pictures."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import EntryRow, entry_row
from sitegen.pages.filter_bars import FilterBar, filter_bars
from sitegen.pages.outlook_page import OutlookRow, useful_nights
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import year_sheet

WALL, OLDER = 12, 48
"""Entries on the wall, and titles named below it; the pages of years have the others."""
NEXT = 4
"""So many of the coming useful nights are named."""


class FrontEntry(Struct, frozen=True):
    """An entry with its hours by filter. `nights`: the first useful ones to come, where the diary publishes its outlook."""

    row: EntryRow
    bars: tuple[FilterBar, ...]
    nights: tuple[OutlookRow, ...] = ()


def pages(book: DiaryIndex) -> Iterable[Page]:
    newest_year = book.years[0] if book.years else None
    newest = next((card for card in book.cards if card.picture is not None), None)
    gathering = next((card for card in book.cards if card.stage == "gathering"), None)
    others = [card for card in book.cards if card is not newest]
    yield Page(
        address=addresses.INDEX,
        template="index.html",
        title=book.settings.title,
        description=book.settings.tagline,
        context={
            "newest": _front(newest, book) if newest else None,
            "gathering": _front(gathering, book, NEXT) if gathering else None,
            "wall": _wall(others[:WALL], book),
            "older": [(card.slug, card.title, card.published) for card in others[WALL : WALL + OLDER]],
            "year": newest_year,
            "years": book.years,
            "sheet": year_sheet(newest_year, book) if newest_year else None,
            "cloth": year_cloth(newest_year, book) if newest_year else None,
        },
    )


def _front(card: EntryCard, book: DiaryIndex, nights: int = 0) -> FrontEntry:
    bars = filter_bars(card.integration.by_filter, card.filters, book.formatter)
    return FrontEntry(entry_row(card, book), bars, useful_nights(card, book, nights) if nights else ())


def _wall(cards: Sequence[EntryCard], book: DiaryIndex) -> tuple[EntryRow, ...]:
    """Only entries without a picture show their nights."""
    return tuple(entry_row(card, book, woven=card.picture is None) for card in cards)


KIND = PageKind(
    name="index",
    pages=pages,
    addresses=lambda _: (addresses.INDEX,),
    navigation=Navigation("diary", addresses.INDEX),
)
