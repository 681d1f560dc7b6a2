"""The few EXIF tags that a diary asks of a camera's picture: JPEG, TIFF, and raw files with TIFF structures. Never the pixels.

CIPA DC-008 (EXIF 2.32) says where they stand: in the EXIF directory of a TIFF structure, which a JPEG holds in an APP1 segment.
TIFF/EP (ISO 12234-2) lays the same tags into the first directory. Pillow reads the directories; it is loaded with the first
picture, since a diary of tables needs none of it.
"""

import io
import math
import warnings
from collections.abc import Collection, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, BinaryIO

from sitegen.lazy_module import LazyModule
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.raw_files import Structure, plain_head, tiff_structures

MOST_READS = 60_000
LARGEST_READ = 1 << 20  # what Pillow asks for at once
MOST_BYTES = 64 << 20
EXIF_DIRECTORY, GPS_DIRECTORY = 0x8769, 0x8825
TAGS = {
    "EXIF ExposureTime": (0x829A,),
    "EXIF ISOSpeedRatings": (0x8827,),
    "EXIF DateTimeOriginal": (0x9003,),
    "EXIF OffsetTimeOriginal": (0x9011,),
    "EXIF SubSecTimeOriginal": (0x9291,),
    "EXIF FocalLength": (0x920A,),
    "EXIF ExifImageWidth": (0xA002,),
    "EXIF ExifImageLength": (0xA003,),
    "EXIF BodySerialNumber": (0xA431, 0xC62F),  # the second is DNG's CameraSerialNumber
}
SIZES = ("EXIF ExifImageWidth", "EXIF ExifImageLength")
GPS_ANGLES = (("GPS latitude", 1, 2, "S", 90), ("GPS longitude", 3, 4, "W", 180))
"""Name, the tags of reference and value in the GPS directory, the reference of negative angles, the largest angle."""
Tags = Mapping[str, str | float]
_tiff = LazyModule("PIL.TiffImagePlugin")


class _TooMuch(Exception):
    """The EXIF wants more reading than any camera writes."""


class _LimitedReader(io.BufferedReader):
    """A file that gives way to no EXIF which counts its tags in thousands or sends its reader in circles. `origin`: where
    the TIFF structure begins, from which its own places count."""

    origin = 0
    _reads = _bytes = 0

    def read(self, count: int | None = -1, /) -> bytes:
        content = super().read(LARGEST_READ if count is None or count < 0 else min(count, LARGEST_READ))
        self._reads, self._bytes = self._reads + 1, self._bytes + len(content)
        if self._reads > MOST_READS or self._bytes > MOST_BYTES:
            raise _TooMuch
        return content

    def seek(self, offset: int, whence: int = io.SEEK_SET, /) -> int:
        return super().seek(offset + self.origin if whence == io.SEEK_SET else offset, whence) - self.origin

    def tell(self) -> int:
        return super().tell() - self.origin


def exif_tags(path: Path) -> Tags:
    """The tags of TAGS that the picture has: text stripped, numbers finite, the first of several. ValueProblem where there are
    none; OSError where the file cannot be read."""
    with _LimitedReader(io.FileIO(path)) as opened:
        heads = tuple(_heads(opened))
        if not heads:
            raise ValueProblem("carries no EXIF", "log the frame in a table, or keep the camera's original file")
        try:
            tags, whole = _directories(opened, heads)
        except OSError:
            raise
        except Exception:  # the library raises whatever a damaged file leads it to
            raise ValueProblem("its EXIF is damaged") from None
    if not whole and not {"EXIF DateTimeOriginal", "EXIF ExposureTime"} <= tags.keys():
        raise ValueProblem("its EXIF is damaged")
    return tags


def _heads(opened: _LimitedReader) -> Iterator[tuple[Structure, bytes]]:
    """The TIFF structures of the file, each with the eight bytes with which it begins."""
    try:
        structures = tuple(tiff_structures(opened))
    except _TooMuch:
        return
    for structure in structures:
        opened.origin = structure.origin
        opened.seek(0)
        if (head := plain_head(opened.read(8))) is not None:
            yield structure, head


def _directories(opened: _LimitedReader, heads: Sequence[tuple[Structure, bytes]]) -> tuple[Tags, bool]:
    """The tags of the EXIF directories and, for what they lack, of the first ones; and whether all could be read whole."""
    inner: list[Mapping[int, Any]] = []
    outer: list[Mapping[int, Any]] = []
    place: Mapping[int, Any] = {}
    with warnings.catch_warnings(record=True) as complaints:
        warnings.simplefilter("always")
        for structure, head in heads:
            opened.origin = structure.origin
            begin = int.from_bytes(head[4:], "little" if head[:1] == b"I" else "big")
            if structure.holds == "place":
                place = _directory(opened, head, begin, range(1, 5))
                continue
            first = _directory(opened, head, begin)
            outer.append(first)
            inner.append(_directory(opened, head, first.get(EXIF_DIRECTORY)))
            place = _directory(opened, head, first.get(GPS_DIRECTORY), range(1, 5)) or place
        tags = {name: value for name, numbers in TAGS.items() if (value := _value(numbers, *inner, *outer)) is not None}
    if any(structure.holds == "preview" for structure, _ in heads):
        tags = {name: value for name, value in tags.items() if name not in SIZES}
    return {**tags, **_place_deg(place)}, not complaints


def _directory(opened: BinaryIO, head: bytes, place: object, wanted: Collection[int] = ()) -> Mapping[int, Any]:
    if not isinstance(place, int):
        return {}
    directory: Any = _tiff.ImageFileDirectory_v2(head)
    opened.seek(place)
    directory.load(opened)
    return {number: directory[number] for number in directory if number in (wanted or WANTED)}


def _place_deg(tags: Mapping[int, Any]) -> dict[str, float]:
    """Where the camera stood, north and east positive; nothing where it does not say."""
    place = {}
    for name, ref, parts, negative, most in GPS_ANGLES:
        angle = _angle_deg(tags.get(parts))
        if angle is not None and 0 <= angle <= most:
            place[name] = -angle if str(_plain(tags.get(ref)) or "").upper() == negative else angle
    return place


def _angle_deg(parts: object) -> float | None:
    """Degrees, minutes and seconds."""
    numbers = [_plain(part) for part in parts] if isinstance(parts, tuple) else []
    if not numbers or not all(isinstance(number, float) for number in numbers):
        return None
    return sum(float(number or 0.0) / 60.0**place for place, number in enumerate(numbers[:3]))


def _value(numbers: tuple[int, ...], *directories: Mapping[int, Any]) -> str | float | None:
    return next((plain for directory in directories for number in numbers
                 if (plain := _plain(directory.get(number))) is not None), None)  # fmt: skip


def _plain(value: Any) -> str | float | None:
    """Text without its padding, or the first number; None for neither, and for a number over zero."""
    if isinstance(value, bytes):
        value = value.decode("latin-1")
    if isinstance(value, str):
        return value.strip(" \0") or None
    if isinstance(value, tuple):
        value = value[0] if value else None
    try:
        number = float(value)
    except (TypeError, ValueError, ZeroDivisionError, OverflowError):
        return None
    return number if math.isfinite(number) else None


WANTED = {EXIF_DIRECTORY, GPS_DIRECTORY, *(number for numbers in TAGS.values() for number in numbers)}
