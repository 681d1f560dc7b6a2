"""Lengths of time, in seconds."""

from msgspec import Struct

from sitegen.reading.capture_logs.durations import is_plain_number, read_duration_s
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of


class Duration(Struct, frozen=True):
    """From `least_s` to `most_s`. With `needs_unit`, a bare number is refused: one reader takes it for hours, another for
    seconds."""

    least_s: float
    most_s: float
    needs_unit: bool = False

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> float | None:
        text = text_of(node, label, diagnostics, "a length of time", "write it as in 3h20m")
        if text is None:
            return None
        if self.needs_unit and is_plain_number(text):
            diagnostics.error(node, f"{label} is {quoted(text)}, without a unit", f"write {text}h, {text}m or {text}s")
            return None
        try:
            duration_s = read_duration_s(text)
        except ValueProblem as problem:
            diagnostics.error(node, f"{label} is {quoted(text)}, {problem.wrong}", self._how_to_write or problem.remedy)
            return None
        if not self.least_s <= duration_s <= self.most_s:
            limits = f"it may be {_plain(self.least_s)} to {_plain(self.most_s)}"
            diagnostics.error(node, f"{label} is {quoted(text)}, out of range", limits)
            return None
        return duration_s

    @property
    def _how_to_write(self) -> str:
        return "write it as in 3h20m" if self.needs_unit else ""

    def schema(self) -> JsonSchema:
        return {"type": "string" if self.needs_unit else ["string", "number"]}

    def words(self) -> str:
        return "length of time, as in 3h20m" if self.needs_unit else "length of time: seconds, or as in 10m"


def _plain(seconds: float) -> str:
    return f"{seconds / 3600:g} h" if seconds >= 3600 else f"{seconds:g} s"
