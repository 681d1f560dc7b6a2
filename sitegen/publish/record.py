"""The record of what was published: `.published` in the output itself, so that it is copied, moved and restored with it.

JSON, one line a file, sorted: each path with the BLAKE2b digest (160 bits) of what sitegen put there. No times, no absolute
paths, nothing that the files staging_dir it do not tell. It does not list itself.
"""

from collections.abc import Mapping
from hashlib import blake2b
from pathlib import Path

from msgspec import DecodeError, Struct, json

RECORD = ".published"
FORMAT = 1
DIGEST_BYTES = 20


class NewerRecord(Exception):
    """The record's format is one that only a later version knows; carries its number."""


class Record(Struct, frozen=True):
    """Digests by path. `whole`: as sitegen wrote it; else it is missing, damaged or was edited, and `files` may lack some."""

    files: Mapping[str, str]
    whole: bool


class _Written(Struct):
    format: int
    checksum: str
    files: dict[str, str]


class _Format(Struct):
    format: int


def digest_of(content: bytes) -> str:
    return blake2b(content, digest_size=DIGEST_BYTES).hexdigest()


def record_text(files: Mapping[str, str]) -> bytes:
    """The same bytes for the same files."""
    listed = dict(sorted(files.items()))
    return json.format(json.encode(_Written(FORMAT, _checksum(listed), listed)), indent=0) + b"\n"


def read_record(path: Path) -> Record:
    """Raises NewerRecord; OSError where the disk refuses."""
    if not path.is_file():
        return Record({}, whole=False)
    body = path.read_bytes()
    try:
        if (number := json.decode(body, type=_Format).format) > FORMAT:
            raise NewerRecord(number)
        written = json.decode(body, type=_Written)
    except (DecodeError, UnicodeDecodeError):  # msgspec's ValidationError is a DecodeError
        return Record({}, whole=False)
    return Record(written.files, written.checksum == _checksum(written.files))


def _checksum(files: Mapping[str, str]) -> str:
    """Of the pairs as they stand, in their order."""
    return digest_of(json.encode(list(files.items())))
