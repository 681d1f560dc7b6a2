"""Hours of which no log is left, as the author recalls them: beside what was logged, never in it."""

from collections.abc import Iterable

from sitegen.diary.recalled import Recalled
from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView


def recalled_seconds(items: Iterable[Recalled]) -> float:
    return sum((item.total_s for item in items), 0.0)


def recalled_by_filter(items: Iterable[Recalled]) -> dict[str, float]:
    """Seconds by the filter's short name, in the author's order; hours without a filter are in none."""
    totals: dict[str, float] = {}
    for item in items:
        if item.filter is not None:
            totals[item.filter] = totals.get(item.filter, 0.0) + item.total_s
    return totals


RECALLED_S: Fact[EntryView] = Fact(
    "Recalled, no log",
    "s",
    lambda view: recalled_seconds(view.entry.recalled),
    "Sum of the hours that the author recalls without a log. They are in no other number.",
    "the author",
    3,
)
