"""Marks in an author's text that are for this program, and that no reader sees."""

import re

NO_CAUTION = "no_caution:"
"""The mark `[](no_caution:)`: the paragraph, item or text that holds it wants no caution."""
NO_DOUBT = "no_doubt:"
"""The mark `[](no_doubt:)` in a paragraph: nothing in it is doubted."""
MARKS = (NO_CAUTION, NO_DOUBT)
_WRITTEN = re.compile("|".join(re.escape(f"[]({mark})") for mark in MARKS))


def without_marks(text: str) -> str:
    """As readers see a text that is shown as it stands."""
    return " ".join(_WRITTEN.sub(" ", text).split()) if _WRITTEN.search(text) else text
