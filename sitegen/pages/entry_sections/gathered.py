"""Light gathered: hours per filter against what was wanted."""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from sitegen.charts.filter_colour import passbands_of
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.facts.registry import OpticsFacts
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.filter_bars import FilterBar, filter_bars
from sitegen.pages.prepared import PreparedEntry


class TrainBar(Struct, frozen=True):
    """What one train gathered: in all, and through each filter."""

    slug: str
    name: str
    gathered: Shown
    filters: tuple[tuple[str, tuple[str, ...], str], ...]


class Gathered(Struct, frozen=True):
    """`title_key` chooses the sentence that stands over the bars; `title_values` fills it. `trains`, where there are several.
    `next_hour`: what one more broadband hour would add."""

    title_key: str
    title_values: dict[str, str]
    bars: tuple[FilterBar, ...]
    trains: tuple[TrainBar, ...] = ()
    next_hour: Shown | None = None


def section(prepared: PreparedEntry, book: DiaryIndex) -> Gathered | None:
    rows = prepared.facts.integration.by_filter
    if not prepared.view.kept and not prepared.view.entry.wanted_hours:
        return None
    bars = filter_bars(rows, prepared.view.filters, book.formatter)
    gain = prepared.facts.next_hour_gain
    next_hour = None if gain is None else book.formatter.show("next_hour_gain", gain)
    return Gathered(*_title(rows, book), bars, _trains(prepared, book), next_hour)


def _trains(prepared: PreparedEntry, book: DiaryIndex) -> tuple[TrainBar, ...]:
    """Of rigs with light; none where one rig has all of it."""
    rows: dict[str, list[OpticsFacts]] = {}
    for row in prepared.facts.optics:
        if row.by_filter:
            rows.setdefault(row.rig, []).append(row)
    return tuple(_train(rig, its_rows, prepared, book) for rig, its_rows in rows.items()) if len(rows) > 1 else ()


def _train(rig: str, rows: Sequence[OpticsFacts], prepared: PreparedEntry, book: DiaryIndex) -> TrainBar:
    """All its binnings and changes together."""
    total_s = sum(row.integration_s for row in rows)
    through = {
        short: sum(row.by_filter[short].total_s for row in rows if short in row.by_filter) for short, _ in prepared.view.filters
    }
    filters = (
        (short, passbands_of(rig_filter), book.formatter.numbers.duration(through[short]))
        for short, rig_filter in prepared.view.filters
        if through[short]
    )
    return TrainBar(rig, book.rigs[rig].name, book.formatter.show("optics.integration_s", total_s), tuple(filters))


def _title(rows: Mapping[str, FilterTotals], book: DiaryIndex) -> tuple[str, dict[str, str]]:
    """The sentence: what is still missing, that all wishes are met, or simply how much there is."""
    numbers = book.formatter.numbers
    missing = {short: row.wanted_s - row.total_s for short, row in rows.items() if row.wanted_s}
    short_of = {short: gap for short, gap in missing.items() if gap > 60}
    total = numbers.duration(sum(row.total_s for row in rows.values()))
    if short_of:
        worst = max(short_of, key=lambda short: (short_of[short], short))
        return "gathered.short", {"filter": worst, "missing": numbers.duration(short_of[worst]), "total": total}
    return ("gathered.met" if missing else "gathered.plain"), {"total": total}


SECTION = EntrySection("gathered", section, "light-gathered")
