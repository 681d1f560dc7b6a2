"""Views to the published numbers: facts.json, schema 1."""

import json
import math
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sitegen.facts.fact import Fact, Scope
from sitegen.facts.registry import FACTS
from sitegen.facts.views import EntryView

SCHEMA = 1


def facts_of(view: EntryView) -> dict[str, Any]:
    """The entry's facts as plain JSON values, in the contract's order."""
    entry = view.entry
    return {
        "schema": SCHEMA,
        **facts_in("entry", view),
        "target": facts_in("target", entry.targets[0]) if entry.targets else None,
        "optics": [facts_in("optics", row) for row in view.optics],
        "integration": facts_in("integration", view),
        "nights": [facts_in("night", night) for night in view.nights],
        "subs": facts_in("sub", view),
        "pictures": [facts_in("picture", picture) for picture in view.pictures],
        **facts_in("entry_end", view),
    }


def facts_in(scope: Scope, row: Any) -> dict[str, Any]:
    """The facts of one scope for one row; dotted keys become objects."""
    found: dict[str, Any] = {}
    for fact in FACTS[scope]:
        _put(found, fact.key.split("."), plain(fact.compute(row), fact.decimals))
    return found


def fact_at(path: str) -> Fact[Any] | None:
    """The fact published at a dotted path such as 'nights.moon.illuminated'; None where there is none."""
    return _BY_PATH.get(path)


def plain(value: Any, decimals: int | None) -> Any:
    """What JSON can hold: times with Z, NaN as null, numbers with the digits that mean something."""
    if isinstance(value, datetime):
        return utc_text(value)
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {key: plain(inner, decimals) for key, inner in value.items()}
    if hasattr(value, "tolist"):
        return plain(value.tolist(), decimals)
    if isinstance(value, list | tuple):
        return [plain(inner, decimals) for inner in value]
    return _plain_number(value, decimals)


def json_text(value: Any) -> str:
    """A facts.json as it is published."""
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"


def utc_text(moment: datetime) -> str:
    """ISO 8601 UTC with Z; fractions of a second only where there are any, to the millisecond."""
    text = moment.isoformat(timespec="milliseconds" if moment.microsecond else "seconds")
    return text.replace("+00:00", "Z")


def _plain_number(value: float, decimals: int | None) -> float | int | None:
    if math.isnan(value):
        return None
    if decimals is None:
        return value
    rounded = round(value, decimals) + 0.0
    return int(rounded) if rounded.is_integer() else rounded


def _put(found: dict[str, Any], keys: list[str], value: Any) -> None:
    for key in keys[:-1]:
        found = found.setdefault(key, {})
    found[keys[-1]] = value


_PREFIX: dict[Scope, str] = {
    "entry": "",
    "target": "target.",
    "optics": "optics.",
    "integration": "integration.",
    "night": "nights.",
    "sub": "subs.",
    "picture": "pictures.",
    "entry_end": "",
}


def path_of(scope: Scope, fact: Fact[Any]) -> str:
    """Where the fact stands in facts.json, without indices: 'nights.moon.illuminated'."""
    return _PREFIX[scope] + fact.key


_BY_PATH = {path_of(scope, fact): fact for scope, facts in FACTS.items() for fact in facts}
