"""Two folders change places in one step, where the operating system can."""

import ctypes
import os
import shutil
import sys
from pathlib import Path

from sitegen.file_moves import move

AT_FDCWD = -100
RENAME_EXCHANGE = 2  # linux/fs.h
RENAME_SWAP = 2  # sys/stdio.h of macOS


def atomic_swap(staging_dir: Path, output: Path) -> None:
    """`output` becomes what `staging_dir` was, and the other way round. There is no moment without a whole site on Linux and
    macOS; elsewhere renames follow each other, and `publish.recover` mends a death between them."""
    if not output.exists():
        move(staging_dir, output)
    elif not _exchanged(staging_dir, output):
        _by_renames(staging_dir, output, output.with_name(f".{output.name}.old"))


def _by_renames(staging_dir: Path, output: Path, old: Path) -> None:
    """Where the second is refused, the first is taken back."""
    move(output, old)
    try:
        move(staging_dir, output)
    except BaseException:
        move(old, output)
        raise
    try:
        move(old, staging_dir)
    except OSError:  # the new site stands; the old one is only in the way
        shutil.rmtree(old, ignore_errors=True)


def _exchanged(staging_dir: Path, output: Path) -> bool:
    """Whether the kernel swapped the two names."""
    if sys.platform not in ("linux", "darwin"):
        return False
    library = ctypes.CDLL(None, use_errno=True)
    first, second = os.fsencode(staging_dir), os.fsencode(output)
    try:
        if sys.platform == "linux":
            answer = library.renameat2(AT_FDCWD, first, AT_FDCWD, second, RENAME_EXCHANGE)
        else:
            answer = library.renamex_np(first, second, RENAME_SWAP)
    except AttributeError:  # a C library from before the call
        return False
    return bool(answer == 0)
