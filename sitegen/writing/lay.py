"""What lies in a folder of the site: files by path, and folders, from one walk that opens nothing."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple


class Laid(NamedTuple):
    """A file or a link as the file system knows it. Two names of one inode are one file."""

    size: int
    mtime_ns: int
    inode: int


class Lay(NamedTuple):
    """Paths are POSIX, relative to the folder. A link to a folder is one thing, whatever lies behind it."""

    files: dict[str, Laid]
    folders: set[str]


def inodes_in(root: Path) -> tuple[dict[str, int], set[str]]:
    """Files and links by path, to their inodes, and folders. Asks nothing of the files: reading the folders tells that much."""
    folders: set[str] = set()
    return {name: one.inode() for files in _files(root, folders) for name, one in files}, folders


def lay_of(root: Path) -> Lay:
    """Empty where there is no such folder."""
    folders: set[str] = set()
    files = {name: _laid(one) for found in _files(root, folders) for name, one in found}
    return Lay(files, folders)


def _files(root: Path, folders: set[str]) -> Iterator[list[tuple[str, os.DirEntry[str]]]]:
    """What is no folder, by path, folder by folder; the folders on the way are put into `folders`."""
    base, waiting = f"{root}/", [""] if root.is_dir() else []
    while waiting:
        inside = waiting.pop()
        with os.scandir(base + inside) as found:
            every = list(found)
        above = inside + "/" if inside else ""
        below = [above + one.name for one in every if one.is_dir(follow_symlinks=False)]
        folders.update(below)
        waiting += below
        yield [(above + one.name, one) for one in every if not one.is_dir(follow_symlinks=False)]


def _laid(one: os.DirEntry[str]) -> Laid:
    """Windows tells no inode while it reads a folder."""
    told = one.stat(follow_symlinks=False)
    return Laid(told.st_size, told.st_mtime_ns, told.st_ino or one.inode())


def laid_as(path: Path) -> Laid:
    """One file or link."""
    told = path.stat(follow_symlinks=False)
    return Laid(told.st_size, told.st_mtime_ns, told.st_ino)


def folders_above(path: str) -> list[str]:
    """'a/b/c.html' -> ['a/b', 'a']."""
    above = []
    while slash := path.rfind("/") + 1:
        path = path[: slash - 1]
        above.append(path)
    return above
