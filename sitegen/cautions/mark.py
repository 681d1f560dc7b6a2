"""The mark by which an author denies a caution."""

from sitegen.markdown.marks import NO_CAUTION

_MARK = f"[]({NO_CAUTION})"


def is_denied(text: str) -> bool:
    """Of a link's address, or of a text without Markdown that holds the mark."""
    return text.lower().startswith(NO_CAUTION) or _MARK in text
