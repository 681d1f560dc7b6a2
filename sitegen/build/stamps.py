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


class Stamp(Struct, frozen=True, gc=False):
    """A file as the system knows it: equal stamps, equal content, once it is `reliable`. `ctime_ns` is the time of the last
    change of any kind, which no program can set; on Windows that of the file's making."""

    size: int
    mtime_ns: int
    ctime_ns: int
    inode: int


def stamps_in(root: Path) -> dict[str, Stamp]:
    """Every file below the folder, by path relative to it (POSIX, as the disk spells it); empty where there is none."""
    stamps: dict[str, Stamp] = {}
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
                        stamps[name] = _stamp(entry)
        except OSError:
            continue
    return stamps


def _stamp(entry: "os.DirEntry[str]") -> Stamp:
    """Windows tells no inode while it reads a folder."""
    try:
        stat = entry.stat()
        return Stamp(stat.st_size, stat.st_mtime_ns, stat.st_ctime_ns, stat.st_ino or entry.inode())
    except OSError:
        return Stamp(-1, 0, 0, 0)


def reliable(stamp: Stamp | None, looked_ns: int) -> Stamp | None:
    """The stamp, or None where the file is so new that it may change again and keep it. `looked_ns` is when it was taken."""
    return stamp if stamp is not None and reliable_ns(stamp) <= looked_ns else None


def reliable_ns(stamp: Stamp) -> int:
    """From when on every change gives the file another stamp."""
    changed_ns = stamp.mtime_ns if sys.platform == "win32" else stamp.ctime_ns
    tick_ns = FINE_TICK_NS if changed_ns % SECOND_NS else COARSE_TICK_NS
    return max(stamp.mtime_ns, stamp.ctime_ns) + tick_ns


def all_reliable(stamps: Iterable[Stamp], looked_ns: int) -> bool:
    return all(reliable_ns(stamp) <= looked_ns for stamp in stamps)


def digest_of_stamps(stamps: dict[str, Stamp]) -> str:
    return _digest(sorted([(name, stamp.size, stamp.mtime_ns, stamp.ctime_ns, stamp.inode) for name, stamp in stamps.items()]))


def digest_of_output(root: Path) -> str:
    """As `digest_of_files`, of what lies there."""
    return digest_of_files((name, stamp.size, stamp.mtime_ns, stamp.inode) for name, stamp in stamps_in(root).items())


def digest_of_files(files: Iterable[tuple[str, int, int, int]]) -> str:
    """Of paths, sizes, times and inodes. Without change times: hard links made or taken away elsewhere do not change a page."""
    return _digest(sorted(files))


def _digest(lines: list[tuple[Any, ...]]) -> str:
    return blake2b(repr(lines).encode("utf-8", "surrogateescape"), digest_size=20).hexdigest()
