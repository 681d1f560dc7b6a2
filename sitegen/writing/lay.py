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
    return {name: one.inode() for name, one in _files(root, folders)}, folders


def lay_of(root: Path) -> Lay:
    """Empty where there is no such folder."""
    folders: set[str] = set()
    files = {name: _laid(one) for name, one in _files(root, folders)}
    return Lay(files, folders)


def _files(root: Path, folders: set[str]) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """What is no folder, by path; the folders on the way are put into `folders`."""
    waiting = [""] if root.is_dir() else []
    while waiting:
        inside = waiting.pop()
        with os.scandir(f"{root}/{inside}") as found:
            for one in found:
                name = f"{inside}/{one.name}" if inside else one.name
                if one.is_dir(follow_symlinks=False):
                    folders.add(name)
                    waiting.append(name)
                else:
                    yield name, one


def _laid(one: os.DirEntry[str]) -> Laid:
    told = one.stat(follow_symlinks=False)
    return Laid(told.st_size, told.st_mtime_ns, told.st_ino)


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
