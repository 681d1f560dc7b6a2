"""One page an observing site, told as exactly as the diary's privacy allows."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.diary.settings import Privacy
from sitegen.pages.by_year import addresses_by_year, pages_by_year
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.groups import group_context
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import Page, PageKind


def pages(book: DiaryIndex) -> Iterable[Page]:
    for slug, site in sorted(book.sites.items()):
        cards, totals = book.by_site.get(slug, []), book.totals_by_site.get(slug, LightTotals())
        address = addresses.site(slug)
        page = Page(
            address,
            "site.html",
            site.name,
            {
                "place": site,
                "privacy": book.settings.privacy,
                "decimals": _decimals(book.settings.privacy),
                **group_context(address, cards, totals, book),
            },
            chapter="gear",
            facts=list_facts("sites", slug, cards, totals),
        )
        yield from pages_by_year(page, cards, book)


def _decimals(privacy: Privacy) -> int:
    """Digits that the rounding leaves meaningful: 1 for 0.1, 0 for 1; four of an exact position."""
    if privacy.site_position != "rounded":
        return 4
    step_deg = privacy.round_to_deg
    return next((digits for digits in range(5) if abs(step_deg * 10**digits - round(step_deg * 10**digits)) < 1e-9), 5)


def _addresses(book: DiaryIndex) -> list[str]:
    return addresses_by_year((addresses.site(slug), book.by_site.get(slug, [])) for slug in sorted(book.sites))


KIND = PageKind(name="sites", pages=pages, addresses=_addresses, has_facts=True)
