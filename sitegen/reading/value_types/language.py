"""Languages, by their BCP 47 tags."""

from babel.core import Locale, UnknownLocaleError
from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of


class Language(Struct, frozen=True):
    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "a language", "give its tag, as in en or pt-BR")
        if text is None:
            return None
        try:
            Locale.parse(text, sep="-")
        except (ValueError, UnknownLocaleError, TypeError):
            hint = f"write {text.replace('_', '-')}" if "_" in text else "give its BCP 47 tag, as in en or pt-BR"
            diagnostics.error(node, f"{label} is {quoted(text)}, not a known language", hint)
            return None
        return text

    def schema(self) -> JsonSchema:
        return {"type": "string"}

    def words(self) -> str:
        return "BCP 47 language tag"
