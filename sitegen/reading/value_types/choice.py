"""One of a few words; yes or no."""

from msgspec import Struct

from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

YES = frozenset({"true", "yes", "on"})
NO = frozenset({"false", "no", "off"})


class Choice(Struct, frozen=True):
    options: tuple[str, ...]

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "one of " + ", ".join(self.options))
        if text is None or text in self.options:
            return text
        diagnostics.error(node, f"{label} is {quoted(text)}, not one of {', '.join(self.options)}", self._remedy(text))
        return None

    def schema(self) -> JsonSchema:
        return {"enum": list(self.options)}

    def words(self) -> str:
        return " \\| ".join(f"`{option}`" for option in self.options)

    def _remedy(self, text: str) -> str:
        hint = hint_for(text, self.options)
        if hint.startswith("did you mean"):
            return hint
        return f"write {self.options[0]}" if len(self.options) == 1 else "write one of them"


class YesOrNo(Struct, frozen=True):
    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> bool | None:
        text = text_of(node, label, diagnostics, "true or false")
        if text is None:
            return None
        if text.lower() in YES | NO:
            return text.lower() in YES
        diagnostics.error(node, f"{label} is {quoted(text)}, not true or false", "write true or false")
        return None

    def schema(self) -> JsonSchema:
        return {"anyOf": [{"type": "boolean"}, {"enum": sorted(YES | NO)}]}

    def words(self) -> str:
        return "`true` \\| `false`"
