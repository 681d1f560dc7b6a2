"""The cards of a FITS header: blocks read up to END, and the few values asked for. The pixels are never touched.

FITS Standard 4.0, sections 3.3.1 (blocks of 2880 bytes), 4.1 and 4.2 (cards of 80). Of a keyword that
stands twice, the first counts. Tile-compressed images (section 10) and images behind an empty
primary unit have their header in the second unit; what it lacks is looked up in the first.
"""

import math
import os
import struct
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from sitegen.reading.capture_logs.log_problems import Doubt

BLOCK = 2880
CARD = 80
MOST_BLOCKS = 500
_READ_AT_ONCE = 3 * BLOCK
_GZIP_MARK = b"\x1f\x8b"
_END = b"END     "
_NAMES = struct.Struct("8s72x" * (BLOCK // CARD))

Value = str | float | bool | None
Tap = Callable[[int], bytes]


@dataclass(slots=True)
class FitsHeader:
    """`cards` maps the eight bytes of a keyword to where its card begins in `raw`; `end` is
    where the data begin in the file; `size_bytes` is the file's, None where it is packed."""

    raw: bytes
    cards: dict[bytes, int]
    end: int
    size_bytes: int | None
    first_unit: "FitsHeader | None" = None

    def value(self, keyword: bytes) -> Value:
        """`keyword` padded to eight bytes; None where it is absent, has no value or none that can be parsed."""
        at = self.cards.get(keyword)
        if at is None:
            return self.first_unit.value(keyword) if self.first_unit is not None else None
        return _value(self.raw[at + 8 : at + CARD])

    def number(self, keyword: bytes) -> float | None:
        """Also where the number stands in quotes; None where it is not finite."""
        value = self.value(keyword)
        if isinstance(value, str):
            value = _number(value.encode("ascii", "replace"))
        return value if isinstance(value, float) and math.isfinite(value) else None

    def text(self, keyword: bytes) -> str:
        """Without blanks round it; a number as its digits; '' where there is nothing."""
        value = self.value(keyword)
        if isinstance(value, str):
            return value.strip()
        return f"{value:g}" if isinstance(value, float) else ""

    def data_bytes(self) -> int:
        """How long the data of this unit are (section 4.4.1.1): 0 where it has none, or says nonsense."""
        axes = [self.number(b"NAXIS%-3d" % axis) for axis in range(1, int(self.number(b"NAXIS   ") or 0) + 1)]
        bits = self.number(b"BITPIX  ")
        if not axes or bits is None or any(axis is None or axis < 0 for axis in axes):
            return 0
        pixels = math.prod(int(axis) for axis in axes if axis is not None)
        return abs(int(bits)) // 8 * (pixels + int(self.number(b"PCOUNT  ") or 0))


def read_header(path: Path) -> FitsHeader:
    """Raises Doubt, whose `wrong` is the whole sentence, or OSError."""
    opened = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0))
    try:
        size = os.fstat(opened).st_size
        start = os.read(opened, _READ_AT_ONCE)
        if start.startswith(_GZIP_MARK):
            return _read_units(b"", _unpacking(opened, start), None)
        return _read_units(start, lambda count: os.read(opened, count), size)
    finally:
        os.close(opened)


def _read_units(start: bytes, tap: Tap, size_bytes: int | None) -> FitsHeader:
    first, rest = _read_unit(start, tap, b"SIMPLE  ", size_bytes)
    if first.number(b"NAXIS   ") != 0 or _is_whole_frame(first) or first.value(b"EXTEND  ") is False:
        return first
    try:
        second, _ = _read_unit(rest, tap, b"XTENSION", size_bytes)
    except Doubt:
        return first
    second.first_unit = first
    second.end += first.end
    return second


def _is_whole_frame(header: FitsHeader) -> bool:
    """A header kept without its pixels; an image in the second unit leaves the first without a date or an exposure."""
    cards = header.cards
    dated = b"DATE-OBS" in cards or b"DATE-BEG" in cards
    return dated and (b"EXPTIME " in cards or b"EXPOSURE" in cards or b"XPOSURE " in cards)


def _read_unit(start: bytes, tap: Tap, first_keyword: bytes, size_bytes: int | None) -> tuple[FitsHeader, bytes]:
    """One header, and what was read beyond it."""
    raw, cards, offset = start, dict[bytes, int](), 0
    while offset < MOST_BLOCKS * BLOCK:
        if len(raw) < offset + BLOCK:
            raw += _filled(tap, offset + BLOCK - len(raw))
        if not offset and not raw.startswith(first_keyword):
            raise Doubt("is not FITS" if raw else "is empty")
        if len(raw) < offset + BLOCK:
            raise Doubt("is truncated: the header ends before its END card")
        names = _NAMES.unpack_from(raw, offset)
        places = range(offset + BLOCK - CARD, offset - 1, -CARD)
        cards = dict(zip(names[::-1], places, strict=True)) | cards
        offset += BLOCK
        if _END in cards:
            return FitsHeader(raw, cards, offset, size_bytes), raw[offset:]
    raise Doubt(f"has no END card in its first {MOST_BLOCKS} blocks")


def _filled(tap: Tap, count: int) -> bytes:
    """As many bytes as were asked for, or all there are."""
    found = b""
    while len(found) < count and (more := tap(count - len(found))):
        found += more
    return found


def _unpacking(opened: int, start: bytes) -> Tap:
    """Bytes behind gzip, never more than asked for, however much a file claims to hold."""
    packed, unpacker = start, zlib.decompressobj(wbits=31)

    def tap(count: int) -> bytes:
        nonlocal packed
        try:
            while not unpacker.eof:
                packed = unpacker.unconsumed_tail or packed or os.read(opened, _READ_AT_ONCE)
                if not packed:
                    break
                found = unpacker.decompress(packed, count)
                packed = b""
                if found:
                    return found
        except zlib.error:
            raise Doubt("is damaged: gzip cannot unpack it") from None
        return b""

    return tap


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
