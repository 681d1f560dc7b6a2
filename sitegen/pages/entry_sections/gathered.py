"""Light gathered: hours per filter against what was wanted."""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.pages.card import passbands_of
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.prepared import PreparedEntry


class FilterBar(Struct, frozen=True):
    """Lengths as shares (0..1) of the longest bar."""

    short: str
    name: str
    bands: tuple[int, ...]
    gathered: Shown
    wanted: Shown | None
    length: float
    wanted_length: float | None
    kept: int
    discarded: int


class Gathered(Struct, frozen=True):
    """`title_key` chooses the sentence that stands over the bars; `title_values` fills it."""

    title_key: str
    title_values: dict[str, str]
    bars: tuple[FilterBar, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Gathered | None:
    rows = prepared.facts.integration.by_filter
    if not prepared.view.kept and not prepared.view.entry.wanted_hours:
        return None
    longest = max([*(row.total_s for row in rows.values()), *(row.wanted_s or 0 for row in rows.values()), 1.0])
    show = book.formatter.show
    bars = tuple(
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
        for short, rig_filter in prepared.view.filters
        for row in [rows[short]]
    )
    return Gathered(*_title(rows, book), bars)


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
