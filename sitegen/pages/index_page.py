"""The front page: the newest entries, and the year at a glance."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import year_sheet

NEWEST, OLDER = 12, 48
"""Entries shown, and titles named below them; the pages of years have the others."""


def pages(book: DiaryIndex) -> Iterable[Page]:
    newest_year = book.years[0] if book.years else None
    yield Page(
        address=addresses.INDEX,
        template="index.html",
        title=book.settings.title,
        description=book.settings.tagline,
        context={
            "rows": entry_rows(book.cards[:NEWEST], book),
            "older": [(card.slug, card.title, card.published) for card in book.cards[NEWEST : NEWEST + OLDER]],
            "year": newest_year,
            "years": book.years,
            "sheet": year_sheet(newest_year, book) if newest_year else None,
            "cloth": year_cloth(newest_year, book) if newest_year else None,
        },
    )


KIND = PageKind(
    name="index",
    pages=pages,
    addresses=lambda _: (addresses.INDEX,),
    navigation=Navigation("diary", addresses.INDEX),
)
