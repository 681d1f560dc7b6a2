"""Views to the published numbers: facts.json, schema 1."""

import math
from collections.abc import Mapping
from datetime import datetime
from json import dumps
from typing import Any, TypeVar

from msgspec import Struct, convert, json, structs

from sitegen.facts.fact import Fact
from sitegen.facts.places import PLACES, fact_of, record_in
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

SCHEMA = 1
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
    return convert({**_values(EntryFacts, view), **parts}, EntryFacts)


def record_of(kind: type[Record], row: Any) -> Record:
    """One object of facts.json for one row. Raises msgspec.ValidationError where a fact computes what its type is not."""
    return convert(_values(kind, row), kind)


def _values(kind: type[Struct], row: Any) -> dict[str, Any]:
    """By published name, the objects inside it included."""
    values: dict[str, Any] = {}
    for field in structs.fields(kind):
        fact, inner = fact_of(field), record_in(field)
        if fact is not None:
            values[field.encode_name] = plain(fact.compute(row), fact.decimals)
        elif inner is not None:
            values[field.encode_name] = _values(inner, row)
    return values


def as_json(facts: Struct) -> dict[str, Any]:
    """As plain JSON values, in the published order."""
    values: dict[str, Any] = json.decode(json.encode(facts))
    return values


def json_text(facts: Struct) -> str:
    """A facts.json as it is published."""
    return dumps(as_json(facts), ensure_ascii=False, indent=1) + "\n"


def fact_at(path: str) -> Fact[Any] | None:
    """The fact published at a dotted path such as 'nights.moon.illuminated'; None where there is none."""
    return PLACES.get(path)


def plain(value: Any, decimals: int | None) -> Any:
    """What JSON can hold: times with Z, NaN as null, numbers with the digits that mean something."""
    if isinstance(value, datetime):
        return utc_text(value)
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return value
    if isinstance(value, Struct):
        return plain(structs.asdict(value), decimals)
    if isinstance(value, Mapping):
        return {key: plain(inner, decimals) for key, inner in value.items()}
    if hasattr(value, "tolist"):
        return plain(value.tolist(), decimals)
    if isinstance(value, list | tuple):
        return [plain(inner, decimals) for inner in value]
    return _plain_number(value, decimals)


def _plain_number(value: float, decimals: int | None) -> float | int | None:
    if math.isnan(value):
        return None
    if decimals is None:
        return value
    rounded = round(value, decimals) + 0.0
    return int(rounded) if rounded.is_integer() else rounded
