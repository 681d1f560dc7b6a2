"""The numbers: every fact of the entry with its text and its explanation, in tables."""

from collections.abc import Mapping
from typing import Any
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.facts.registry import FACTS
from sitegen.facts.views import EntryView
from sitegen.pages.shown import Shower, Shown


class NumberTable(Struct, frozen=True):
    """`columns` are headings (a train, a night); each row one fact with its value under each of them."""

    title_key: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Shown, ...], ...]


def number_tables(facts: Mapping[str, Any], view: EntryView, shower: Shower) -> tuple[NumberTable, ...]:
    """Tables of optics, integration, nights and pictures; a table without columns and a row without values are
    left out."""
    nights = [shower.numbers.short_day(night.evening) for night in view.nights]
    zones = [ZoneInfo(night.site.time_zone) for night in view.nights]
    tables = (
        _table("optics", facts["optics"], [row.rig.name for row in view.optics], shower),
        _table("integration", [facts["integration"]] if view.lights else [], [""], shower),
        _table("night", facts["nights"], nights, shower, zones),
        _table("picture", facts["pictures"], [str(row["file"]).rpartition("/")[2] for row in facts["pictures"]], shower),
    )
    return tuple(table for table in tables if table.columns)


_PREFIX = {"optics": "optics", "integration": "integration", "night": "nights", "picture": "pictures"}
_ELSEWHERE = {"by_filter", "by_night", "evening_of", "rig", "file"}


def _table(
    scope: Any,
    rows: list[Mapping[str, Any]],
    columns: list[str],
    shower: Shower,
    zones: list[ZoneInfo] | None = None,
) -> NumberTable:
    shown = tuple(
        tuple(
            shower.show(f"{_PREFIX[scope]}.{fact.key}", _at(row, fact.key), zones[index] if zones else None)
            for index, row in enumerate(rows)
        )
        for fact in FACTS[scope]
        if fact.key not in _ELSEWHERE and any(_at(row, fact.key) not in (None, []) for row in rows)
    )
    return NumberTable(f"numbers.{scope}", tuple(columns) if rows else (), shown)


def _at(row: Mapping[str, Any], key: str) -> Any:
    value: Any = row
    for part in key.split("."):
        value = value[part]
    return value
