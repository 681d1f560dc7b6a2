"""Puts a finished site in the place of the earlier one: whole or not at all.

The next site is built in a hidden folder beside the output; files that did not change are shared with the earlier site by hard
link, so that little is copied. Then the two folders change places in one step of the file system. Killed, out of disk or out of
memory before that step, the earlier site is untouched; whatever lies about is cleared away by the next rebuild.
"""

import errno
import os
import shutil
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from sitegen.artifact import Artifact
from sitegen.problems import DiaryProblems, Problem
from sitegen.writing.memory import Memory, remember, remembered
from sitegen.writing.one_at_a_time import only_rebuild
from sitegen.writing.switch import change_places

FILE_MODE, FOLDER_MODE = 0o644, 0o755


@dataclass(frozen=True, slots=True)
class Published:
    """`changed` files were written, the others shared with the earlier site. `removed` were made by an earlier rebuild and are
    gone now; `carried` are files that somebody put there by hand and that stay."""

    files: int
    changed: int
    removed: int
    carried: tuple[str, ...]


def publish(artifacts: Iterable[Artifact], output: Path, state: Path | None = None) -> Published:
    """Writes beside `output` and switches. `state` is a folder that remembers what an earlier rebuild put there.

    Raises DiaryProblems, with the earlier site whole, where the disk is full, a folder cannot be written, or a file that was put
    into the output by hand stands in the way of a page.
    """
    output = output.resolve() if output.is_symlink() else output.absolute()
    beside = output.with_name(f".{output.name}.next")
    try:
        output.parent.mkdir(parents=True, exist_ok=True)
        with only_rebuild(output):
            recover(output)
            try:
                return _published(artifacts, output, beside, state)
            finally:  # before another rebuild may begin one of that name
                shutil.rmtree(beside, ignore_errors=True)
    except OSError as wrong:
        raise DiaryProblems([_disk_problem(wrong, output)]) from wrong


def recover(output: Path) -> None:
    """Clears what a killed rebuild left; where it died between two renames, the earlier site comes back."""
    old = output.with_name(f".{output.name}.old")
    if old.exists() and not output.exists():
        old.rename(output)
    shutil.rmtree(old, ignore_errors=True)
    shutil.rmtree(output.with_name(f".{output.name}.next"), ignore_errors=True)


def _published(artifacts: Iterable[Artifact], output: Path, beside: Path, state: Path | None) -> Published:
    known = remembered(output, state)
    next_site = _NextSite(output, beside)
    beside.mkdir(mode=FOLDER_MODE)
    for artifact in artifacts:
        next_site.place(artifact)
    carried, in_the_way = next_site.carry(known)
    if in_the_way:
        raise DiaryProblems(_in_the_way(path, output) for path in in_the_way)
    remember(output, beside, state, frozenset(next_site.placed))
    change_places(beside, output)
    removed = len((known.files or frozenset()) - next_site.placed)
    return Published(len(next_site.placed), next_site.changed, removed, tuple(carried))


