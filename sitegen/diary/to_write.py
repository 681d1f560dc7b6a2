"""The mark of a text that its author has still to write: such a paragraph is never published."""

import re

GAP = "To write:"
_BEFORE = re.compile(r"[\s*_>#~`+-]*")
_BETWEEN = re.compile(r"\n[ \t]*\n")


def is_gap(paragraph: str) -> bool:
    """Whether it begins with the mark, in any case, also emphasised or as an item of a list."""
    start = _BEFORE.match(paragraph)
    return paragraph[start.end() if start else 0 :][: len(GAP)].casefold() == GAP.casefold()


def without_gaps(text: str) -> str:
    """Its other paragraphs; '' where none is left."""
    if GAP.casefold() not in text.casefold():
        return text
    return "\n\n".join(paragraph for paragraph in _BETWEEN.split(text) if not is_gap(paragraph)).strip()
