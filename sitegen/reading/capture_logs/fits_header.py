"""The cards of a FITS header: blocks read up to END, and the few values asked for. The pixels are never touched.

FITS Standard 4.0, sections 3.3.1 (blocks of 2880 bytes), 4.1 and 4.2 (cards of 80). Of a keyword that
stands twice, the first counts. Tile-compressed images (section 10) and images behind an empty
primary unit have their header in the second unit; what it lacks is looked up in the first.

Frames of one camera have the same keywords in the same places and mostly the same values: both are
remembered from header to header, which makes a header cost little more than the reading of its blocks.
"""

import math
import os
import struct
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from sitegen.reading.capture_logs.gzip_bytes import GZIP_MARK, unpacking
from sitegen.reading.capture_logs.log_problems import Doubt

BLOCK = 2880
CARD = 80
MOST_BLOCKS = 500
READ_AT_ONCE = 3 * BLOCK
_END = b"END     "
_TRUNCATED = "is truncated: the header ends before its END card"
_NAMES = struct.Struct("8s72x" * (BLOCK // CARD))

Value = str | float | bool | None
Tap = Callable[[int], bytes]


@dataclass(frozen=True, slots=True, eq=False)
class Layout:
    """Which keyword's card begins where."""

    cards: Mapping[bytes, int]

    def has(self, *keywords: bytes) -> bool:
        return any(keyword in self.cards for keyword in keywords)


@dataclass(slots=True)
class FitsHeader:
    """`end` is where the data begin in the file; `size_bytes` the file's, None where it is packed. Keywords are padded to
    eight bytes."""

    raw: bytes
    layout: Layout
    end: int
    size_bytes: int | None
    first_unit: "FitsHeader | None" = None

    def value(self, keyword: bytes) -> Value:
        """None where it is absent, has no value or none that can be parsed."""
        at = self.layout.cards.get(keyword)
        if at is None:
            return self.first_unit.value(keyword) if self.first_unit is not None else None
        return _value(self.raw[at + 8 : at + CARD])

    def number(self, keyword: bytes) -> float | None:
        """Also where the number stands in quotes; None where it is not finite."""
        value = self.value(keyword)
        if isinstance(value, str):
            value = _number(value.strip().encode("ascii", "replace"))
        return value if isinstance(value, float) and math.isfinite(value) else None

    def text(self, keyword: bytes) -> str:
        """Without blanks round it; a number as its digits; '' where there is nothing."""
        value = self.value(keyword)
        if isinstance(value, str):
            return value.strip()
        return f"{value:g}" if isinstance(value, float) else ""

    def likeness(self, keywords: Sequence[bytes]) -> Hashable:
        """Equal for headers that say the same by these keywords."""
        if self.first_unit is not None:
            return tuple(map(self.value, keywords))
        return self.layout, _cards_of(self.layout, tuple(keywords)).unpack_from(self.raw)


def read_header(path: Path) -> FitsHeader:
    """Raises Doubt, whose `wrong` is the whole sentence, or OSError."""
    opened = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0))
    try:
        start = os.read(opened, READ_AT_ONCE)
        if start.startswith(GZIP_MARK):
            return _read_units(b"", unpacking(lambda: os.read(opened, READ_AT_ONCE), start), None)
        return _read_units(start, lambda count: os.read(opened, count), os.fstat(opened).st_size)
    finally:
        os.close(opened)


def _read_units(start: bytes, tap: Tap, size_bytes: int | None) -> FitsHeader:
    first, rest = _read_unit(start, tap, b"SIMPLE  ", size_bytes)
    if _is_whole_frame(first.layout) or first.number(b"NAXIS   ") != 0 or first.value(b"EXTEND  ") is False:
        return first
    try:
        second, _ = _read_unit(rest, tap, b"XTENSION", size_bytes)
    except Doubt:
        return first
    second.first_unit = first
    second.end += first.end
    return second


def _is_whole_frame(layout: Layout) -> bool:
    """An image in the second unit leaves the first without a date or an exposure; a header may be kept without its pixels."""
    return layout.has(b"DATE-OBS", b"DATE-BEG") and layout.has(b"EXPTIME ", b"EXPOSURE", b"XPOSURE ")


def _read_unit(start: bytes, tap: Tap, first_keyword: bytes, size_bytes: int | None) -> tuple[FitsHeader, bytes]:
    """One header, and what was read beyond it."""
    raw = start if len(start) >= BLOCK else start + _filled(tap, BLOCK - len(start))
    if not raw.startswith(first_keyword):
        raise Doubt(_no_header(raw, first_keyword, size_bytes))
    names: tuple[bytes, ...] = ()
    for end in range(BLOCK, (MOST_BLOCKS + 1) * BLOCK, BLOCK):
        if len(raw) < end:
            raw += _filled(tap, end - len(raw))
            if len(raw) < end:
                raise Doubt(_TRUNCATED)
        names += _NAMES.unpack_from(raw, end - BLOCK)
        if _END in names:
            return FitsHeader(raw, _layout(names), end, size_bytes), raw[end:]
    raise Doubt(f"has no END card in its first {MOST_BLOCKS} blocks")


def _no_header(raw: bytes, first_keyword: bytes, size_bytes: int | None) -> str:
    if size_bytes == 0:
        return "is empty"
    return _TRUNCATED if first_keyword.startswith(raw[: len(first_keyword)]) else "is not FITS"


def _filled(tap: Tap, count: int) -> bytes:
    """As many bytes as were asked for, or all there are."""
    found = b""
    while len(found) < count and (more := tap(count - len(found))):
        found += more
    return found


@lru_cache(maxsize=64)
def _layout(names: tuple[bytes, ...]) -> Layout:
    held = names[: names.index(_END)]
    return Layout({name: CARD * number for number, name in reversed(list(enumerate(held)))})


@lru_cache(maxsize=64)
def _cards_of(layout: Layout, keywords: tuple[bytes, ...]) -> struct.Struct:
    """Takes the cards of these keywords out of a header, in one go."""
    places, shape = sorted(layout.cards[keyword] for keyword in keywords if keyword in layout.cards), "="
    done = 0
    for place in places:
        shape += f"{place - done}x{CARD}s"
        done = place + CARD
    return struct.Struct(shape)


@lru_cache(maxsize=4096)
def _value(field: bytes) -> Value:
    """What stands behind a card's keyword (FITS Standard 4.0, section 4.2)."""
    if not field.startswith(b"="):
        return None
    text = field[1:].lstrip(b" ")
    if text.startswith(b"'"):
        return _string(text)
    token = text.partition(b"/")[0].rstrip(b" ")
    if token in (b"T", b"F"):
        return token == b"T"
    return _number(token)


def _string(text: bytes) -> str | None:
    end = text.find(b"'", 1)
    while end > 0 and text[end + 1 : end + 2] == b"'":
        end = text.find(b"'", end + 2)
    if end < 0:
        return None
    return text[1:end].replace(b"''", b"'").rstrip(b" ").decode("ascii", "replace")


def _number(token: bytes) -> float | None:
    try:
        return float(token.replace(b"D", b"E").replace(b"d", b"e")) if b"_" not in token else None
    except ValueError:
        return None
