"""The background scan of the output and of the site that stands by, done on another core while the graph is run."""

import marshal
import os
import sys
import threading
import time
from pathlib import Path
from typing import NamedTuple

from sitegen.processes import close_inherited_files, end_with
from sitegen.publish.scan import FileStat, Tree, inodes_in, scan_tree

FRESH_S = 2.0
"""A result is used only for so long, counted from the end of the scan: somebody may be at work in the output. A large site
takes seconds to scan, whoever does it."""


class BothTrees(NamedTuple):
    """The output, and the files (to their inodes) and folders of the site that stands by."""

    output: Tree
    here: dict[str, int]
    folders: set[str]


def scan_both(output: Path, staging_dir: Path) -> BothTrees:
    return BothTrees(scan_tree(output), *inodes_in(staging_dir))


Scanned = tuple[dict[str, tuple[int, int, int]], set[str], dict[str, int], set[str], float]


class DirectoryPrefetch:
    """A scan by a forked child of this process, which ends when it has told what it saw. There is no child where the system has
    no fork, beside threads, which a child would lack, or where `forked` is False: then the folders are scanned when asked for."""

    def __init__(self, output: Path, staging_dir: Path, forked: bool = True) -> None:
        self.output, self.staging_dir = output, staging_dir
        self.numbers = _numbers(output, staging_dir)
        self.child, self.pipe = 0, -1
        if forked and sys.platform == "linux" and hasattr(os, "fork") and threading.active_count() == 1:
            self._begin()

    def _begin(self) -> None:
        self.pipe, writing_end = os.pipe()
        parent = os.getpid()
        self.child = os.fork()
        if self.child == 0:
            try:
                close_inherited_files(writing_end)  # the other end too: else it would wait for ever where nobody asks any more
                end_with(parent)
                seen = scan_both(self.output, self.staging_dir)
                ended = time.monotonic()
                files = {path: tuple(stat) for path, stat in seen.output.files.items()}
                with os.fdopen(writing_end, "wb") as stream:
                    stream.write(marshal.dumps((files, seen.output.folders, seen.here, seen.folders, ended)))
            finally:
                os._exit(0)
        os.close(writing_end)

    def seen(self, output: Path, staging_dir: Path) -> BothTrees:
        """What the child saw where it is of these folders and fresh; else what is seen now."""
        scanned = self._scanned()
        same = (output, staging_dir) == (self.output, self.staging_dir) and _numbers(output, staging_dir) == self.numbers
        if scanned is None or not same:
            return scan_both(output, staging_dir)
        files, folders, here, inside, ended = scanned
        if time.monotonic() - ended >= FRESH_S:
            return scan_both(output, staging_dir)
        return BothTrees(Tree({path: FileStat(*stat) for path, stat in files.items()}, folders), here, inside)

    def _scanned(self) -> Scanned | None:
        """None where there was no child, or it did not come to its end."""
        if not self.child:
            return None
        with os.fdopen(self.pipe, "rb") as stream:
            body = stream.read()
        os.waitpid(self.child, 0)
        self.child = 0
        try:
            scanned: Scanned = marshal.loads(body)
        except (EOFError, ValueError, TypeError):
            return None
        return scanned

    def close(self) -> None:
        """Where nobody asked what it saw."""
        self._scanned()


def _numbers(*folders: Path) -> list[int]:
    return [folder.stat().st_ino if folder.is_dir() else -1 for folder in folders]
