"""Right ascension and declination, as catalogues print them."""

import re

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.number import DECIMAL
from sitegen.reading.value_types.value_type import JsonSchema, text_of

_MARKS = r"[\s:hmsd°′″'\"]+"
_SEXAGESIMAL = re.compile(
    rf"([+-]?)\s*(\d{{1,3}}){_MARKS}(\d{{1,2}}(?:\.\d*)?)(?:{_MARKS}(\d{{1,2}}(?:\.\d*)?)\s*[s″\"]?|\s*[m′']?)?", re.ASCII
)


class RightAscension(Struct, frozen=True):
    """To degrees, ICRS, 0 <= ra < 360: a plain number is degrees, a triple is hours, minutes and seconds."""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> float | None:
        example = "write degrees as 287.44, or hours as 19 09 46"
        text = text_of(node, label, diagnostics, "a right ascension", example)
        if text is None:
            return None
        hours = _triple(text)
        degrees = hours * 15 if hours is not None and "°" not in text else _plain(text)
        if degrees is None or not 0 <= degrees < 360:
            diagnostics.error(node, f"{label} is {quoted(text)}, not a right ascension", example)
            return None
        return degrees

    def schema(self) -> JsonSchema:
        return {"anyOf": [{"type": "number", "minimum": 0, "exclusiveMaximum": 360}, {"type": "string"}]}

    def words(self) -> str:
        return "decimal degrees, or hours as `19 09 46`, `19:09:46`, `19h09m46s`"


class Declination(Struct, frozen=True):
    """To degrees, ICRS, north positive."""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> float | None:
        example = "write degrees as -63.86, or as -63 51 27"
        text = text_of(node, label, diagnostics, "a declination", example)
        if text is None:
            return None
        degrees = _triple(text)
        degrees = _plain(text) if degrees is None else degrees
        if degrees is None or not -90 <= degrees <= 90 or "h" in text:
            diagnostics.error(node, f"{label} is {quoted(text)}, not a declination", example)
            return None
        return degrees

    def schema(self) -> JsonSchema:
        return {"anyOf": [{"type": "number", "minimum": -90, "maximum": 90}, {"type": "string"}]}

    def words(self) -> str:
        return "decimal degrees, or degrees as `-63 51 27`, `-63:51:27`, `-63d51m27s`"


def _plain(text: str) -> float | None:
    text = text.replace("−", "-").removesuffix("°").removesuffix("d")
    return float(text) if DECIMAL.fullmatch(text) else None


def _triple(text: str) -> float | None:
    """The first number with its minutes and seconds as parts of it; the sign counts for all three, `-00 30` included."""
    match = _SEXAGESIMAL.fullmatch(text.replace("−", "-"))
    if not match:
        return None
    sign, whole, minutes, seconds = match.groups()
    if float(minutes) >= 60 or float(seconds or 0) >= 60:
        return None
    size = int(whole) + float(minutes) / 60 + float(seconds or 0) / 3600
    return -size if sign == "-" else size
