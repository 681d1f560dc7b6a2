"""Numbers in the unit their key names."""

import math
import re

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted, shortened
from sitegen.reading.value_types.value_type import JsonSchema, text_of

_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
_THOUSANDS = re.compile(r"\d[,_'’]\d{3}(?!\d)")
_MARK = r"\s*[\s:d°′'’m]\s*"
_SEXAGESIMAL = re.compile(
    rf"(?P<sign>[+-]?)(?P<degrees>\d{{1,3}}){_MARK}(?P<minutes>\d{{1,2}}(?:\.\d+)?)"
    rf"(?:{_MARK}(?P<seconds>\d{{1,2}}(?:\.\d+)?))?\s*[\"″”'′’]*\s*(?P<side>[NSEWO]?)", re.ASCII | re.IGNORECASE
)
DECIMAL = re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?", re.ASCII)


class Number(Struct, frozen=True):
    """Finite, from `least` to `most` inclusive, or from just above `above`. `unit` is empty for a plain ratio. `below_least` is
    what an author should know who gives less."""

    unit: str = ""
    least: float = -math.inf
    most: float = math.inf
    above: float = -math.inf
    whole: bool = False
    below_least: str = ""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> float | int | None:
        text = text_of(node, label, diagnostics, self._wanted)
        if text is None:
            return None
        plain = text.replace("−", "-")
        if not DECIMAL.fullmatch(plain):
            diagnostics.error(node, f"{label} is {quoted(text)}, not {self._wanted}", self._remedy(plain))
            return None
        return self._in_range(float(plain), text, node, label, diagnostics)

    def schema(self) -> JsonSchema:
        schema: JsonSchema = {"type": "integer" if self.whole else "number"}
        limits = {"minimum": self.least, "maximum": self.most, "exclusiveMinimum": self.above}
        return schema | {word: limit for word, limit in limits.items() if math.isfinite(limit)}

    def words(self) -> str:
        return ", ".join(part for part in ("whole number" if self.whole else "number", self.unit, self.limits()) if part)

    def limits(self) -> str:
        if math.isfinite(self.above):
            upper = f", at most {self.most:g}" if math.isfinite(self.most) else ""
            return f"above {self.above:g}{upper}"
        if math.isfinite(self.least) and math.isfinite(self.most):
            return f"{self.least:g} to {self.most:g}"
        return f"at least {self.least:g}" if math.isfinite(self.least) else ""

    @property
    def _wanted(self) -> str:
        return "a whole number" if self.whole else "a number"

    def _in_range(self, value: float, text: str, node: Node, label: str, diagnostics: Diagnostics) -> float | int | None:
        if not math.isfinite(value) or not (self.least <= value <= self.most and value > self.above):
            limits = f"it may be {self.limits()}" + (f", in {self.unit}" if self.unit else "")
            advice = f"; {self.below_least}" if self.below_least and value < self.least else ""
            diagnostics.error(node, f"{label} is {shortened(text)}, out of range", limits + advice)
            return None
        if self.whole and not value.is_integer():
            diagnostics.error(node, f"{label} is {text}, not a whole number", f"write {round(value)}")
            return None
        return int(value) if self.whole else value

    def _remedy(self, text: str) -> str:
        """The number alone where one can be made out in what was typed."""
        give = f"give {self.unit}" if self.unit else "give the number alone"
        if self.unit == "degrees" and (degrees := _sexagesimal_deg(text)) is not None:
            return f"write {degrees:.4f}, in degrees with a point"
        decimal = DECIMAL.match(_DECIMAL_COMMA.sub(".", text))
        if not decimal or text.count(",") > 1 or _THOUSANDS.search(text):
            return f"{give}, as digits" + ("" if self.whole else " with a point")
        south_or_west = self.unit == "degrees" and text.rstrip().endswith(("S", "W"))
        return f"{give}, as in {'-' if south_or_west else ''}{decimal.group().rstrip('.')}"


def _sexagesimal_deg(text: str) -> float | None:
    """`48°12'30"`, `48 12 30 N`, `16:22:00 W`: the decimal degrees that were meant; None for anything else."""
    match = _SEXAGESIMAL.fullmatch(text.strip())
    if match is None or float(match["minutes"]) >= 60 or float(match["seconds"] or 0) >= 60:
        return None
    size = float(match["degrees"]) + float(match["minutes"]) / 60 + float(match["seconds"] or 0) / 3600
    return -size if match["sign"] == "-" or (match["side"] or "").upper() in ("S", "W") else size


class NumberPair(Struct, frozen=True):
    """Two numbers, or one that stands for both where `one_is_both`."""

    first: Number
    second: Number
    names: tuple[str, str]
    one_is_both: bool = False

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> tuple[float, float] | None:
        items = getattr(node, "items", None)
        if items is None and self.one_is_both:
            value = self.first.read(node, label, diagnostics)
            return None if value is None else (value, value)
        if items is None or len(items) != 2:
            count = f"{len(items)} values" if items is not None and len(items) != 1 else "one value"
            diagnostics.error(node, f"{label} has {count}, not two", f"write [{self.names[0]}, {self.names[1]}]")
            return None
        first = self.first.read(items[0], f"{self.names[0]} of {label}", diagnostics)
        second = self.second.read(items[1], f"{self.names[1]} of {label}", diagnostics)
        return None if first is None or second is None else (first, second)

    def schema(self) -> JsonSchema:
        pair = {"type": "array", "prefixItems": [self.first.schema(), self.second.schema()], "minItems": 2, "maxItems": 2}
        return {"anyOf": [self.first.schema(), pair]} if self.one_is_both else pair

    def words(self) -> str:
        pair = f"[{self.names[0]}, {self.names[1]}], each a {self.first.words()}"
        if self.first != self.second:
            pair = f"[{self.names[0]}: {self.first.words()}; {self.names[1]}: {self.second.words()}]"
        return f"{self.first.words()}, or {pair}" if self.one_is_both else pair
