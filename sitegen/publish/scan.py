"""What lies in a folder of the site: files by path, and folders, from one walk that opens nothing."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple


class FileStat(NamedTuple):
    """A file or a link as the file system knows it. Two names of one inode are one file."""

    size: int
    mtime_ns: int
    inode: int


class Tree(NamedTuple):
    """Paths are POSIX, relative to the folder. A link to a folder is one thing, whatever lies behind it."""

    files: dict[str, FileStat]
    folders: set[str]


def inodes_in(root: Path) -> tuple[dict[str, int], set[str]]:
    """Files and links by path, to their inodes, and folders. Asks nothing of the files: reading the folders tells that much."""
    folders: set[str] = set()
    return {name: entry.inode() for entries in _files(root, folders) for name, entry in entries}, folders


def scan_tree(root: Path) -> Tree:
    """Empty where there is no such folder."""
    folders: set[str] = set()
    files = {name: _stat(entry) for entries in _files(root, folders) for name, entry in entries}
    return Tree(files, folders)


def _files(root: Path, folders: set[str]) -> Iterator[list[tuple[str, os.DirEntry[str]]]]:
    """What is no folder, by path, folder by folder; the folders on the way are put into `folders`."""
    base, waiting = f"{root}/", [""] if root.is_dir() else []
    while waiting:
        inside = waiting.pop()
        with os.scandir(base + inside) as inside_it:
            entries = list(inside_it)
        above = inside + "/" if inside else ""
        below = [above + entry.name for entry in entries if entry.is_dir(follow_symlinks=False)]
        folders.update(below)
        waiting += below
        yield [(above + entry.name, entry) for entry in entries if not entry.is_dir(follow_symlinks=False)]


def _stat(entry: os.DirEntry[str]) -> FileStat:
    """Windows tells no inode while it reads a folder."""
    stat = entry.stat(follow_symlinks=False)
    return FileStat(stat.st_size, stat.st_mtime_ns, stat.st_ino or entry.inode())


def stat_of(path: Path) -> FileStat:
    """One file or link."""
    stat = path.stat(follow_symlinks=False)
    return FileStat(stat.st_size, stat.st_mtime_ns, stat.st_ino)


def folders_above(path: str) -> list[str]:
    """'a/b/c.html' -> ['a/b', 'a']."""
    above = []
    while slash := path.rfind("/") + 1:
        path = path[: slash - 1]
        above.append(path)
    return above
