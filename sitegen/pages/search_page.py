"""The search page: a form, a script of its own, and the newest entries for who has not asked yet or has no script."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.by_year import NEWEST
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.page import Navigation, Page, PageKind


def pages(book: DiaryIndex) -> Iterable[Page]:
    filters = dict.fromkeys(short for card in book.cards for short, _ in card.filters)
    yield Page(
        addresses.SEARCH,
        "search.html",
        book.formatter.words["page.search"],
        {
            "rows": entry_rows(book.cards[:NEWEST], book),
            "filters": list(filters),
            "rigs": [rig.name for _, rig in sorted(book.rigs.items())],
            "years": book.years,
        },
        chapter="search",
    )


KIND = PageKind(
    name="search",
    pages=pages,
    addresses=lambda _: (addresses.SEARCH,),
    navigation=Navigation("search", addresses.SEARCH),
)
