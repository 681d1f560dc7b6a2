"""The site as it will be, while it is put together in a folder that may hold an earlier one: only what differs is touched."""

import filecmp
import hashlib
import os
import shutil
from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import NamedTuple

from sitegen.artifact import Artifact
from sitegen.file_moves import remove_tree, unlink
from sitegen.publish.by_hand import is_changed
from sitegen.publish.prefetch import DirectoryPrefetch, scan_both
from sitegen.publish.publish_manifest import PublishManifest
from sitegen.publish.record import DIGEST_BYTES, RECORD, digest_of, record_text
from sitegen.publish.scan import FileStat, folders_above, stat_of

FILE_MODE, FOLDER_MODE = 0o644, 0o755
SECOND_NS = 1_000_000_000
NO_LINKS = (OSError, NotImplementedError, AttributeError)
"""File systems and systems without hard links say so in many ways. What is really wrong, the copy meets, too."""


class Foreign(NamedTuple):
    """Files of the output that no artifact accounts for, each list sorted. `carried` are the author's, and so are those
    `in_the_way` of a page. `assumed`: taken for sitegen's own though no record tells so."""

    carried: list[str]
    in_the_way: list[str]
    assumed: list[str]


class SourceLost(Exception):
    """A file that should be copied into the site is missing, or no longer what it was when it was kept."""


