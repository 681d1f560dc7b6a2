"""facts.json beside a list page: its totals, in the keys and with the rounding of an entry's `integration`."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date

from msgspec import Struct, convert, field

from sitegen.facts.facts_json import SCHEMA, plain
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.facts.places import PLACES, path_of
from sitegen.facts.registry import IntegrationFacts
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import FilterTotal, LightTotals


class ListFacts(Struct, frozen=True):
    """`page` is the name of the page's kind, `name` that of its address (of `totals/`, the diary's title); `nights` are evenings,
    ISO 8601."""

    schema_number: int = field(name="schema")
    page: str
    name: str
    entries: tuple[str, ...]
    nights: tuple[str, ...]
    integration: IntegrationFacts


def list_facts(
    page: str,
    name: str,
    cards: Iterable[EntryCard],
    totals: LightTotals,
    evenings: Iterable[date] | None = None,
    wanted_s: Mapping[str, float] | None = None,
) -> ListFacts:
    """`evenings` where the page has more nights than those with counted frames. `wanted_s` by filter, where the page knows of
    wishes."""
    cards = tuple(cards)
    return ListFacts(
        SCHEMA,
        page,
        name,
        tuple(card.slug for card in cards),
        tuple(evening.isoformat() for evening in sorted(totals.by_night if evenings is None else set(evenings))),
        integration_of(totals, shorts_of(cards), wanted_s or {}),
    )


def integration_of(totals: LightTotals, shorts: Sequence[str], wanted_s: Mapping[str, float]) -> IntegrationFacts:
    """Rounded as an entry's; filters in the order of `shorts`."""
    by_filter = filters_in_order(totals, [*shorts, *wanted_s])
    exact = IntegrationFacts(
        total_s=totals.total_s,
        recalled_s=totals.recalled_s,
        kept=totals.kept,
        discarded=totals.discarded,
        discarded_s=totals.discarded_s,
        broadband_s=totals.broadband_s,
        narrowband_s=totals.narrowband_s,
        dark_equivalent_s=totals.dark_equivalent_s,
        shared_s=totals.shared_s,
        by_filter={
            short: _filter_row(by_filter.get(short, FilterTotal()), wanted_s.get(short))
            for short in dict.fromkeys([*by_filter, *wanted_s])
        },
        by_night={evening.isoformat(): round(total_s, 3) for evening, total_s in totals.by_night.items()},
    )
    names = IntegrationFacts.__struct_fields__
    return convert({name: plain(getattr(exact, name), _decimals(name)) for name in names}, IntegrationFacts)


def _decimals(key: str) -> int | None:
    return PLACES[path_of("integration", key)].decimals


def _filter_row(total: FilterTotal, wanted_s: float | None) -> FilterTotals:
    return FilterTotals(round(total.total_s, 3), round(total.recalled_s, 3), total.kept, total.discarded, wanted_s)


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
        for short, row in card.integration.by_filter.items():
            if row.wanted_s is not None:
                wishes.setdefault(short, row.wanted_s)
    return wishes
