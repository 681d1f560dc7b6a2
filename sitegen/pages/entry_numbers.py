"""The numbers: every fact of the entry with its text and its explanation, in tables."""

from collections.abc import Sequence
from datetime import date
from operator import attrgetter
from typing import Any
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.facts.places import Place, places_in
from sitegen.facts.registry import EntryFacts, IntegrationFacts, MosaicFacts, NightFacts, OpticsFacts, PanelFacts, PictureFacts
from sitegen.facts.views import EntryView
from sitegen.pages.card import NightCard
from sitegen.pages.entry_sections.nights import shown_nights
from sitegen.pages.fact_formatter import FactFormatter, Shown


class NumberTable(Struct, frozen=True):
    """`columns` are headings (a train, a night); each row one fact with its value under each of them."""

    title_key: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Shown, ...], ...]


def number_tables(
    facts: EntryFacts, view: EntryView, cards: Sequence[NightCard], formatter: FactFormatter
) -> tuple[NumberTable, ...]:
    """Tables of optics, integration, the nights that the page shows, pictures and panels; a table without columns and a row
    without values are left out. `cards` of all nights."""
    shown = shown_nights(cards)
    nights = [formatter.numbers.short_day(cards[index].evening) for index in shown]
    whens = [(ZoneInfo(view.nights[index].site.time_zone), cards[index].evening) for index in shown]
    totals = [facts.integration] if view.lights or view.entry.recalled else []
    tables = (
        _table("optics", OpticsFacts, facts.optics, [row.rig.name for row in view.optics], formatter),
        _table("integration", IntegrationFacts, totals, [""], formatter),
        _table("night", NightFacts, [facts.nights[index] for index in shown], nights, formatter, whens),
        _table("picture", PictureFacts, facts.pictures, [row.file.rpartition("/")[2] for row in facts.pictures], formatter),
        _table("mosaic", MosaicFacts, [facts.mosaic] if facts.mosaic else [], [""], formatter),
        _table("panel", PanelFacts, facts.panels, [row.name for row in facts.panels], formatter),
    )
    return tuple(table for table in tables if table.columns)


Whens = Sequence[tuple[ZoneInfo, date]]
"""The clock and the evening of each column; none for columns that are no nights."""
_ELSEWHERE = {"by_filter", "by_night", "evening_of", "rig", "file", "name"}


def _table(
    name: str,
    kind: type[Struct],
    rows: Sequence[Struct],
    columns: list[str],
    formatter: FactFormatter,
    whens: Whens = (),
) -> NumberTable:
    wanted = (place for place in places_in(kind) if place.key not in _ELSEWHERE)
    shown = (_row(place, [attrgetter(place.attribute)(row) for row in rows], formatter, whens) for place in wanted)
    return NumberTable(f"numbers.{name}", tuple(columns) if rows else (), tuple(row for row in shown if row))


def _row(place: Place, values: list[Any], formatter: FactFormatter, whens: Whens) -> tuple[Shown, ...]:
    """Nothing where nothing is known."""
    if all(value in (None, ()) for value in values):
        return ()
    return tuple(
        formatter.show(place.path, value, *(whens[index] if whens else ())) for index, value in enumerate(values)
    )
