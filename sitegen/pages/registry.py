"""Every kind of page: a new one is a file, its template, its address and a line here.

They stand in the order of the navigation, of reports and of the sitemap."""

from sitegen.pages import (
    credits_page,
    entry_page,
    explained_page,
    index_page,
    lessons_page,
    night_pages,
    not_found_page,
    outlook_page,
    rig_pages,
    search_page,
    site_pages,
    sky_page,
    target_pages,
    topic_pages,
    totals_page,
    year_pages,
)
from sitegen.pages.page import EntryPageKind, Kind, PageKind

PAGE_KINDS: tuple[PageKind, ...] = (
    index_page.KIND,
    year_pages.KIND,
    sky_page.KIND,
    target_pages.KIND,
    rig_pages.KIND,
    site_pages.KIND,
    topic_pages.KIND,
    totals_page.KIND,
    lessons_page.KIND,
    outlook_page.KIND,
    search_page.KIND,
    explained_page.KIND,
    credits_page.KIND,
    not_found_page.KIND,
)
"""Made from cards alone."""

ENTRY_PAGE_KINDS: tuple[EntryPageKind, ...] = (
    entry_page.KIND,
    night_pages.KIND,
)
"""Made beside their entries, which they need whole."""

KINDS: tuple[Kind, ...] = (*PAGE_KINDS, *ENTRY_PAGE_KINDS)
