"""How a TIFF lays its pixels down: whether they all lie within the file, and in pieces of a size that memory takes.

Tags and types after TIFF 6.0, sections 2, 8 and 15, and BigTIFF, which is the same with 8-byte offsets.
"""

import struct
from typing import BinaryIO

from msgspec import Struct

from sitegen.pictures.records import PictureProblem

# Not Pillow's reader of directories, which takes the values of all tags into memory before it says what tags there are: a damaged
# count of 300 MB in a private tag costs it 570 MB, and nothing here.

WIDTH, HEIGHT, BITS, COMPRESSION, PHOTOMETRIC, SAMPLES, ROWS_PER_STRIP, PLANAR = 256, 257, 258, 259, 262, 277, 278, 284
STRIP_OFFSETS, STRIP_COUNTS, TILE_WIDTH, TILE_HEIGHT, TILE_OFFSETS, TILE_COUNTS = 273, 279, 322, 323, 324, 325
UNCOMPRESSED, SEPARATE_PLANES, LUMINANCE_AND_COLOUR = 1, 2, 6
LETTERS = {1: "B", 3: "H", 4: "I", 16: "Q"}
MOST_VALUES = 4_000_000
LARGEST_PIECE_BYTES = 400_000_000


class Directory(Struct, frozen=True):
    """The tags of the first page; `is_big`: BigTIFF; `order`: '<' or '>'."""

    stream: BinaryIO
    order: str
    is_big: bool
    tags: dict[int, tuple[int, int, bytes]]  # tag -> (type, count, value or its place, as stored)

    def values(self, tag: int) -> tuple[int, ...]:
        """Empty where the page has no such tag. struct.error where it has one of another kind."""
        if tag not in self.tags:
            return ()
        kind, count, stored = self.tags[tag]
        if kind not in LETTERS or count > MOST_VALUES:
            raise struct.error("numbers of no known type")
        shape = f"{self.order}{count}{LETTERS[kind]}"
        if struct.calcsize(shape) <= len(stored):
            return struct.unpack_from(shape, stored)
        self.stream.seek(struct.unpack(self.order + ("Q" if self.is_big else "I"), stored)[0])
        return struct.unpack(shape, self.stream.read(struct.calcsize(shape)))

    def value(self, tag: int, otherwise: int) -> int:
        return next(iter(self.values(tag)), otherwise)


def tiff_is_whole(stream: BinaryIO, size: int) -> bool:
    """Every strip or tile of the first page lies within `size` bytes. PictureProblem for pieces beyond all measure;
    struct.error for what is no directory."""
    page = first_directory(stream)
    offsets = page.values(STRIP_OFFSETS) or page.values(TILE_OFFSETS)
    counts = page.values(STRIP_COUNTS) or page.values(TILE_COUNTS) or (0,) * len(offsets)
    if not offsets or any(offset + count > size for offset, count in zip(offsets, counts, strict=False)):
        return False
    _refuse_large_pieces(page, max(counts))
    return True


def first_directory(stream: BinaryIO) -> Directory:
    stream.seek(0)
    order = "<" if stream.read(2) == b"II" else ">"
    is_big = struct.unpack(order + "H", stream.read(2))[0] == 43
    stream.seek(8 if is_big else 4)
    stream.seek(struct.unpack(order + ("Q" if is_big else "I"), stream.read(8 if is_big else 4))[0])
    entries = struct.unpack(order + ("Q" if is_big else "H"), stream.read(8 if is_big else 2))[0]
    if entries > 4096:
        raise struct.error("more tags than a picture has")
    shape = order + ("HHQ8s" if is_big else "HHI4s")
    rows = [struct.unpack(shape, stream.read(struct.calcsize(shape))) for _ in range(entries)]
    return Directory(stream, order, is_big, {tag: (kind, count, value) for tag, kind, count, value in rows})


def _refuse_large_pieces(page: Directory, largest_stored: int) -> None:
    """Plain strips are read row by row, however long; everything else a whole row of pieces at a time."""
    is_tiled = TILE_WIDTH in page.tags
    is_plain = page.value(PLANAR, 1) != SEPARATE_PLANES and page.value(PHOTOMETRIC, 2) != LUMINANCE_AND_COLOUR
    height = page.value(HEIGHT, 1)
    rows = page.value(TILE_HEIGHT, 1) if is_tiled else min(page.value(ROWS_PER_STRIP, height), height)
    across = max(page.value(WIDTH, 1), page.value(TILE_WIDTH, 1))
    at_once = 0 if is_plain and not is_tiled else across * rows * page.value(SAMPLES, 1) * -(-page.value(BITS, 1) // 8)
    if page.value(COMPRESSION, UNCOMPRESSED) != UNCOMPRESSED:
        at_once = max(at_once, largest_stored)
    if at_once > LARGEST_PIECE_BYTES:
        raise PictureProblem(
            f"its strips or tiles need {at_once / 1e6:,.0f} MB of memory at once; save it with smaller ones, or uncompressed"
        )
