"""What kind of file it is, by its first bytes, and whether it ends where it says: read without decoding a pixel."""

import os
import struct
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

from sitegen.pictures.records import Format, PictureProblem
from sitegen.pictures.tiff_layout import tiff_is_whole

CUT_SHORT = "it is cut short: the file ends before the picture does"
TAIL_BYTES = 65_536


def format_of(path: Path) -> Format:
    """The kind of picture by its content, whatever the name says; PictureProblem where it is none of ours."""
    with path.open("rb") as stream:
        head = stream.read(32)
    if not head:
        raise PictureProblem("it is empty")
    for begins, name in SIGNATURES:
        if begins(head):
            return name
    raise PictureProblem("it is not a picture of a known kind (JPEG, PNG, TIFF, WebP, AVIF, FITS)")


def refuse_cut_short(path: Path, kind: Format) -> None:
    """PictureProblem where the container's own bookkeeping points beyond the end of the file."""
    check = WHOLENESS.get(kind)
    if check is None:
        return
    size = path.stat().st_size
    with path.open("rb") as stream:
        try:
            whole = check(stream, size)
        except (struct.error, OverflowError, OSError):
            whole = False
    if not whole:
        raise PictureProblem(CUT_SHORT)


def _jpeg_is_whole(stream: BinaryIO, size: int) -> bool:
    """The end marker stands near the end; cameras and editors may append a little of their own."""
    stream.seek(max(0, size - TAIL_BYTES))
    return b"\xff\xd9" in stream.read()


def _png_is_whole(stream: BinaryIO, size: int) -> bool:
    stream.seek(8)
    while True:
        length, kind = struct.unpack(">I4s", stream.read(8))
        if kind == b"IEND":
            return stream.tell() + 4 <= size
        stream.seek(length + 4, os.SEEK_CUR)


def _webp_is_whole(stream: BinaryIO, size: int) -> bool:
    stream.seek(4)
    return int(struct.unpack("<I", stream.read(4))[0]) + 8 <= size


def _avif_is_whole(stream: BinaryIO, size: int) -> bool:
    """Top-level boxes tile the file (ISO/IEC 14496-12, 4.2)."""
    position = 0
    while position < size:
        stream.seek(position)
        length = struct.unpack(">I4s", stream.read(8))[0]
        if length == 1:
            length = struct.unpack(">Q", stream.read(8))[0]
        if length == 0:
            return True
        if length < 8:
            return False
        position += length
    return position == size


def _is_avif(head: bytes) -> bool:
    return head[4:8] == b"ftyp" and any(brand in head[8:32] for brand in (b"avif", b"avis"))


SIGNATURES: tuple[tuple[Callable[[bytes], bool], Format], ...] = (
    (lambda head: head.startswith(b"\xff\xd8\xff"), "jpeg"),
    (lambda head: head.startswith(b"\x89PNG\r\n\x1a\n"), "png"),
    (lambda head: head[:4] in (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+"), "tiff"),
    (lambda head: head[:4] == b"RIFF" and head[8:12] == b"WEBP", "webp"),
    (_is_avif, "avif"),
    (lambda head: head.startswith(b"SIMPLE  ="), "fits"),
    (lambda head: head.startswith(b"\x1f\x8b"), "fits"),  # gzip: only FITS is taken so, and judged when opened
)

WHOLENESS: dict[Format, Callable[[BinaryIO, int], bool]] = {
    "jpeg": _jpeg_is_whole,
    "png": _png_is_whole,
    "tiff": tiff_is_whole,
    "webp": _webp_is_whole,
    "avif": _avif_is_whole,
}
