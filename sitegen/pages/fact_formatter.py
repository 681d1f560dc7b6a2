"""A computed number as it is shown: its text, and where and how it is explained."""

from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from msgspec import Struct, json

from sitegen.facts.fact import Fact
from sitegen.facts.facts_json import fact_at
from sitegen.facts.places import path_of
from sitegen.facts.registry import EntryFacts
from sitegen.number_text import UNKNOWN, NumberText
from sitegen.pages.words import Words


class Shown(Struct, frozen=True):
    """`how` is the one line on how it was obtained; `path` the fact's place in facts.json, without indices."""

    text: str
    path: str
    title: str
    how: str


class FactFormatter(Struct, frozen=True):
    """Turns facts into shown numbers in one language."""

    numbers: NumberText
    words: Words

    def show(self, path: str, value: Any, zone: ZoneInfo | None = None, evening: date | None = None) -> Shown:
        """The fact at `path`, whose value may come straight from facts.json. `evening`: the night beside which it stands.
        KeyError for a path that is no fact."""
        fact = fact_at(path)
        if fact is None:
            raise KeyError(path)
        return Shown(self.text(fact, path, value, zone, evening), path, self.title(fact, path), self.how(fact, path))

    def show_known(self, root: str, values: Mapping[str, Any]) -> tuple[Shown, ...]:
        """Facts of one record by their key, those left out that are not known."""
        return tuple(self.show(path_of(root, key), value) for key, value in values.items() if value is not None)

    def title(self, fact: Fact[Any], path: str) -> str:
        return self.words.get(f"fact.{path}.title", fact.title)

    def how(self, fact: Fact[Any], path: str) -> str:
        return self.words.get(f"fact.{path}.how", fact.explained)

    def text(self, fact: Fact[Any], path: str, value: Any, zone: ZoneInfo | None = None, evening: date | None = None) -> str:
        special = _SPECIAL.get(path)
        if value is None or value in ([], ()):
            return UNKNOWN
        if special is not None:
            return special(self, value)
        if path in _ANY_TIME:
            return self._dated(value, zone, evening)
        if fact.unit == "UTC":
            return self._times(value, zone)
        if isinstance(value, bool):
            return self.words["yes" if value else "no"]
        if isinstance(value, str):
            return self.words.get(f"value.{value}", value)
        if isinstance(value, int) and not fact.unit:
            return self.numbers.number(value, 0)
        if isinstance(value, list | tuple):
            return " × ".join(self.numbers.quantity(part, fact.unit) for part in value)
        return self.numbers.quantity(value, fact.unit)

    def _dated(self, value: str, zone: ZoneInfo | None, evening: date | None) -> str:
        """With its day, unless that is the evening's."""
        day = datetime.fromisoformat(value).astimezone(zone or UTC).date()
        clock = self._times(value, zone)
        return clock if day == evening else f"{self.numbers.short_day(day)}, {clock}"

    def _times(self, value: Any, zone: ZoneInfo | None) -> str:
        if isinstance(value, list | tuple):
            return ", ".join(f"{self._times(start, zone)}–{self._times(end, zone)}" for start, end in value)
        moment = datetime.fromisoformat(value) if isinstance(value, str) else value
        if zone is None:
            return f"{self.numbers.clock(moment)} UTC"
        return f"{self.numbers.clock(moment, zone)}"


_ANY_TIME = frozenset({"nights.moon.rise", "nights.moon.set"})
"""The first from noon to noon, so that the rise may come after the set, and both on the next day."""
TABLES = ("star_shapes", "star_rings")


def field_text(formatter: FactFormatter, value: list[float]) -> str:
    return formatter.numbers.field(value)


def _right_ascension(formatter: FactFormatter, degrees: float) -> str:
    seconds = round(degrees / 15 * 3600)
    return f"{seconds // 3600 % 24:02d}h {seconds // 60 % 60:02d}m {seconds % 60:02d}s"


def _declination(formatter: FactFormatter, degrees: float) -> str:
    seconds = round(abs(degrees) * 3600)
    return f"{'−' if degrees < 0 else '+'}{seconds // 3600:02d}° {seconds // 60 % 60:02d}′ {seconds % 60:02d}″"


def _turned(formatter: FactFormatter, degrees: float) -> str:
    """One decimal, and a hair short of a full turn reads as none."""
    return f"{formatter.numbers.number(round(degrees, 1) % 360, 1)}°"


