"""facts.json beside a list page: its totals, in the keys and with the rounding of an entry's `integration`."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any

from sitegen.facts.facts_json import SCHEMA, plain
from sitegen.facts.registry import FACTS
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import FilterTotal, LightTotals

_DECIMALS = {fact.key: fact.decimals for fact in FACTS["integration"]}
PAGES = ("totals", "targets", "rigs", "sites", "years", "nights")


def list_facts(
    page: str,
    name: str,
    cards: Iterable[EntryCard],
    totals: LightTotals,
    evenings: Iterable[date] | None = None,
    wanted_s: Mapping[str, float] | None = None,
) -> dict[str, Any]:
    """`page` is one of PAGES, `name` that of the address (of `totals/`, the diary's title). `evenings` where the page has more
    nights than those with counted frames. `wanted_s` by filter, where the page knows of wishes."""
    cards = tuple(cards)
    return {
        "schema": SCHEMA,
        "page": page,
        "name": name,
        "entries": [card.slug for card in cards],
        "nights": [evening.isoformat() for evening in sorted(totals.by_night if evenings is None else set(evenings))],
        "integration": integration_of(totals, shorts_of(cards), wanted_s or {}),
    }


def integration_of(totals: LightTotals, shorts: Sequence[str], wanted_s: Mapping[str, float]) -> dict[str, Any]:
    """Filters in the order of `shorts`."""
    by_filter = filters_in_order(totals, [*shorts, *wanted_s])
    values = {
        "total_s": totals.total_s,
        "kept": totals.kept,
        "discarded": totals.discarded,
        "discarded_s": totals.discarded_s,
        "broadband_s": totals.broadband_s,
        "narrowband_s": totals.narrowband_s,
        "dark_equivalent_s": totals.dark_equivalent_s,
        "shared_s": totals.shared_s,
        "by_filter": {
            short: _filter_row(by_filter.get(short, FilterTotal()), wanted_s.get(short))
            for short in dict.fromkeys([*by_filter, *wanted_s])
        },
        "by_night": {evening.isoformat(): round(total_s, 3) for evening, total_s in totals.by_night.items()},
    }
    return {key: plain(value, _DECIMALS[key]) for key, value in values.items()}


def _filter_row(total: FilterTotal, wanted_s: float | None) -> dict[str, Any]:
    return {"total_s": round(total.total_s, 3), "kept": total.kept, "discarded": total.discarded, "wanted_s": wanted_s}


def filters_in_order(totals: LightTotals, shorts: Iterable[str]) -> dict[str, FilterTotal]:
    """Those with frames; such as `shorts` does not name come last."""
    first = {short: totals.by_filter[short] for short in shorts if short in totals.by_filter}
    return {**first, **{short: total for short, total in sorted(totals.by_filter.items()) if short not in first}}


def shorts_of(cards: Iterable[EntryCard]) -> list[str]:
    """Short names of filters in the order in which they first appear."""
    return list(dict.fromkeys(short for card in cards for short, _ in card.filters))


def wishes_of(cards: Sequence[EntryCard]) -> dict[str, float]:
    """Seconds wanted by filter, as the newest entry says that wants any; `cards` newest first."""
    wishes: dict[str, float] = {}
    for card in cards:
        for short, row in card.integration["by_filter"].items():
            if row["wanted_s"] is not None:
                wishes.setdefault(short, row["wanted_s"])
    return wishes
