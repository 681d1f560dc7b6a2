"""One page a year: its entries and the sheet of its nights."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.page import Page, PageKind
from sitegen.pages.site_book import SiteBook
from sitegen.pages.year_cloth import year_cloth
from sitegen.pages.year_sheet import year_sheet


def pages(book: SiteBook) -> Iterable[Page]:
    for year in book.years:
        yield Page(
            addresses.year(year),
            "year.html",
            str(year),
            {
                "year": year,
                "years": book.years,
                "sheet": year_sheet(year, book),
                "cloth": year_cloth(year, book),
                "rows": entry_rows(book.published_years.get(year, []), book),
            },
            section="nights",
        )
    yield Page(
        addresses.NIGHTS,
        "nights.html",
        book.shower.words["page.nights"],
        {"sheets": [year_sheet(year, book) for year in book.years]},
        section="nights",
    )


KIND = PageKind("years", pages)
