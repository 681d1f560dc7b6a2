"""Bytes of an author's file -> text, or the reason why not."""

import re
from pathlib import Path

from sitegen.reading.diagnostics import Diagnostics, Place

LARGEST_BYTES = 2_000_000
# What no XML page may carry, and no editor shows: refused here, so that no later room has to think of it.
UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ufffe\uffff]")
_MARKS_OF_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def read_text(path: Path, diagnostics: Diagnostics) -> str | None:
    """The file as text with `\\n` line ends and without a byte-order mark; None after a problem."""
    raw = _bytes_of(path, diagnostics)
    text = None if raw is None else _decoded(raw, diagnostics)
    if text is None:
        return None
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    unprintable = UNPRINTABLE.search(text)
    if unprintable:
        code = ord(unprintable.group())
        wrong = f"an unprintable character (U+{code:04X}) stands here"
        diagnostics.error(place_of(text, unprintable.start()), wrong, "delete it")
        return None
    return text


def place_of(text: str, index: int) -> Place:
    """Line and column of a character."""
    before = text[:index]
    return Place(before.count("\n") + 1, index - (before.rfind("\n") + 1) + 1)


def _bytes_of(path: Path, diagnostics: Diagnostics) -> bytes | None:
    try:
        with path.open("rb") as file:
            raw = file.read(LARGEST_BYTES + 1)
    except OSError as trouble:
        diagnostics.error(Place(), f"cannot be read: {trouble.strerror or 'the system refuses'}")
        return None
    if len(raw) > LARGEST_BYTES:
        diagnostics.error(Place(), "is larger than 2 MB", "an author's file is text; pictures and logs have folders of their own")
        return None
    return raw


def _decoded(raw: bytes, diagnostics: Diagnostics) -> str | None:
    if raw.startswith(_MARKS_OF_UTF_16):
        diagnostics.error(Place(), "is UTF-16 text", "save it as UTF-8")
        return None
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as trouble:
        at = place_of(raw[: trouble.start].decode("utf-8"), trouble.start)
        column = len(raw[: trouble.start].decode("utf-8").rpartition("\n")[2]) + 1
        diagnostics.error(Place(at.line, column), f"is not UTF-8 text (byte 0x{raw[trouble.start]:02X})", "save it as UTF-8")
        return None
