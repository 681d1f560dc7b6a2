"""What pages that gather entries have in common: the list, the hours, the filters."""

from collections.abc import Sequence
from typing import Any

from sitegen.pages.card import EntryCard, passbands_of
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.site_book import SiteBook


def group_context(cards: Sequence[EntryCard], book: SiteBook) -> dict[str, Any]:
    """Rows newest first, hours over all of them, and hours by filter in the order filters first appear."""
    by_filter: dict[str, float] = {}
    bands: dict[str, tuple[int, ...]] = {}
    for card in cards:
        for short, one in card.filters:
            row = card.integration.by_filter.get(short)
            by_filter[short] = by_filter.get(short, 0.0) + (row.total_s if row else 0.0)
            bands.setdefault(short, passbands_of(one))
    return {
        "rows": entry_rows(tuple(cards), book),
        "total_s": sum(card.integration.total_s for card in cards),
        "night_count": len({night.evening for card in cards for night in card.nights}),
        "filters": [(short, bands[short], total) for short, total in by_filter.items() if total],
    }
