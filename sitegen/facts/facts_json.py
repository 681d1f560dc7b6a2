"""Views to the published numbers: facts.json, schema 1; 2 where an entry has more subs than a plain column holds."""

import math
from collections.abc import Container, Mapping
from datetime import datetime
from functools import cache
from typing import Any, TypeVar

from msgspec import Struct, convert, json, structs

from sitegen.facts.column_runs import MOST_PLAIN, published_column
from sitegen.facts.fact import Fact
from sitegen.facts.places import PLACES, fact_of, places_in, record_in
from sitegen.facts.registry import (
    EntryFacts,
    IntegrationFacts,
    MosaicFacts,
    NightFacts,
    OpticsFacts,
    PanelFacts,
    PictureFacts,
    SubFacts,
    TargetFacts,
)
from sitegen.facts.utc_text import utc_text
from sitegen.facts.views import EntryView

SCHEMA, SCHEMA_WITH_RUNS = 1, 2
"""The second where columns of subs are runs."""
Record = TypeVar("Record", bound=Struct)


def facts_of(view: EntryView) -> EntryFacts:
    """The entry's facts, each computed and rounded once."""
    entry = view.entry
    parts = {
        "schema": SCHEMA,
        "target": record_of(TargetFacts, entry.targets[0]) if entry.targets else None,
        "optics": tuple(record_of(OpticsFacts, row) for row in view.optics),
        "integration": record_of(IntegrationFacts, view),
        "nights": tuple(record_of(NightFacts, night) for night in view.nights),
        "subs": record_of(SubFacts, view),
        "mosaic": record_of(MosaicFacts, view.mosaic) if view.mosaic else None,
        "panels": tuple(record_of(PanelFacts, panel) for panel in view.mosaic.panels) if view.mosaic else (),
        "pictures": tuple(record_of(PictureFacts, picture) for picture in view.pictures),
    }
    return convert({**_values(EntryFacts, view, parts), **parts}, EntryFacts)


def record_of(kind: type[Record], row: Any) -> Record:
    """One object of facts.json for one row. Raises msgspec.ValidationError where a fact computes what its type is not."""
    return convert(_values(kind, row), kind)


def _values(kind: type[Struct], row: Any, without: Container[str] = ()) -> dict[str, Any]:
    """By published name, the objects inside it included."""
    values: dict[str, Any] = {}
    for key, fact, inner in _fields(kind):
        if fact is not None and key not in without:
            values[key] = plain(fact.compute(row), fact.decimals)
        elif inner is not None and key not in without:
            values[key] = _values(inner, row)
    return values


@cache
def _fields(kind: type[Struct]) -> tuple[tuple[str, Fact[Any] | None, type[Struct] | None], ...]:
    """By published name: the fact, or the record of the group, that fills it. Asking a record costs as much as computing it."""
    return tuple((field.encode_name, fact_of(field), record_in(field)) for field in structs.fields(kind))


def as_json(facts: Struct) -> dict[str, Any]:
    """As plain JSON values, in the published order."""
    values: dict[str, Any] = json.decode(_encoded(facts))
    return values


def json_text(facts: Struct) -> str:
    """A facts.json as it is published."""
    return json.format(_encoded(facts), indent=1).decode() + "\n"


def _encoded(facts: Struct) -> bytes:
    if not isinstance(facts, EntryFacts) or len(facts.subs.start) <= MOST_PLAIN:
        return json.encode(facts)
    columns = {
        place.key: published_column(getattr(facts.subs, place.attribute), place.fact.unit, place.fact.decimals)
        for place in places_in(SubFacts)
    }
    whole = {field.encode_name: getattr(facts, field.name) for field in structs.fields(EntryFacts)}
    return json.encode({**whole, "schema": SCHEMA_WITH_RUNS, "subs": columns})


def fact_at(path: str) -> Fact[Any] | None:
    """The fact published at a dotted path such as 'nights.moon.illuminated'; None where there is none."""
    return PLACES.get(path)


def plain(value: Any, decimals: int | None) -> Any:
    """What JSON can hold: times with Z, NaN as null, numbers with the digits that mean something."""
    if type(value) is float:
        return _plain_number(value, decimals)
    if isinstance(value, datetime):
        return utc_text(value)
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return value
    if isinstance(value, Struct):
        return plain(structs.asdict(value), decimals)
    if isinstance(value, Mapping):
        return {key: plain(inner, decimals) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [plain(inner, decimals) for inner in value]
    if hasattr(value, "tolist"):
        return plain(value.tolist(), decimals)
    return _plain_number(value, decimals)


def _plain_number(value: float, decimals: int | None) -> float | int | None:
    if math.isnan(value):
        return None
    if decimals is None:
        return value
    rounded = round(value, decimals) + 0.0
    return int(rounded) if rounded.is_integer() else rounded
