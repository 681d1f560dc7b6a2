"""Marks in an author's text that are for this program, and that no reader sees."""

import re

from sitegen.cautions.mark import NO_CAUTION
from sitegen.claims.passage import NO_DOUBT

MARKS = (NO_CAUTION, NO_DOUBT)
_WRITTEN = re.compile("|".join(re.escape(f"[]({mark})") for mark in MARKS))


def without_marks(text: str) -> str:
    """As readers see a text that is shown as it stands."""
    return " ".join(_WRITTEN.sub(" ", text).split()) if _WRITTEN.search(text) else text
