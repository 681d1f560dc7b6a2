"""What a folder looks like from outside: sizes, times and inodes, without opening a file."""

import os
from collections.abc import Iterable
from hashlib import blake2b
from pathlib import Path
from typing import Any

from msgspec import Struct

IGNORED = frozenset({"__pycache__"})
SETTLED_NS = 20_000_000
"""A file that changed this shortly before it was looked at may change again within the same tick of the clock."""


class Mark(Struct, frozen=True, gc=False):
    """A file as the system knows it: equal marks, equal content."""

    size: int
    mtime_ns: int
    ctime_ns: int
    inode: int


def marks_in(root: Path) -> dict[str, Mark]:
    """Every file below the folder, by path relative to it (POSIX, as the disk spells it); empty where there is none."""
    found: dict[str, Mark] = {}
    waiting = [""]
    while waiting:
        inside = waiting.pop()
        try:
            with os.scandir(f"{root}/{inside}") as entries:
                for entry in entries:
                    name = f"{inside}/{entry.name}" if inside else entry.name
                    if entry.is_dir():
                        if entry.name not in IGNORED and not entry.is_symlink():
                            waiting.append(name)
                    else:
                        found[name] = _mark(entry)
        except OSError:
            continue
    return found


def _mark(entry: "os.DirEntry[str]") -> Mark:
    try:
        told = entry.stat()
    except OSError:
        return Mark(-1, 0, 0, 0)
    return Mark(told.st_size, told.st_mtime_ns, told.st_ctime_ns, told.st_ino)


def settled(mark: Mark | None, looked_ns: int) -> Mark | None:
    """The mark, or None where the file is so new that its mark may already lie."""
    return mark if mark is not None and max(mark.mtime_ns, mark.ctime_ns) < looked_ns - SETTLED_NS else None


def newest_ns(marks: Iterable[Mark]) -> int:
    return max((max(mark.mtime_ns, mark.ctime_ns) for mark in marks), default=0)


def digest_of_marks(marks: dict[str, Mark]) -> str:
    return _digest(sorted([(name, mark.size, mark.mtime_ns, mark.ctime_ns, mark.inode) for name, mark in marks.items()]))


def digest_of_output(root: Path) -> str:
    """As `digest_of_lay`, of what lies there."""
    return digest_of_lay((name, mark.size, mark.mtime_ns, mark.inode) for name, mark in marks_in(root).items())


def digest_of_lay(files: Iterable[tuple[str, int, int, int]]) -> str:
    """Of paths, sizes, times and inodes. Without change times: hard links made or taken away elsewhere do not change a page."""
    return _digest(sorted(files))


def _digest(lines: list[tuple[Any, ...]]) -> str:
    return blake2b(repr(lines).encode("utf-8", "surrogateescape"), digest_size=20).hexdigest()
