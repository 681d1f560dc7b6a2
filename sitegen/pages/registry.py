"""Every kind of page made from cards alone, in the order a report names them. Entry and night pages need more than cards
and are made beside their entries (`entry_page`, `night_pages`)."""

from sitegen.pages import (
    credits_page,
    explained_page,
    index_page,
    lessons_page,
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
from sitegen.pages.page import PageKind

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
