"""Names of folders that the author chooses."""

import re

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*", re.ASCII)


class FolderName(Struct, frozen=True):
    """One step of a path, never a path."""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "the name of a folder")
        if text is None or _NAME.fullmatch(text):
            return text
        diagnostics.error(node, f"{label} is {quoted(text)}, not the name of a folder", "letters, digits, '-' and '_' make one")
        return None

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": f"^{_NAME.pattern}$"}

    def words(self) -> str:
        return "name of a folder"
