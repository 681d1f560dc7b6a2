"""facts.schema.json: the JSON Schema (draft 2020-12) of facts.json, made from the records and the facts in them."""

import json
from typing import Any

from msgspec import Struct, structs
from msgspec.json import schema

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.facts.column_runs import MOST_PLAIN
from sitegen.facts.fact import Fact
from sitegen.facts.facts_json import SCHEMA, SCHEMA_WITH_RUNS
from sitegen.facts.places import ROOTS, fact_of, path_of, record_in
from sitegen.facts.registry import EntryFacts
from sitegen.feeds.feed import Feed, FeedSource

Schema = dict[str, Any]
DRAFT = "https://json-schema.org/draft/2020-12/schema"
HOW_RUNS_READ = (
    f"A column of more than {MOST_PLAIN} values as runs of equal steps: value k of a run, counted from 0, is first + k × step,"
    " rounded to so many decimals; of times, the step is in seconds. Text, truth and null are repeated. The three arrays have one"
    " length."
)


def make(source: FeedSource) -> list[Artifact]:
    return [Artifact.text(addresses.FACTS_SCHEMA, json.dumps(facts_schema(), ensure_ascii=False, indent=1) + "\n")]


def facts_schema() -> Schema:
    """Every fact is a property with its type, described by its own explanation and unit."""
    head = {"$schema": DRAFT, "title": f"The facts of one entry, schemas {SCHEMA} and {SCHEMA_WITH_RUNS}"}
    whole = object_schema(EntryFacts, "", {"schema": {"enum": [SCHEMA, SCHEMA_WITH_RUNS]}})
    return {**head, **whole, "if": _has("schema", {"const": SCHEMA}), "then": _has("subs", {"additionalProperties": COLUMN})}


COLUMN: Schema = {"type": "array"}


def _column(plain: Schema) -> Schema:
    """A plain array, or its runs."""
    properties = {
        "count": _array({"type": "integer", "minimum": 1}),
        "first": _array(plain["items"]),
        "step": _array({"type": "number"}),
        "decimals": {"type": "integer", "minimum": 0},
    }
    runs = {"type": "object", "properties": properties, "required": list(properties), "additionalProperties": False}
    return {"anyOf": [{**plain, "maxItems": MOST_PLAIN}, {**runs, "description": HOW_RUNS_READ}]}


def _array(items: Schema) -> Schema:
    return {**COLUMN, "items": items}


def _has(key: str, value: Schema) -> Schema:
    return {"properties": {key: value}}


def object_schema(kind: type[Struct], root: str, own: Schema) -> Schema:
    """Of one object of facts.json; `own`: properties that are no facts."""
    properties = {field.encode_name: own.get(field.encode_name) or _property(field, root) for field in structs.fields(kind)}
    return {"type": "object", "properties": properties, "required": list(properties)}


def _property(field: structs.FieldInfo, root: str) -> Schema:
    fact, inner, path = fact_of(field), record_in(field), path_of(root, field.encode_name)
    if fact is not None:
        shape = _inline(schema(field.type))
        return {**(_column(shape) if root == "subs" else shape), **_described(fact, path)}
    if path in ROOTS:
        return _of_root(path)
    assert inner is not None
    return object_schema(inner, path, {})


def _of_root(path: str) -> Schema:
    """An array of objects, or one; there may be no target, and no mosaic."""
    item = object_schema(ROOTS[path], path, {})
    if path in ("integration", "subs"):
        return item
    return {"oneOf": [item, {"type": "null"}]} if path in ("target", "mosaic") else {"type": "array", "items": item}


def _inline(whole: Schema) -> Schema:
    """A type's schema with what it refers to written out: facts hold no type inside itself."""
    kinds = whole.pop("$defs", {})

    def written_out(node: Any) -> Any:
        if isinstance(node, dict) and "$ref" in node:
            return written_out(kinds[node["$ref"].rpartition("/")[2]])
        if isinstance(node, dict):
            return {key: written_out(value) for key, value in node.items() if not _is_name(key, value)}
        return [written_out(value) for value in node] if isinstance(node, list) else node

    schema: Schema = written_out(whole)
    return schema


def _is_name(key: str, value: Any) -> bool:
    """The name that msgspec gives a record, as against a property called 'title'."""
    return key == "title" and isinstance(value, str)


def _described(fact: Fact[Any], path: str) -> Schema:
    unit = f" Unit: {fact.unit}." if fact.unit else ""
    return {"title": fact.title, "description": f"{fact.explained}{unit}", "$comment": path}


FEED = Feed("facts schema", make)
