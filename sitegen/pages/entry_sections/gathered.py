"""Light gathered: hours per filter against what was wanted."""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.filter_bars import FilterBar, filter_bars
from sitegen.pages.prepared import PreparedEntry


class Gathered(Struct, frozen=True):
    """`title_key` chooses the sentence that stands over the bars; `title_values` fills it."""

    title_key: str
    title_values: dict[str, str]
    bars: tuple[FilterBar, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Gathered | None:
    rows = prepared.facts.integration.by_filter
    if not prepared.view.kept and not prepared.view.entry.wanted_hours:
        return None
    bars = filter_bars(rows, prepared.view.filters, book.formatter)
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
