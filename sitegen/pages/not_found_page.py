"""What a web server shows for an address that is not there. It may be shown at any depth, so it links nowhere relative."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Page, PageKind


def pages(book: DiaryIndex) -> Iterable[Page]:
    yield Page(addresses.NOT_FOUND, "not_found.html", book.formatter.words["page.not_found"])


KIND = PageKind(name="not found", pages=pages, addresses=lambda _: (addresses.NOT_FOUND,), in_sitemap=False, shows="no entries")
