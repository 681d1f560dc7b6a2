"""What a folder looks like from outside: sizes, times and inodes, without opening a file."""

import os
import sys
from collections.abc import Iterable
from hashlib import blake2b
from pathlib import Path
from typing import Any

from msgspec import Struct

IGNORED = frozenset({"__pycache__"})
FINE_TICK_NS, COARSE_TICK_NS = 20_000_000, 2_020_000_000
"""A file that changed this shortly before it was looked at may change again within the same tick of the disk's clock. Most disks
tick with the system's clock, at most every 10 ms. Some count whole seconds (ext4 with inodes of 128 bytes, HFS+, many network
shares), FAT every second one."""
SECOND_NS = 1_000_000_000


class Mark(Struct, frozen=True, gc=False):
    """A file as the system knows it: equal marks, equal content, once it is `settled`. `ctime_ns` is the time of the last change
    of any kind, which no program can set; on Windows that of the file's making."""

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
    """Windows tells no inode while it reads a folder."""
    try:
        told = entry.stat()
        return Mark(told.st_size, told.st_mtime_ns, told.st_ctime_ns, told.st_ino or entry.inode())
    except OSError:
        return Mark(-1, 0, 0, 0)


def settled(mark: Mark | None, looked_ns: int) -> Mark | None:
    """The mark, or None where the file is so new that it may change again and keep it. `looked_ns` is when it was taken."""
    return mark if mark is not None and settled_ns(mark) <= looked_ns else None


def settled_ns(mark: Mark) -> int:
    """From when on every change gives the file another mark."""
    changed_ns = mark.mtime_ns if sys.platform == "win32" else mark.ctime_ns
    tick_ns = FINE_TICK_NS if changed_ns % SECOND_NS else COARSE_TICK_NS
    return max(mark.mtime_ns, mark.ctime_ns) + tick_ns


def all_settled(marks: Iterable[Mark], looked_ns: int) -> bool:
    return all(settled_ns(mark) <= looked_ns for mark in marks)


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
