"""What pages that gather entries have in common: the list, the hours, the filters."""

from collections.abc import Iterable, Sequence
from itertools import chain
from typing import Any

from sitegen.charts.filter_colour import passbands_of
from sitegen.pages.by_year import NEWEST, list_years
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.list_facts import filters_in_order, shorts_of
from sitegen.pages.recalled_light import recalled_sum


def group_context(address: str, cards: Sequence[EntryCard], totals: LightTotals | None, book: DiaryIndex) -> dict[str, Any]:
    """Rows newest first, and the years of the others; hours, nights and filters as `totals` counts them (None for no light),
    filters in the order in which they first appear."""
    counted = totals or LightTotals()
    return {
        "rows": entry_rows(tuple(cards[:NEWEST]), book),
        "years": list_years(address, cards),
        "total_s": counted.total_s,
        "shared_s": counted.shared_s,
        "recalled": recalled_sum(counted),
        "night_count": len(counted.by_night),
        "filters": [
            (short, _bands(short, cards, book), total.total_s)
            for short, total in filters_in_order(counted, shorts_of(cards)).items()
            if total.total_s
        ],
    }


def _bands(short: str, cards: Iterable[EntryCard], book: DiaryIndex) -> tuple[str, ...]:
    """Of a filter by its short name, as the first entry has it; another entry of the diary may have gathered through it."""
    filters = (dict(card.filters).get(short) for card in chain(cards, book.cards))
    newest = next((rig_filter for rig_filter in filters if rig_filter is not None), None)
    return passbands_of(newest) if newest else ()
