"""A mosaic: hours and filters of each panel, and the field of the whole."""

from msgspec import Struct

from sitegen.charts.filter_colour import passbands_of
from sitegen.facts.registry import MosaicFacts, PanelFacts
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.prepared import PreparedEntry


class PanelRow(Struct, frozen=True):
    """`cells`: what each filter gathered, '' for nothing, in the order of the section's filters."""

    name: str
    place: str
    gathered: Shown
    kept: int
    discarded: int
    cells: tuple[str, ...]


class Mosaic(Struct, frozen=True):
    """`title` tells the field of the whole, `turned` how the panels were laid out for it; `elsewhere` the subs in none of
    them, '' where there are none. `filters` with their passbands."""

    title: str
    field: Shown | None
    turned: str
    told_by: str
    filters: tuple[tuple[str, tuple[str, ...]], ...]
    panels: tuple[PanelRow, ...]
    elsewhere: str


def section(prepared: PreparedEntry, book: DiaryIndex) -> Mosaic | None:
    facts = prepared.facts.mosaic
    if facts is None or not prepared.facts.panels:
        return None
    panels, words = prepared.facts.panels, book.formatter.words
    shorts = [short for short, _ in prepared.view.filters if any(short in panel.by_filter for panel in panels)]
    filters = dict(prepared.view.filters)
    return Mosaic(
        title=_title(facts, len(panels), book),
        field=book.formatter.show("mosaic.field_deg", facts.field_deg) if facts.field_deg else None,
        turned=words[f"mosaic.turned.{facts.turned_by}"],
        told_by=words[f"mosaic.told.{panels[0].told_by}"],
        filters=tuple((short, passbands_of(filters[short])) for short in shorts),
        panels=tuple(_row(panel, shorts, book) for panel in panels),
        elsewhere=_elsewhere(facts, book),
    )


def _title(facts: MosaicFacts, count: int, book: DiaryIndex) -> str:
    words = book.formatter.words
    panels = words.count("chart.finder.panels", count)
    if facts.field_deg is None:
        return words.say("mosaic.title", panels=panels)
    return words.say("mosaic.title_field", panels=panels, field=book.formatter.show("mosaic.field_deg", facts.field_deg).text)


def _row(panel: PanelFacts, shorts: list[str], book: DiaryIndex) -> PanelRow:
    numbers, show = book.formatter.numbers, book.formatter.show
    kept = {short: panel.by_filter[short].total_s for short in shorts if short in panel.by_filter}
    at = show("panels.ra_deg", panel.ra_deg).text, show("panels.dec_deg", panel.dec_deg).text
    place = "" if panel.ra_deg is None else " ".join(at)
    return PanelRow(
        name=panel.name,
        place=place,
        gathered=show("panels.integration_s", panel.integration_s),
        kept=panel.kept,
        discarded=panel.discarded,
        cells=tuple(numbers.duration(kept[short]) if kept.get(short) else "" for short in shorts),
    )


def _elsewhere(facts: MosaicFacts, book: DiaryIndex) -> str:
    if not facts.elsewhere:
        return ""
    total = book.formatter.numbers.duration(facts.elsewhere_s)
    return book.formatter.words.count("mosaic.elsewhere", facts.elsewhere, total=total)


SECTION = EntrySection("mosaic", section, "mosaic")