def _day(formatter: FactFormatter, text: str) -> str:
    return formatter.numbers.day(date.fromisoformat(text))


_SPECIAL: dict[str, Callable[[FactFormatter, Any], str]] = {
    "target.ra_deg": _right_ascension,
    "target.dec_deg": _declination,
    "nights.target.ra_deg": _right_ascension,
    "nights.target.dec_deg": _declination,
    "pictures.ra_deg": _right_ascension,
    "pictures.dec_deg": _declination,
    "pictures.field_deg": field_text,
    "pictures.rotation_deg": _turned,
    "panels.name": lambda _, value: str(value),
    "panels.ra_deg": _right_ascension,
    "panels.dec_deg": _declination,
    "panels.field_deg": field_text,
    "panels.rotation_deg": _turned,
    "mosaic.field_deg": field_text,
    "optics.field_deg": field_text,
    "optics.field_diagonal_deg": lambda formatter, value: formatter.numbers.angle(value),
    "optics.f_ratio": lambda formatter, value: f"f/{formatter.numbers.figures(value, 2)}",
    "optics.from": _day,
    "nights.evening_of": _day,
    "optics.rig": lambda _, value: str(value),
    "nights.site": lambda _, value: str(value),
    "entry": lambda _, value: str(value),
    "title": lambda _, value: str(value),
    "cautions": lambda formatter, value: ", ".join(formatter.words.get(f"value.{caution}", caution) for caution in value),
}


_ROWS_BY = {
    "nights": ("evening_of", "night"),
    "optics": ("rig", "rig"),
    "pictures": ("file", "picture"),
    "panels": ("name", "panel"),
}
"""What tells the rows of a list apart in a marker, and what such a row is called."""


def fact_value(entry_facts: EntryFacts, marker: str) -> tuple[str, Any]:
    """The fact's path and value that a text marker names: 'integration.total_s', 'nights.moon.illuminated@2026-10-18',
    'optics.scale_arcsec_px@long-train', 'pictures.rotation_deg@core.jpg', 'integration.by_filter.L.total_s'.

    Raises LookupError with a sentence for the author where there is no such fact.
    """
    path, _, which = marker.partition("@")
    keys = path.split(".")
    facts = _part(entry_facts, keys[0])
    if keys[0] in _ROWS_BY:
        value = _inside(_chosen(facts[keys[0]], *_ROWS_BY[keys[0]], which), keys[1:], path)
        if keys[1:2] == ["by_filter"]:
            path = f"{keys[0]}.integration_s" if keys[-1] == "total_s" else "integration.kept"
        return path, value
    value = _inside(facts, keys, path)
    if path.startswith("integration.by_filter."):
        return {"total_s": "integration.total_s", "wanted_s": "integration.total_s"}.get(keys[-1], "integration.kept"), value
    if path.startswith("integration.by_night."):
        return "integration.total_s", value
    return path, value


def _part(facts: EntryFacts, key: str) -> dict[str, Any]:
    """As facts.json has it, under its key: the rest may be long columns. Nothing where there is no such key."""
    return {key: json.decode(json.encode(getattr(facts, key)))} if key in EntryFacts.__struct_fields__ else {}


def _chosen(rows: list[Mapping[str, Any]], key: str, what: str, which: str) -> Mapping[str, Any]:
    names = [str(row[key]) for row in rows]
    if not which and len(rows) == 1:
        return rows[0]
    if which in names:
        return rows[names.index(which)]
    named = f"no {what} '{which}'" if which else f"more than one {what}" if rows else f"no {what} at all"
    raise LookupError(f"{named}; " + (f"write @ and one of {', '.join(names)}" if rows else "the entry has no subs"))


def _inside(node: Any, keys: list[str], path: str) -> Any:
    for key in keys:
        if not isinstance(node, Mapping) or key not in node:
            raise LookupError(f"no fact '{path}'")
        node = node[key]
    if isinstance(node, Mapping):
        raise LookupError(f"'{path}' is a group of facts, not one; name one of: {', '.join(map(str, node))}")
    if path.startswith("subs."):
        raise LookupError(f"'{path}' is a column, not one number; it stands in subs.ecsv")
    if path in TABLES:
        raise LookupError(f"'{path}' is a table, not one number; write the number, or lead to figure:stars")
    return node
