"""Two folders change places in one step, where the operating system can."""

import ctypes
import os
import sys
from pathlib import Path

AT_FDCWD = -100
RENAME_EXCHANGE = 2  # linux/fs.h
RENAME_SWAP = 2  # sys/stdio.h of macOS


def change_places(beside: Path, output: Path) -> None:
    """`output` becomes what `beside` was, and the other way round. There is no moment without a whole site on Linux and macOS;
    elsewhere renames follow each other, and `publish.recover` mends a death between them."""
    if not output.exists():
        beside.rename(output)
        return
    if not _exchanged(beside, output):
        old = output.with_name(f".{output.name}.old")
        output.rename(old)
        beside.rename(output)
        old.rename(beside)


def _exchanged(one: Path, other: Path) -> bool:
    """Whether the kernel swapped the two names."""
    if sys.platform not in ("linux", "darwin"):
        return False
    library = ctypes.CDLL(None, use_errno=True)
    first, second = os.fsencode(one), os.fsencode(other)
    try:
        if sys.platform == "linux":
            answer = library.renameat2(AT_FDCWD, first, AT_FDCWD, second, RENAME_EXCHANGE)
        else:
            answer = library.renamex_np(first, second, RENAME_SWAP)
    except AttributeError:  # a C library from before the call
        return False
    return bool(answer == 0)
