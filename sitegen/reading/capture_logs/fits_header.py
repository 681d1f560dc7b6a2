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
from collections.abc import Callable, Hashable, Mapping
from functools import lru_cache
from pathlib import Path

from msgspec import Struct

from sitegen.limited_reader import GZIP_MARK
from sitegen.reading.capture_logs.gzip_bytes import unpacking
from sitegen.reading.capture_logs.log_problems import ValueProblem

BLOCK = 2880
CARD = 80
_NAME = 8
_FOR_READING = os.O_RDONLY | getattr(os, "O_BINARY", 0)
MOST_BLOCKS = 500
READ_AT_ONCE = 3 * BLOCK
_END = b"END     "
_CONTINUE = b"CONTINUE"
_DATES = (b"DATE-OBS", b"DATE-BEG")
_EXPOSURES = (b"EXPTIME ", b"EXPOSURE", b"XPOSURE ")
COPY_AGAIN = "copy the frame again"
_TRUNCATED = "is truncated: the header ends before its END card"

Value = str | float | bool | None
Tap = Callable[[int], bytes]


class Keywords(Struct, frozen=True, eq=False):
    """Keywords asked for together, each padded to eight bytes."""

    padded: tuple[bytes, ...]


class Layout(Struct, frozen=True, eq=False):
    """Which keyword's card begins where; whether date and exposure are among them."""

    cards: Mapping[bytes, int]
    tells_of_a_frame: bool


class FitsHeader(Struct):
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
        value = _value(self.raw[at + 8 : at + CARD])
        return self._continued(value, at) if isinstance(value, str) and value.endswith("&") else value

    def _continued(self, text: str, at: int) -> str:
        """A string too long for its card goes on in CONTINUE cards, each announced by an '&' (section 4.2.1.2)."""
        while text.endswith("&"):
            at += CARD
            if self.raw[at : at + _NAME] != _CONTINUE:
                return text
            text = text[:-1] + (_string(self.raw[at + _NAME : at + CARD].lstrip(b" ")) or "")
        return text

    def number(self, keyword: bytes) -> float | None:
        """Also where the number stands in quotes; None where it is not finite."""
        value = self.value(keyword)
        if isinstance(value, str):
            value = _number(value.strip().encode("ascii", "replace"))
        return value if isinstance(value, float) and math.isfinite(value) else None

    def text(self, keyword: bytes) -> str:
        """Without blanks round it; a number with all its digits; '' where there is nothing."""
        value = self.value(keyword)
        if isinstance(value, str):
            return value.strip()
        return repr(value).removesuffix(".0") if isinstance(value, float) else ""

    def first_number(self, keywords: Keywords) -> float | None:
        """Of the first of them that has one."""
        asked = keywords.padded if self.first_unit is not None else _among(self.layout, keywords)
        return next((number for keyword in asked if (number := self.number(keyword)) is not None), None)

    def likeness(self, keywords: Keywords) -> Hashable:
        """Equal for headers that say the same by these keywords."""
        if self.first_unit is not None or _CONTINUE in self.layout.cards:
            return tuple(map(self.value, keywords.padded))
        return self.layout, _cards_of(self.layout, keywords).unpack_from(self.raw)


def read_header(path: Path) -> FitsHeader:
    """Raises ValueProblem, whose `wrong` is the whole sentence, or OSError."""
    opened = os.open(path, _FOR_READING)
    try:
        start = os.read(opened, READ_AT_ONCE)
        if start.startswith(GZIP_MARK):
            return _read_units(b"", unpacking(lambda: os.read(opened, READ_AT_ONCE), start), None)
        return _read_units(start, lambda count: os.read(opened, count), os.fstat(opened).st_size)
    finally:
        os.close(opened)


