"""What lies under content/: walked once, so that no path is trusted before it was seen there."""

import os
import unicodedata
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from sitegen.problems import Problem


@dataclass(frozen=True)
class ContentFolder:
    """`names` maps each file's path inside content/ (POSIX, Unicode NFC) to the same path as the disk spells it.

    `links_out` holds the paths of symbolic links that are not followed: those to folders, and those that lead out.
    """

    root: Path
    shown_as: str
    names: dict[str, str]
    folders: frozenset[str]
    links_out: frozenset[str]

    def shown(self, relative: str) -> str:
        return f"{self.shown_as}/{relative}"

    def path(self, relative: str) -> Path:
        return self.root / relative

    @cached_property
    def in_order(self) -> list[str]:
        return sorted(self.names)

    @cached_property
    def by_folded_name(self) -> dict[str, str]:
        """For authors who typed another case than the disk has."""
        return {name.casefold(): name for name in self.in_order}

    def under(self, prefix: str) -> Iterator[str]:
        """The files whose path begins with the prefix, sorted."""
        for name in self.in_order[bisect_left(self.in_order, prefix) :]:
            if not name.startswith(prefix):
                return
            yield name

    def directly_in(self, folder: str) -> Iterator[str]:
        """The files of one folder, without those of its subfolders, sorted."""
        prefix = f"{folder}/" if folder else ""
        return (name for name in self.under(prefix) if "/" not in name[len(prefix) :])


def walk_content(root: Path, shown_as: str) -> tuple[ContentFolder, list[Problem]]:
    """Every regular file under content/ that is not hidden; special files (pipes, devices) are as good as absent."""
    walk = _Walk(root.resolve(), shown_as)
    walk.folder("")
    folder = ContentFolder(walk.root, shown_as, walk.names, frozenset(walk.folders), frozenset(walk.links_out))
    return folder, walk.problems


class _Walk:
    def __init__(self, root: Path, shown_as: str) -> None:
        self.root = root
        self.shown_as = shown_as
        self.names: dict[str, str] = {}
        self.folders: set[str] = set()
        self.links_out: set[str] = set()
        self.problems: list[Problem] = []

    def folder(self, relative: str) -> None:
        waiting = [relative]
        while waiting:
            inside = waiting.pop()
            try:
                with os.scandir(self.root / inside) as items:
                    waiting += [name for item in items if (name := self._folder_or_file(inside, item)) is not None]
            except OSError as trouble:
                shown = f"{self.shown_as}/{inside}".rstrip("/")
                reason = trouble.strerror or "the system refuses"
                self.problems.append(Problem(shown, 1, 1, f"the folder cannot be read: {reason}"))

    def _folder_or_file(self, inside: str, item: "os.DirEntry[str]") -> str | None:
        """The path of a folder still to walk; a file is noted."""
        if item.name.startswith("."):
            return None
        on_disk = f"{inside}/{item.name}" if inside else item.name
        name = unicodedata.normalize("NFC", on_disk)
        if item.is_symlink() and self._leads_out(item):
            self.links_out.add(name)
        elif item.is_dir():
            self.folders.add(name)
            return on_disk
        elif item.is_file():
            self.names[name] = on_disk
        return None

    def _leads_out(self, item: "os.DirEntry[str]") -> bool:
        """A link to a folder counts as leading out wherever it points: followed, it could run in circles."""
        try:
            return item.is_dir() or not Path(item.path).resolve(strict=True).is_relative_to(self.root)
        except (OSError, RuntimeError):
            return True
