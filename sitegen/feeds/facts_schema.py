"""facts.schema.json: the JSON Schema (draft 2020-12) of facts.json, made from the registry of facts."""

import json
from typing import Any

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.facts.fact import Fact, Scope
from sitegen.facts.facts_json import SCHEMA, path_of
from sitegen.facts.registry import FACTS
from sitegen.feeds.feed import Feed, FeedSource

ANYTHING: dict[str, Any] = {}


def make(source: FeedSource) -> Artifact:
    return Artifact.text(addresses.FACTS_SCHEMA, json.dumps(facts_schema(), ensure_ascii=False, indent=1) + "\n")


def facts_schema() -> dict[str, Any]:
    """Every fact of the registry is a property, described by its own explanation and unit."""
    ends = {**_properties("entry"), **_properties("entry_end")}
    properties = {
        "schema": {"const": SCHEMA},
        **ends,
        "target": {"oneOf": [_object("target"), {"type": "null"}]},
        "optics": {"type": "array", "items": _object("optics")},
        "integration": _object("integration"),
        "nights": {"type": "array", "items": _object("night")},
        "subs": _object("sub"),
        "pictures": {"type": "array", "items": _object("picture")},
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"The facts of one entry, schema {SCHEMA}",
        "type": "object",
        "properties": properties,
        "required": list(properties),
    }


def _object(scope: Scope) -> dict[str, Any]:
    properties = _properties(scope)
    return {"type": "object", "properties": properties, "required": list(properties)}


def _properties(scope: Scope) -> dict[str, Any]:
    """Dotted keys become objects within objects."""
    found: dict[str, Any] = {}
    for fact in FACTS[scope]:
        *groups, key = fact.key.split(".")
        place = found
        for group in groups:
            inner = place.setdefault(group, {"type": "object", "properties": {}, "required": []})
            place = inner["properties"]
        place[key] = _described(scope, fact)
        if groups:
            inner["required"].append(key)
    return found


def _described(scope: Scope, fact: Fact[Any]) -> dict[str, Any]:
    unit = f" Unit: {fact.unit}." if fact.unit else ""
    kind = {"type": "array"} if scope == "sub" else ANYTHING
    return {**kind, "title": fact.title, "description": f"{fact.explained}{unit}", "$comment": path_of(scope, fact)}


FEED = Feed("facts schema", make)
