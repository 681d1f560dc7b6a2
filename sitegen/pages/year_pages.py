"""The nights of the diary by year, one page a year, one page a month: its nights as ribbons, its entries."""

from collections.abc import Iterable
from datetime import date

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import rows_of_time
from sitegen.pages.entry_sections.nights import months_of
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.recalled_light import recalled_sum
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import SheetMonth, YearSheet, year_sheet

MOST_RIBBONS = 62
"""So many nights of a month are drawn, two an evening; of more each evening is a link with its hours."""
BANDS = 5
"""So many years of the list of nights are drawn, the newest: each weighs 10 kB, and nobody looks at thirty of them."""


def pages(book: DiaryIndex) -> Iterable[Page]:
    sheets = [year_sheet(year, book) for year in book.years]
    months = [month for sheet in reversed(sheets) for month in sheet.months if month.has_page]
    days = [month.first_day for month in months]
    yield from (_year_page(sheet, book) for sheet in sheets)
    for earlier, month, later in zip([None, *days], months, [*days[1:], None], strict=False):
        yield _month_page(month, earlier, later, book)
    bands = {year: year_cloth(year, book) for year in book.years[:BANDS]}
    recalled_s = {year: totals.recalled_s for year, totals in book.totals_by_year.items() if totals.recalled_s}
    context = {"years": [(sheet, bands.get(sheet.year)) for sheet in sheets], "recalled_s": recalled_s}
    yield Page(addresses.NIGHTS, "nights.html", book.formatter.words["page.nights"], context, chapter="nights")


def _year_page(sheet: YearSheet, book: DiaryIndex) -> Page:
    year = sheet.year
    totals, cards = book.totals_by_year.get(year, LightTotals()), book.published_years.get(year, [])
    return Page(
        addresses.year(year),
        "year.html",
        str(year),
        {
            "year": year,
            "years": book.years,
            "sheet": sheet,
            "cloth": year_cloth(year, book),
            "shared_s": totals.shared_s,
            "recalled": recalled_sum(totals),
            "recalling": _recalling(year, book),
            "rows": rows_of_time(cards, book),
        },
        chapter="nights",
        facts=list_facts("years", f"{year:04d}", _cards(year, book), totals, _evenings(year, book)),
    )


def _month_page(month: SheetMonth, earlier: date | None, later: date | None, book: DiaryIndex) -> Page:
    first = month.first_day
    published = [card for card in book.published_years.get(first.year, []) if card.published.month == first.month]
    links = months_of(month.nights) if len(month.nights) > MOST_RIBBONS else ()
    return Page(
        addresses.month(first),
        "month.html",
        book.formatter.words.say("month.title", month=book.formatter.numbers.month_of_year(first)),
        {"month": month, "links": links, "rows": rows_of_time(published, book), "earlier": earlier, "later": later},
        chapter="nights",
    )


def _cards(year: int, book: DiaryIndex) -> list[EntryCard]:
    """Entries published in that year, with nights in it, or that recall hours of it, newest first."""
    slugs = {night.entry for night in book.by_year.get(year, [])} | {slug for slug, _ in _recalling(year, book)}
    return [card for card in book.cards if card.published.year == year or card.slug in slugs]


def _recalling(year: int, book: DiaryIndex) -> list[tuple[str, str]]:
    """Name and title of the entries that recall hours of that year."""
    if year not in book.recalled_years:
        return []
    return [(card.slug, card.title) for card in book.cards if year in card.recalled_years]


def _evenings(year: int, book: DiaryIndex) -> list[date]:
    return [night.evening for night in book.by_year.get(year, [])]


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.NIGHTS, *map(addresses.year, book.years), *map(addresses.month, _months(book))]


def _months(book: DiaryIndex) -> list[date]:
    """The first days of the months with a night or an entry, newest first."""
    days = (*book.by_evening, *(card.published for card in book.cards))
    return sorted({day.replace(day=1) for day in days}, reverse=True)


KIND = PageKind(
    name="years",
    pages=pages,
    addresses=_addresses,
    navigation=Navigation("nights", addresses.NIGHTS),
    has_facts=True,
)