class StagedSite:
    """`output` stands; `staging_dir` becomes the next one. What does not change is one file with a name in both: a hard link.

    A file in `staging_dir` is trusted only where it is that very file of the output, so that whatever a killed rebuild left there
    is put right.
    """

    def __init__(
        self, output: Path, staging_dir: Path, recorded: Mapping[str, str] | None = None, scan: DirectoryPrefetch | None = None
    ) -> None:
        self.output, self.staging_dir, self.recorded = output, staging_dir, recorded or {}
        staging_dir.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
        staging_dir.chmod(FOLDER_MODE)
        seen = scan.seen(output, staging_dir) if scan else scan_both(output, staging_dir)
        self.earlier, self.here, self.folders = seen.output.files, seen.here, seen.folders
        self.placed: dict[str, str] = {}
        self.files: dict[str, FileStat] = {}
        self.needed: set[str] = set()
        self.changed = 0
        self.differing: set[str] = set()

    def place(self, artifact: Artifact) -> None:
        path = artifact.path if artifact.path in self.earlier else inside(artifact.path)
        if path in self.placed:
            raise ValueError(f"two artifacts for {path}")
        if self._same(artifact, path):
            self.placed[path] = artifact.digest or self._known_digest(path) or _digest(artifact.content)
            self._share(path)
            return
        self.changed += 1
        if path in self.earlier:
            self.differing.add(path)
        self._make_room(path)
        self.files[path] = _write(artifact, self.staging_dir / path)
        self.placed[path] = artifact.digest or _digest(artifact.content)

    def record(self) -> bytes:
        """The record of all that was placed joins the site, when everything has its place. Gives what stands in it."""
        text = record_text(self.placed)
        record = Artifact(RECORD, text)
        if self._same(record, RECORD):
            self._share(RECORD)
        else:
            self._make_room(RECORD)
            self.files[RECORD] = _write(record, self.staging_dir / RECORD)
        return text

    def sort_out(self, manifest: PublishManifest, may_be_ours: Callable[[str], bool]) -> Foreign:
        """Where the manifest is not whole, a file in a page's place is an earlier rebuild's if the folder was sitegen's, and so
        is one at an address of sitegen's."""
        foreign = Foreign([], [], [])
        accounted = (self.placed.keys() - self.differing) | manifest.certain() | {RECORD}
        for path in sorted(self.earlier.keys() - accounted):
            blocks = self._blocks(path)
            if manifest.whole or not manifest.ours:
                (foreign.in_the_way if blocks else foreign.carried).append(path)
            elif path not in self.differing:
                assumed = blocks or path in manifest.files or may_be_ours(path)
                (foreign.assumed if assumed else foreign.carried).append(path)
        return foreign

    def _blocks(self, path: str) -> bool:
        """Whether it lies where a page or a folder of the site has to be."""
        above = folders_above(path)
        return path in self.placed or path in self.needed or RECORD in above or any(folder in self.placed for folder in above)

    def carry(self, paths: list[str]) -> None:
        for path in paths:
            self._share(path)

    def changed_by_hand(self) -> list[str]:
        """Files of an earlier rebuild that would go now, and are no longer what it put there. Sorted."""
        going = ((path, mark) for path, mark in self.recorded.items() if path not in self.placed or path in self.differing)
        standing = ((path, mark, self.earlier.get(path)) for path, mark in going)
        return sorted(path for path, mark, stat in standing if stat and is_changed(self.output / path, stat, mark))

    def share_all(self) -> None:
        """The site as it stands."""
        for path in self.earlier:
            self._share(path)

    def clear(self) -> None:
        """What is not of the next site goes: called when everything has its place."""
        for path in self.here:
            unlink(f"{self.staging_dir}/{path}")
        for folder in sorted(self.folders - self.needed, reverse=True):
            (self.staging_dir / folder).rmdir()
        self.here, self.folders = {}, set(self.needed)

    def _known_digest(self, path: str) -> str:
        """As the record has it; '' where only an earlier version's mark is known."""
        mark = self.recorded.get(path, "")
        return mark if len(mark) == 2 * DIGEST_BYTES else ""

    def _same(self, artifact: Artifact, path: str) -> bool:
        """Whether the earlier site has this very file. A kept file carries its time along, so that it need not be read, but for
        disks that count whole seconds: there two pages made one after the other may have one time."""
        stat, content = self.earlier.get(path), artifact.content
        if stat is None:
            return False
        if isinstance(content, str):
            same = (stat.size, stat.mtime_ns) == (artifact.stamp or _stamp(content))
            return same and (stat.mtime_ns % SECOND_NS > 0 or filecmp.cmp(content, self.output / path, shallow=False))
        earlier = self.output / path
        return stat.size == len(content) and not earlier.is_symlink() and earlier.read_bytes() == content

    def _share(self, path: str) -> None:
        """One file, two names; a copy where the file system cannot."""
        there = self.files[path] = self.earlier[path]
        staged = self.here.get(path)
        if staged == there.inode:
            del self.here[path]
            self._need(path)
            return
        self._make_room(path)
        try:
            os.link(self.output / path, self.staging_dir / path, follow_symlinks=False)
        except NO_LINKS:
            shutil.copy2(self.output / path, self.staging_dir / path, follow_symlinks=False)
            self.files[path] = stat_of(self.staging_dir / path)

    def _make_room(self, path: str) -> None:
        """Remove whatever is at `path` in the staging directory and create its parent directories."""
        if self.here.pop(path, None) is not None:
            unlink(f"{self.staging_dir}/{path}")
        elif path in self.folders:
            self._remove_folder(path)
        for folder in reversed(folders_above(path)):
            if folder not in self.folders:
                if self.here.pop(folder, None) is not None:
                    unlink(self.staging_dir / folder)
                (self.staging_dir / folder).mkdir()
                (self.staging_dir / folder).chmod(FOLDER_MODE)
                self.folders.add(folder)
        self._need(path)

    def _remove_folder(self, path: str) -> None:
        remove_tree(self.staging_dir / path)
        below = f"{path}/"
        self.here = {name: stat for name, stat in self.here.items() if not name.startswith(below)}
        self.folders = {name for name in self.folders if name != path and not name.startswith(below)}

    def _need(self, path: str) -> None:
        slash = path.rfind("/")
        if slash > 0 and path[:slash] not in self.needed:
            self.needed.update(folders_above(path))


def inside(path: str) -> str:
    """The artifact's path, proved to stay inside the site."""
    parts = path.split("/")
    if not path or "\\" in path or "\0" in path or any(part in ("", ".", "..") for part in parts):
        raise ValueError(f"an artifact's path leaves the site: {path!r}")
    return path


def _stamp(source: str) -> tuple[int, int]:
    """Raises SourceLost where there is no such file."""
    try:
        stat = os.stat(source)  # noqa: PTH116 # a path as text
    except FileNotFoundError as gone:
        raise SourceLost(source) from gone
    return stat.st_size, stat.st_mtime_ns


def _write(artifact: Artifact, target: Path) -> FileStat:
    content = artifact.content
    if isinstance(content, str):
        if _stamp(content) != (artifact.stamp or _stamp(content)):
            raise SourceLost(content)
        shutil.copy2(content, target)
    else:
        target.write_bytes(content)
    target.chmod(FILE_MODE)
    return stat_of(target)


def _digest(content: bytes | str) -> str:
    """Of bytes, or of a kept file."""
    if isinstance(content, bytes):
        return digest_of(content)
    with Path(content).open("rb") as file:
        return hashlib.file_digest(file, partial(hashlib.blake2b, digest_size=DIGEST_BYTES)).hexdigest()
