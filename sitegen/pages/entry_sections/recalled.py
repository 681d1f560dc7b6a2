"""Recalled: hours of which no log is left, apart from what was logged."""

from msgspec import Struct

from sitegen.charts.filter_colour import passbands_of
from sitegen.diary.recalled import Recalled, When
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.prepared import PreparedEntry


class RecalledRow(Struct, frozen=True):
    """`bands` is None where the rig does not tell the filter's passband. A text is empty where nothing is known, `filter`
    where the rig has none."""

    filter: str
    bands: tuple[str, ...] | None
    subs: str
    total: str
    when: str
    target: str


class RecalledShown(Struct, frozen=True):
    title: str
    total: Shown
    rows: tuple[RecalledRow, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> RecalledShown | None:
    items = prepared.view.entry.recalled
    if not items:
        return None
    total = book.formatter.show("integration.recalled_s", prepared.facts.integration.recalled_s)
    title = book.formatter.words.say("recalled.title", total=total.text)
    return RecalledShown(title, total, tuple(_row(item, prepared, book) for item in items))


def _row(item: Recalled, prepared: PreparedEntry, book: DiaryIndex) -> RecalledRow:
    numbers, targets = book.formatter.numbers, prepared.view.entry.targets
    rig = book.rigs.get(item.rig or "")
    rig_filter = rig.filters.get(item.filter or "") if rig else None
    return RecalledRow(
        filter=item.filter or (book.formatter.words["recalled.no_filter"] if rig is None or rig.filters else ""),
        bands=passbands_of(rig_filter) if rig_filter else None,
        subs=_subs(item, book),
        total=numbers.duration(item.total_s),
        when=when_words(item.when, book) if item.when else "",
        target=targets[item.target].name if item.target is not None and len(targets) > 1 else "",
    )


def _subs(item: Recalled, book: DiaryIndex) -> str:
    words, numbers = book.formatter.words, book.formatter.numbers
    if item.count is None:
        return ""
    if item.exposure_s is None:
        return words.count("entry.subs", item.count)
    return words.say("recalled.each", count=numbers.number(item.count, 0), exposure=numbers.exposure(item.exposure_s))


def when_words(when: When, book: DiaryIndex) -> str:
    """'autumn 2019', 'winter 2019/20', 'April 2018', '21 April 2018', '2019'."""
    words, numbers = book.formatter.words, book.formatter.numbers
    if when.season:
        year = f"{when.year}/{(when.year + 1) % 100:02d}" if when.to_next else str(when.year)
        return words.say("recalled.season", season=words[f"season.{when.season}"], year=year)
    if when.day:
        return numbers.day(when.first)
    return numbers.month_of_year(when.first) if when.month else str(when.year)


SECTION = EntrySection("recalled", section, "recalled")
