"""Where the TIFF structures of a camera's file begin, by the file's first bytes.

Most raw files are TIFF structures themselves (TIFF/EP, ISO 12234-2), some under letters of their own. A RAF begins with a table
that leads to a JPEG; a CR3 is made of boxes (ISO/IEC 14496-12), of which CMT1, CMT2 and CMT4 hold a TIFF structure each: the
picture, the exposure, the place. Learnt from real files of each kind; their makers publish no description.
"""

from collections.abc import Iterator
from typing import BinaryIO, Literal

from msgspec import Struct

Holds = Literal["picture", "preview", "place"]
PLAIN = (b"II*\0", b"MM\0*")
OWN_LETTERS = {b"IIRO": b"II*\0", b"IIRS": b"II*\0", b"MMOR": b"MM\0*", b"IIU\0": b"II*\0"}
"""ORF, and RW2, where TIFF has 42."""
MOST_BOXES, LARGEST_BOX = 1_000, 1 << 40
_RAF, _RAF_JPEG = b"FUJIFILMCCD-RAW ", 84
_CR3 = b"ftypcrx "
_CANON = bytes.fromhex("85c0b687820f11e08111f4ce462b6a48")
_BOXES: dict[bytes, Holds] = {b"CMT1": "picture", b"CMT2": "picture", b"CMT4": "place"}


class Structure(Struct, frozen=True):
    """`origin`: the byte from which a structure's own places count. `holds` says what its first directory is of; a preview has
    sizes of its own, which are not the frame's."""

    origin: int
    holds: Holds = "picture"


def tiff_structures(opened: BinaryIO) -> Iterator[Structure]:
    """Nothing where the file is of no kind known here. What stands there is not looked at."""
    head = opened.read(16)
    if head.startswith(b"\xff\xd8"):
        yield from _in_jpeg(opened, 0)
    elif head == _RAF:
        opened.seek(_RAF_JPEG)
        yield from _in_jpeg(opened, int.from_bytes(opened.read(4)), "preview")
    elif head[4:12] == _CR3:
        yield from _in_boxes(opened)
    else:
        yield Structure(0)


def plain_head(head: bytes) -> bytes | None:
    """The eight bytes with which a structure begins, in TIFF's letters; None where there is none."""
    start = OWN_LETTERS.get(head[:4], head[:4])
    return start + head[4:] if start in PLAIN and len(head) == 8 else None


def _in_jpeg(opened: BinaryIO, begin: int, holds: Holds = "picture") -> Iterator[Structure]:
    """That of the first EXIF segment; none where the picture begins before one."""
    opened.seek(begin)
    if opened.read(2) != b"\xff\xd8":
        return
    while (marker := opened.read(4))[:1] == b"\xff" and len(marker) == 4 and marker[1] not in (0xD9, 0xDA):
        length, start = int.from_bytes(marker[2:]), opened.tell()
        if marker[1] == 0xE1 and opened.read(6) == b"Exif\0\0":
            yield Structure(start + 6, holds)
            return
        opened.seek(start + max(length, 2) - 2)


def _in_boxes(opened: BinaryIO) -> Iterator[Structure]:
    """`moov` holds Canon's own `uuid` box, which holds the structures."""
    place = 0
    for _ in range(MOST_BOXES):
        opened.seek(place)
        head = opened.read(32)
        size, name, inside = int.from_bytes(head[:4]), head[4:8], 8
        if size == 1:
            size, inside = int.from_bytes(head[8:16]), 16
        if len(head) < 8 or not inside <= size < LARGEST_BOX:
            return
        if name in _BOXES:
            yield Structure(place + inside, _BOXES[name])
        if name == b"moov":
            place += inside
        elif name == b"uuid" and head[inside : inside + 16] == _CANON:
            place += inside + 16
        else:
            place += size
