"""One page a year: its entries and the sheet of its nights."""

from collections.abc import Iterable
from datetime import date

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import year_sheet


def pages(book: DiaryIndex) -> Iterable[Page]:
    for year in book.years:
        totals = book.totals_by_year.get(year, LightTotals())
        yield Page(
            addresses.year(year),
            "year.html",
            str(year),
            {
                "year": year,
                "years": book.years,
                "sheet": year_sheet(year, book),
                "cloth": year_cloth(year, book),
                "shared_s": totals.shared_s,
                "rows": entry_rows(book.published_years.get(year, []), book),
            },
            chapter="nights",
            facts=list_facts("years", f"{year:04d}", _cards(year, book), totals, _evenings(year, book)),
        )
    yield Page(
        addresses.NIGHTS,
        "nights.html",
        book.formatter.words["page.nights"],
        {"sheets": [year_sheet(year, book) for year in book.years]},
        chapter="nights",
    )


def _cards(year: int, book: DiaryIndex) -> list[EntryCard]:
    """Entries published in that year, or with nights in it, newest first."""
    slugs = {night.entry for night in book.by_year.get(year, [])}
    return [card for card in book.cards if card.published.year == year or card.slug in slugs]


def _evenings(year: int, book: DiaryIndex) -> list[date]:
    return [night.evening for night in book.by_year.get(year, [])]


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.NIGHTS, *map(addresses.year, book.years)]


KIND = PageKind(
    name="years",
    pages=pages,
    addresses=_addresses,
    navigation=Navigation("nights", addresses.NIGHTS),
    has_facts=True,
)