def _read_units(start: bytes, tap: Tap, size_bytes: int | None) -> FitsHeader:
    """An image in the second unit leaves the first without a date or an exposure; a header may be kept without its pixels."""
    first, rest = _read_unit(start, tap, b"SIMPLE  ", size_bytes)
    if first.layout.tells_of_a_frame or first.number(b"NAXIS   ") != 0 or first.value(b"EXTEND  ") is False:
        return first
    try:
        second, _ = _read_unit(rest, tap, b"XTENSION", size_bytes)
    except ValueProblem:
        return first
    second.first_unit = first
    second.end += first.end
    return second


def _read_unit(start: bytes, tap: Tap, first_keyword: bytes, size_bytes: int | None) -> tuple[FitsHeader, bytes]:
    """One header, and what was read beyond it."""
    raw = start or tap(READ_AT_ONCE)
    if not raw.startswith(first_keyword):
        raise ValueProblem(_no_header(raw, first_keyword, size_bytes), COPY_AGAIN)
    while (names := _names_up_to_end(raw)) is None:
        if len(raw) >= MOST_BLOCKS * BLOCK:
            raise ValueProblem(f"has no END card in its first {MOST_BLOCKS} blocks", COPY_AGAIN)
        more = tap(READ_AT_ONCE)
        if not more:
            raise ValueProblem(_TRUNCATED, COPY_AGAIN)
        raw += more
    end = -(-(len(names) // _NAME + 1) * CARD // BLOCK) * BLOCK
    header = FitsHeader(raw, _layout(names), end, size_bytes)
    _refuse_other_first_card(header, first_keyword)
    return header, raw[end:]


def _refuse_other_first_card(header: FitsHeader, first_keyword: bytes) -> None:
    """Sections 4.4.1.1 and 4.4.1.2: SIMPLE = T, or XTENSION with the extension's name. SIMPLE = F says that the file is none."""
    first = header.value(first_keyword)
    if first_keyword == b"SIMPLE  " and first is not True:
        raise ValueProblem("does not say SIMPLE = T, so it is no FITS file by its own words", "save the frame as standard FITS")
    if first_keyword == b"XTENSION" and not isinstance(first, str):
        raise ValueProblem("has a second unit without a name in XTENSION")


def _names_up_to_end(raw: bytes) -> bytes | None:
    """The keywords of the whole blocks one behind the other: every tenth eight bytes. None where END is not among them."""
    whole = len(raw) - len(raw) % BLOCK
    names = memoryview(raw)[:whole].cast("Q")[:: CARD // _NAME].tobytes()
    at = names.find(_END)
    while at > 0 and at % _NAME:
        at = names.find(_END, at + 1)
    return names[:at] if at >= 0 else None


def _no_header(raw: bytes, first_keyword: bytes, size_bytes: int | None) -> str:
    if size_bytes == 0:
        return "is empty"
    return _TRUNCATED if first_keyword.startswith(raw[: len(first_keyword)]) else "is not FITS"


@lru_cache(maxsize=64)
def _layout(names: bytes) -> Layout:
    places = range(len(names) // _NAME - 1, -1, -1)
    cards = {names[_NAME * place : _NAME * (place + 1)]: CARD * place for place in places}
    return Layout(cards, not (cards.keys().isdisjoint(_DATES) or cards.keys().isdisjoint(_EXPOSURES)))


@lru_cache(maxsize=64)
def _among(layout: Layout, keywords: Keywords) -> tuple[bytes, ...]:
    """Those of the keywords that a header has: most ask for many, and have few."""
    return tuple(keyword for keyword in keywords.padded if keyword in layout.cards)


@lru_cache(maxsize=64)
def _cards_of(layout: Layout, keywords: Keywords) -> struct.Struct:
    """Takes the cards of these keywords out of a header, in one go."""
    places, shape = sorted(layout.cards[keyword] for keyword in keywords.padded if keyword in layout.cards), "="
    done = 0
    for place in places:
        shape += f"{place - done}x{CARD}s"
        done = place + CARD
    return struct.Struct(shape)


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


@lru_cache(maxsize=4096)
def _number(token: bytes) -> float | None:
    try:
        return float(token.replace(b"D", b"E").replace(b"d", b"e")) if b"_" not in token else None
    except ValueError:
        return None
