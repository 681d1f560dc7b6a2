"""Dates, as ISO 8601 writes them."""

import re
from datetime import date, timedelta

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

ISO_DAY = re.compile(r"(\d{4})-(\d{2})-(\d{2})", re.ASCII)
_YEAR_FIRST = re.compile(r"(\d{4})\D(\d{1,2})\D(\d{1,2})(?:[T ].*)?", re.ASCII)
_DAY_FIRST = re.compile(r"(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})", re.ASCII)
_SLASHED = re.compile(r"(\d{1,2})[/-](\d{1,2})[/-](\d{4})", re.ASCII)
EARLIEST_YEAR = 1800


class Day(Struct, frozen=True):
    """A calendar day. With `past`, one that has not come yet is worth a warning."""

    past: bool = False

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> date | None:
        text = text_of(node, label, diagnostics, "a date", "write it as year-month-day, as in 2026-04-18")
        if text is None:
            return None
        day = _iso(text)
        if day is None or day.year < EARLIEST_YEAR:
            diagnostics.error(node, f"{label} is {quoted(text)}, not a date", _remedy(text))
            return None
        if self.past and day > diagnostics.today + timedelta(days=1):
            diagnostics.warn(node, f"{label} is {day}, in the future", "is the year right?")
        return day

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": f"^{ISO_DAY.pattern}$"}

    def words(self) -> str:
        return "date"


def _iso(text: str) -> date | None:
    try:
        return date(*map(int, match.groups())) if (match := ISO_DAY.fullmatch(text)) else None
    except ValueError:
        return None


def _either_way(first: str, second: str, year: str) -> str:
    """No month has the number 18; where both readings are days, the author has to say."""
    day_first, month_first = _iso(f"{year}-{second:0>2}-{first:0>2}"), _iso(f"{year}-{first:0>2}-{second:0>2}")
    if day_first is not None and month_first is not None and day_first != month_first:
        return f"write {day_first} if the day stands first, {month_first} if the month does"
    return f"write {day_first or month_first or 'year-month-day, as in 2026-04-18'}"


def _remedy(text: str) -> str:
    """The date that was meant, where only its form is wrong and leaves no doubt."""
    parts = None
    if match := _YEAR_FIRST.fullmatch(text):
        parts = match.groups()
    elif match := _DAY_FIRST.fullmatch(text):
        parts = match.groups()[::-1]
    if match := _SLASHED.fullmatch(text):
        return _either_way(*match.groups())
    meant = _iso("{}-{:0>2}-{:0>2}".format(*parts)) if parts else None
    return f"write {meant}" if meant and str(meant) != text else "write year-month-day, as in 2026-04-18"
