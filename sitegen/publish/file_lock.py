"""Two rebuilds of one site follow each other."""

import errno
import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from filelock import lock_descriptor

POLL_S = 0.05
NOT_WRITABLE = (errno.EROFS, errno.EACCES, errno.EPERM)


@contextmanager
def file_lock(lock: Path, on_wait: Callable[[], None] | None = None) -> Iterator[None]:
    """Waits until nobody else holds the lock, and calls `on_wait` before it waits.

    The system's own lock (flock, LockFileEx): it ends with the process that holds it, however that ends, so that the file may
    stay. Where a disk cannot be written or knows no locks, nobody is waited for.
    """
    held = _opened(lock)
    try:
        if held is not None:
            _hold(held, on_wait)
        yield
    finally:
        if held is not None:
            os.close(held)


def _opened(lock: Path) -> int | None:
    """None where nobody can write there."""
    try:
        return os.open(lock, os.O_CREAT | os.O_RDWR, 0o644)
    except OSError as refused:
        if refused.errno not in NOT_WRITABLE:
            raise
        return None


def _hold(held: int, on_wait: Callable[[], None] | None) -> None:
    if _is_ours(held):
        return
    if on_wait is not None:
        on_wait()
    while not _is_ours(held):
        time.sleep(POLL_S)


def _is_ours(held: int) -> bool:
    """True also where the file system knows no locks."""
    try:
        return lock_descriptor(held, blocking=False)
    except OSError:
        return True
