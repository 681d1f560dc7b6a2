"""Hours by filter as bars, each against its wish."""

from collections.abc import Iterable, Mapping

from msgspec import Struct

from sitegen.charts.filter_colour import passbands_of
from sitegen.diary.rig import Filter
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.pages.fact_formatter import FactFormatter, Shown


class FilterBar(Struct, frozen=True):
    """Lengths as shares (0..1) of the longest bar."""

    short: str
    name: str
    bands: tuple[str, ...]
    gathered: Shown
    wanted: Shown | None
    length: float
    wanted_length: float | None
    kept: int
    discarded: int


def filter_bars(
    rows: Mapping[str, FilterTotals], filters: Iterable[tuple[str, Filter]], formatter: FactFormatter
) -> tuple[FilterBar, ...]:
    """One for each filter, in their order."""
    longest = max([*(row.total_s for row in rows.values()), *(row.wanted_s or 0 for row in rows.values()), 1.0])
    show = formatter.show
    return tuple(
        FilterBar(
            short=short,
            name=rig_filter.name,
            bands=passbands_of(rig_filter),
            gathered=show("integration.total_s", row.total_s),
            wanted=show("integration.total_s", row.wanted_s) if row.wanted_s is not None else None,
            length=row.total_s / longest,
            wanted_length=row.wanted_s / longest if row.wanted_s is not None else None,
            kept=row.kept,
            discarded=row.discarded,
        )
        for short, rig_filter in filters
        for row in [rows[short]]
    )
