"""Addresses of the web."""

import re
from urllib.parse import urlsplit

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

_UNSAFE = re.compile(r"[\s\\<>\"`{}|^\x00-\x1f\x7f-\x9f]")
LONGEST = 2_000
_HOST = re.compile(r"[\w.-]*\w|[0-9a-fA-F:.]+")


class WebAddress(Struct, frozen=True):
    """Absolute, http or https: nothing else is ever linked. `site` refuses what a published site's address cannot have."""

    site: bool = False

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "an address", "write it in full, as in https://example.org/")
        if text is None:
            return None
        wrong = self._wrong(text)
        if wrong is None:
            return text
        diagnostics.error(node, f"{label} is {quoted(text)}, {wrong}", "write it in full, as in https://example.org/")
        return None

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": "^[Hh][Tt][Tt][Pp][Ss]?://"}

    def words(self) -> str:
        return "absolute http(s) address"

    def _wrong(self, text: str) -> str | None:
        try:
            parts = urlsplit(text)
            parts.port  # noqa: B018 -- reading it is what judges it
        except ValueError:
            return "not an address"
        if len(text) > LONGEST:
            return f"longer than {LONGEST} characters"
        if _UNSAFE.search(text) or parts.scheme not in ("http", "https") or not _HOST.fullmatch(parts.hostname or ""):
            return "not an http or https address"
        if parts.username is not None or parts.password is not None:
            return "which tells a user name"
        if self.site and (parts.query or parts.fragment):
            return "which has a '?' or '#' in it"
        return None
