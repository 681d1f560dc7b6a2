"""A file or a folder is written whole, takes another name, or goes; on Windows also where a scanner holds it open for a moment.

Windows refuses to rename or to delete what any program has open, and to delete what is marked read-only. Virus scanners and
indexers open every new file for some milliseconds.
"""

import os
import shutil
import stat
import time
from collections.abc import Callable
from pathlib import Path

HELD_OPEN = (5, 32, 33)
"""ERROR_ACCESS_DENIED, ERROR_SHARING_VIOLATION, ERROR_LOCK_VIOLATION of winerror.h. Other systems give no such number, so that a
refusal is told at once there."""
WAITS_S = (0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 0.64)


def move(old: str | Path, new: str | Path) -> None:
    """In one step, over a file of that name. Raises OSError where the system refuses for two seconds."""
    _patiently(lambda: os.replace(old, new))  # noqa: PTH105 # paths as text, too


def write_whole(path: Path, content: bytes) -> None:
    """The whole file or none of it, whenever the power fails. Raises OSError, and then leaves nothing behind."""
    path.parent.mkdir(parents=True, exist_ok=True)
    working = path.with_name(f"{path.name}.{os.getpid()}.part")
    try:
        working.write_bytes(content)
        move(working, path)
    except OSError:
        working.unlink(missing_ok=True)
        raise


def unlink(path: str | Path) -> None:
    """A file or a link, read-only or not. Raises OSError where the system refuses for two seconds."""
    _patiently(lambda: _unlink(path))


def remove_tree(path: Path) -> None:
    """A folder with all in it. Raises OSError where the system refuses for two seconds."""
    _patiently(lambda: _remove_tree(path))


def _remove_tree(path: Path) -> None:
    try:
        shutil.rmtree(path)
    except PermissionError as refused:
        if is_held(refused):
            for file in path.rglob("*"):
                if not file.is_symlink() and file.is_file():
                    file.chmod(stat.S_IWRITE)
        raise


def _unlink(path: str | Path) -> None:
    try:
        os.unlink(path)  # noqa: PTH108 # thousands of them, as text
    except PermissionError as refused:
        if not is_held(refused) or os.lstat(path).st_mode & stat.S_IWRITE:
            raise
        os.chmod(path, stat.S_IWRITE)  # noqa: PTH101 # as text
        os.unlink(path)  # noqa: PTH108 # as text


def is_held(refused: OSError) -> bool:
    """Whether Windows refused because somebody else has the file open, or it is marked read-only."""
    return getattr(refused, "winerror", None) in HELD_OPEN


def _patiently(step: Callable[[], None]) -> None:
    for wait_s in WAITS_S:
        try:
            step()
        except PermissionError as refused:
            if not is_held(refused):
                raise
            time.sleep(wait_s)
        else:
            return
    step()
