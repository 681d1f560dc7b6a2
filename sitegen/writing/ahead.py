"""The walk through the output and the site that stands by, begun on another core while the rebuild computes and draws."""

import marshal
import os
import sys
import threading
import time
from pathlib import Path
from typing import NamedTuple

from sitegen.processes import close_inherited_files, end_with
from sitegen.writing.lay import Laid, Lay, inodes_in, lay_of

FRESH_S = 2.0
"""What was seen longer ago, counted from the end of the walk, is looked at again: somebody may have been at work in the output
since. A large site takes seconds to walk through, whoever does it."""


class Seen(NamedTuple):
    """The output, and the files (to their inodes) and folders of the site that stands by."""

    output: Lay
    here: dict[str, int]
    folders: set[str]


def walk(output: Path, beside: Path) -> Seen:
    return Seen(lay_of(output), *inodes_in(beside))


Told = tuple[dict[str, tuple[int, int, int]], set[str], dict[str, int], set[str], float]


class Walk:
    """A walk by a child of this process: a copy of it that only looks, tells what it saw, and is gone. There is none where
    the system copies no processes, and none beside threads, which a copy would lack, or where `copied` is False."""

    def __init__(self, output: Path, beside: Path, copied: bool = True) -> None:
        self.output, self.beside = output, beside
        self.numbers = _numbers(output, beside)
        self.child, self.pipe = 0, -1
        if copied and sys.platform == "linux" and hasattr(os, "fork") and threading.active_count() == 1:
            self._begin()

    def _begin(self) -> None:
        self.pipe, told = os.pipe()
        parent = os.getpid()
        self.child = os.fork()
        if self.child == 0:
            try:
                close_inherited_files(told)  # the other end too: else it would wait for ever where nobody asks any more
                end_with(parent)
                seen = walk(self.output, self.beside)
                ended = time.monotonic()
                files = {path: tuple(laid) for path, laid in seen.output.files.items()}
                with os.fdopen(told, "wb") as stream:
                    stream.write(marshal.dumps((files, seen.output.folders, seen.here, seen.folders, ended)))
            finally:
                os._exit(0)
        os.close(told)

    def seen(self, output: Path, beside: Path) -> Seen:
        """What the child saw where it is of these folders and fresh; else what is seen now."""
        told = self._told()
        same = (output, beside) == (self.output, self.beside) and _numbers(output, beside) == self.numbers
        if told is None or not same:
            return walk(output, beside)
        files, folders, here, inside, ended = told
        if time.monotonic() - ended >= FRESH_S:
            return walk(output, beside)
        return Seen(Lay({path: Laid(*laid) for path, laid in files.items()}, folders), here, inside)

    def _told(self) -> Told | None:
        """None where there was no child, or it did not come to its end."""
        if not self.child:
            return None
        with os.fdopen(self.pipe, "rb") as stream:
            body = stream.read()
        os.waitpid(self.child, 0)
        self.child = 0
        try:
            found: Told = marshal.loads(body)
        except (EOFError, ValueError, TypeError):
            return None
        return found

    def close(self) -> None:
        """Where nobody asked what it saw."""
        self._told()


def _numbers(*folders: Path) -> list[int]:
    return [folder.stat().st_ino if folder.is_dir() else -1 for folder in folders]
