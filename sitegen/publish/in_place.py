"""A site published into a folder that cannot change places with another, as it is the root of a file system of its own.

A container's volume, say, or a mounted share. Every changed file is written beside the site, inside the same file system, before
the first of them takes its place, so that a full disk leaves the earlier site whole. Then they take their places one by one: for
that moment visitors see old and new pages together. Killed in it, the next rebuild brings the rest.
"""

import contextlib
import os
import re
from collections.abc import Mapping
from pathlib import Path

from sitegen.file_moves import move, remove_tree, unlink
from sitegen.publish.prefetch import DirectoryPrefetch
from sitegen.publish.record import RECORD, record_text
from sitegen.publish.scan import folders_above, inodes_in, stat_of
from sitegen.publish.staging import FILE_MODE, StagedSite

STAGE = ".sitegen-next"
"""Inside the output: only there can a file take its place in one step."""
MOUNTS = Path("/proc/self/mountinfo")


def is_root_of_disk(folder: Path) -> bool:
    """Whether a file system is mounted there; Linux tells also of folders mounted from the same disk (proc(5), mountinfo)."""
    if os.path.ismount(folder):
        return True
    try:
        lines = MOUNTS.read_text("utf-8", "surrogateescape").splitlines()
    except OSError:
        return False
    return os.path.realpath(folder) in {_unescaped(line.split(" ")[4]) for line in lines}


def _unescaped(path: str) -> str:
    """A blank stands there as \\040, by its byte."""
    return re.sub(r"\\([0-7]{3})", lambda octal: chr(int(octal[1], 8)), path)


class SiteInPlace(StagedSite):
    """Only what changes is put together beside the site; what stays is not touched."""

    def __init__(self, output: Path, recorded: Mapping[str, str] | None, scan: DirectoryPrefetch | None) -> None:
        super().__init__(output, output / STAGE, recorded, scan)
        below = f"{STAGE}/"
        self.earlier = {path: stat for path, stat in self.earlier.items() if not path.startswith(below)}
        self.here, self.folders = {}, set()

    def _share(self, path: str) -> None:
        self.files[path] = self.earlier[path]
        self._need(path)

    def clear(self) -> None:
        """Nothing lies there but what changes."""

    def take_places(self) -> None:
        """Pages that lead to others late, the record last, as it tells of the new site alone; then what is no more goes."""
        if (self.staging_dir / RECORD).is_file():
            self._record_both()
        staged = inodes_in(self.staging_dir)[0]
        for path in sorted(staged, key=lambda path: (path == RECORD, path.endswith(".html"), path)):
            self._take_place(path)
        for path in sorted(self.earlier.keys() - self.files.keys()):
            with contextlib.suppress(FileNotFoundError):
                unlink(self.output / path)
        emptied = {above for path in self.earlier for above in folders_above(path)} - self.needed
        for folder in sorted(emptied, reverse=True):
            with contextlib.suppress(OSError):  # what else lies in it stays
                (self.output / folder).rmdir()

    def _record_both(self) -> None:
        """Killed in the midst, the next rebuild knows the files of either site for its own; none of them was changed by hand."""
        working = self.staging_dir / f"{RECORD}.both"
        working.write_bytes(record_text({**self.recorded, **self.placed, **dict.fromkeys(self.differing, "")}))
        working.chmod(FILE_MODE)
        move(working, self.output / RECORD)

    def _take_place(self, path: str) -> None:
        target = self.output / path
        for folder in reversed(folders_above(path)):
            if (self.output / folder).is_symlink() or (self.output / folder).is_file():
                unlink(self.output / folder)
        target.parent.mkdir(parents=True, exist_ok=True)
        if target.is_dir() and not target.is_symlink():
            remove_tree(target)
        move(self.staging_dir / path, target)
        self.files[path] = stat_of(target)
