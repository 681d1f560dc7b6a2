"""list-facts.schema.json: the JSON Schema (draft 2020-12) of the facts.json beside list pages."""

import json
from typing import Any

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.facts.facts_json import SCHEMA
from sitegen.facts.places import Place, places_in
from sitegen.facts.registry import IntegrationFacts
from sitegen.feeds.feed import Feed, FeedSource
from sitegen.pages.registry import KINDS

SECONDS: dict[str, Any] = {"type": "number", "minimum": 0}
COUNT: dict[str, Any] = {"type": "integer", "minimum": 0}
UNKNOWN_SECONDS: dict[str, Any] = {"type": ["number", "null"], "minimum": 0}
EVENING: dict[str, Any] = {"type": "string", "format": "date", "pattern": r"^\d{4}-\d{2}-\d{2}$"}
DESCRIBED = {
    "page": "The folder of the page's kind.",
    "name": "The page's name in its address; of the totals, the diary's title.",
    "entries": "Names of the entries that belong to the page, newest first.",
    "nights": "Evenings with frames that the page counts, kept or not; of totals, years and nights every evening of the page.",
}
ON_LISTS = {
    "shared_s": "Of the total, what more than one entry tells. It is counted once, as the entry published last says.",
    "recalled_s": "Sum of the hours that entries recall without a log: of this target, rig, site or year. In no other number.",
    "wanted_s": "On a target's page the wish of the newest entry that has one for this filter; elsewhere unknown.",
}


def make(source: FeedSource) -> list[Artifact]:
    text = json.dumps(list_facts_schema(), ensure_ascii=False, indent=1) + "\n"
    return [Artifact.text(addresses.LIST_FACTS_SCHEMA, text)]


def list_facts_schema() -> dict[str, Any]:
    """The keys under `integration` are those of an entry's facts."""
    properties: dict[str, Any] = {
        "schema": {"const": SCHEMA},
        "page": {"enum": [kind.name for kind in KINDS if kind.has_facts], "description": DESCRIBED["page"]},
        "name": {"type": "string", "description": DESCRIBED["name"]},
        "entries": {"type": "array", "items": {"type": "string"}, "uniqueItems": True, "description": DESCRIBED["entries"]},
        "nights": {"type": "array", "items": EVENING, "uniqueItems": True, "description": DESCRIBED["nights"]},
        "integration": _closed({place.key: _described(place) for place in places_in(IntegrationFacts)}),
    }
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"The facts of a list page, schema {SCHEMA}"}
    return {**head, **_closed(properties)}


def _described(place: Place) -> dict[str, Any]:
    description = ON_LISTS.get(place.key, place.fact.explained)
    return {**_KINDS.get(place.key, SECONDS), "title": place.fact.title, "description": description}


def _closed(properties: dict[str, Any]) -> dict[str, Any]:
    return {"type": "object", "properties": properties, "required": list(properties), "additionalProperties": False}


_FILTER = _closed(
    {
        "total_s": SECONDS,
        "recalled_s": SECONDS,
        "kept": COUNT,
        "discarded": COUNT,
        "wanted_s": {**UNKNOWN_SECONDS, "description": ON_LISTS["wanted_s"]},
    }
)
_KINDS: dict[str, dict[str, Any]] = {
    "kept": COUNT,
    "discarded": COUNT,
    "dark_equivalent_s": UNKNOWN_SECONDS,
    "by_filter": {"type": "object", "additionalProperties": _FILTER},
    "by_night": {"type": "object", "propertyNames": EVENING, "additionalProperties": SECONDS},
}

FEED = Feed("list facts schema", make)
