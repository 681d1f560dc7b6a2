"""Hours recalled without a log, added up for lists beside what was logged."""

from collections.abc import Callable, Iterable, Mapping

from msgspec import Struct

from sitegen.diary.recalled import Recalled
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import FilterTotal, Key, LightTotals


class RecalledSum(Struct, frozen=True):
    """What a list shows: all of it, and by the filters' short names. Hours without a filter are in the sum alone."""

    total_s: float
    filters: tuple[tuple[str, float], ...]


def add_recalled(
    totals_by_key: dict[Key, LightTotals], cards: Iterable[EntryCard], keys: Callable[[EntryCard, Recalled], Iterable[Key]]
) -> dict[Key, LightTotals]:
    """The same totals, each with what is recalled under its key; a key of which nothing was logged gets its own."""
    for card in cards:
        for item in card.recalled:
            for key in keys(card, item):
                _add(totals_by_key.get(key) or totals_by_key.setdefault(key, LightTotals()), item)
    return totals_by_key


def _add(totals: LightTotals, item: Recalled) -> None:
    totals.recalled_s += item.total_s
    if item.filter is not None:
        through = totals.by_filter.get(item.filter) or totals.by_filter.setdefault(item.filter, FilterTotal())
        through.recalled_s += item.total_s


def recalled_sum(totals: LightTotals) -> RecalledSum | None:
    """None where nothing is recalled."""
    if not totals.recalled_s:
        return None
    return RecalledSum(totals.recalled_s, _through(totals.by_filter))


def _through(by_filter: Mapping[str, FilterTotal]) -> tuple[tuple[str, float], ...]:
    return tuple((short, total.recalled_s) for short, total in by_filter.items() if total.recalled_s)


def targets_of(card: EntryCard, item: Recalled) -> tuple[str, ...]:
    return () if item.target is None else (card.targets[item.target].slug,)


def rigs_of(_: EntryCard, item: Recalled) -> tuple[str, ...]:
    return () if item.rig is None else (item.rig,)


def sites_of(_: EntryCard, item: Recalled) -> tuple[str, ...]:
    return () if item.site is None else (item.site,)


def years_of(_: EntryCard, item: Recalled) -> tuple[int, ...]:
    """A season that goes on in the next year belongs to the one in which it began."""
    return () if item.when is None else (item.when.year,)