class _NextSite:
    """The site as it will be, while it is put together."""

    def __init__(self, output: Path, beside: Path) -> None:
        self.output, self.beside = output, beside
        self.placed: set[str] = set()
        self.folders: set[Path] = set()
        self.changed = 0
        self.differing: set[str] = set()

    def place(self, artifact: Artifact) -> None:
        path = _inside(artifact.path)
        if path in self.placed:
            raise ValueError(f"two artifacts for {path}")
        self.placed.add(path)
        target, earlier = self.beside / path, self.output / path
        self._folder(target.parent)
        if _same(artifact.content, earlier):
            _share(earlier, target)
            return
        self.changed += 1
        if os.path.lexists(earlier):
            self.differing.add(path)
        _write(artifact.content, target)

    def carry(self, known: Memory) -> tuple[list[str], list[str]]:
        """Takes over what sitegen did not make. Gives (carried, in the way of a page), both sorted. Where nothing is
        remembered, a file in a page's place is an earlier rebuild's if the folder looks like one, else the author's."""
        carried, in_the_way = [], []
        overwritten = self.differing if known.files is None and known.ours else known.files or frozenset()
        for path in _files(self.output):
            if path in overwritten or (path in self.placed and path not in self.differing):
                continue
            if path in self.placed or self._blocked(path):
                in_the_way.append(path)
            else:
                self._folder((self.beside / path).parent)
                _share(self.output / path, self.beside / path)
                carried.append(path)
        return carried, in_the_way

    def _blocked(self, path: str) -> bool:
        """The next site has a folder of this name, or a page where this file's folder would be."""
        above = [parent.as_posix() for parent in PurePosixPath(path).parents]
        return (self.beside / path).is_dir() or any(parent in self.placed for parent in above)

    def _folder(self, folder: Path) -> None:
        if folder not in self.folders:
            folder.mkdir(parents=True, exist_ok=True)
            for one in (folder, *folder.parents):
                if one == self.beside or one in self.folders:
                    break
                one.chmod(FOLDER_MODE)
                self.folders.add(one)
            self.folders.add(folder)


def _inside(path: str) -> str:
    """The artifact's path, proved to stay inside the site."""
    pure = PurePosixPath(path)
    if pure.is_absolute() or ".." in pure.parts or "\\" in path or "\0" in path or not pure.parts:
        raise ValueError(f"an artifact's path leaves the site: {path!r}")
    return pure.as_posix()


def _same(content: bytes | Path, earlier: Path) -> bool:
    """Whether the earlier site has this very file. A kept file carries its time along, so that it need not be read."""
    try:
        told = earlier.stat(follow_symlinks=False)
    except OSError:
        return False
    if isinstance(content, Path):
        source = content.stat()
        return (told.st_size, told.st_mtime_ns) == (source.st_size, source.st_mtime_ns)
    return told.st_size == len(content) and earlier.read_bytes() == content


def _share(earlier: Path, target: Path) -> None:
    """One file, two names; a copy where the file system cannot."""
    try:
        os.link(earlier, target, follow_symlinks=False)
    except OSError as wrong:
        if wrong.errno not in (errno.EPERM, errno.EXDEV, errno.EMLINK, errno.ENOTSUP):
            raise
        shutil.copy2(earlier, target, follow_symlinks=False)


def _write(content: bytes | Path, target: Path) -> None:
    if isinstance(content, Path):
        shutil.copy2(content, target)
    else:
        target.write_bytes(content)
    target.chmod(FILE_MODE)


def _files(output: Path) -> list[str]:
    """Every file and link below the output, POSIX, sorted. A link to a folder is one thing, whatever lies behind it."""
    found = []
    for folder, folders, names in os.walk(output):
        links = [name for name in folders if os.path.islink(os.path.join(folder, name))]  # noqa: PTH114, PTH118 # as os.walk
        found += [Path(folder, name).relative_to(output).as_posix() for name in (*links, *names)]
    return sorted(found)


def _in_the_way(path: str, output: Path) -> Problem:
    return Problem(
        f"{output.name}/{path}", 1, 1, "this file was put here by hand, and a page of the diary needs its place",
        "move it out of the output folder",
    )  # fmt: skip


def _disk_problem(wrong: OSError, output: Path) -> Problem:
    place = wrong.filename2 or wrong.filename or output
    remedy = {
        errno.ENOSPC: "free some space and rebuild",
        errno.EDQUOT: "free some space and rebuild",
        errno.EACCES: "make the folder writable, or choose another with --output",
        errno.EPERM: "make the folder writable, or choose another with --output",
        errno.EROFS: "the file system is read-only; choose another folder with --output",
    }.get(wrong.errno or 0, "the earlier site is untouched")
    told = os.strerror(wrong.errno).lower() if wrong.errno else "an unknown failure"
    return Problem(str(Path(str(place)).name), 1, 1, f"the site could not be written: {told}", remedy)
