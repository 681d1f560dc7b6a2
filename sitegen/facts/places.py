"""Where each fact stands in facts.json, read off the registry's records."""

from collections.abc import Iterator
from functools import cache
from typing import Any, get_args

from msgspec import Struct, structs

from sitegen.facts.fact import Fact
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

ROOTS: dict[str, type[Struct]] = {
    "": EntryFacts,
    "target": TargetFacts,
    "optics": OpticsFacts,
    "integration": IntegrationFacts,
    "nights": NightFacts,
    "subs": SubFacts,
    "pictures": PictureFacts,
    "mosaic": MosaicFacts,
    "panels": PanelFacts,
}
"""By the key of facts.json under which such records stand."""


def fact_of(field: structs.FieldInfo) -> Fact[Any] | None:
    """The fact that fills a field; None for a group of facts and for what is no fact."""
    return next((part for part in get_args(field.type) if isinstance(part, Fact)), None)


def record_in(field: structs.FieldInfo) -> type[Struct] | None:
    """The record of a group of facts that stands in one object inside another; None for every other field."""
    return field.type if isinstance(field.type, type) and issubclass(field.type, Struct) else None


class Place(Struct, frozen=True):
    """`key` inside the record's object of facts.json, dotted where it is nested; `attribute` the same in the record; `path`
    in the whole file, without indices: 'nights.moon.illuminated'."""

    path: str
    key: str
    attribute: str
    fact: Fact[Any]


@cache
def places_in(kind: type[Struct]) -> tuple[Place, ...]:
    """Of every fact in the record, in the published order."""
    return tuple(_places(kind))


def _places(kind: type[Struct], root: str | None = None) -> Iterator[Place]:
    root = root if root is not None else next(key for key, record in ROOTS.items() if record is kind)
    for field in structs.fields(kind):
        fact, inner, path = fact_of(field), record_in(field), path_of(root, field.encode_name)
        if fact is not None:
            yield Place(path, field.encode_name, field.name, fact)
        elif inner is not None and inner not in ROOTS.values():
            for place in _places(inner, path):
                yield Place(place.path, f"{field.encode_name}.{place.key}", f"{field.name}.{place.attribute}", place.fact)


def path_of(root: str, key: str) -> str:
    return f"{root}.{key}" if root else key


PLACES: dict[str, Fact[Any]] = {place.path: place.fact for kind in ROOTS.values() for place in places_in(kind)}
"""Every fact by its path, in the order of `ROOTS`."""
