"""The mark by which an author denies a caution."""

NO_CAUTION = "no_caution:"
"""The scheme of the mark `[](no_caution:)`."""
_MARK = "[](no_caution:)"


def is_denied(text: str) -> bool:
    """Of a link's address, or of a text without Markdown that holds the mark."""
    return text.lower().startswith(NO_CAUTION) or _MARK in text
