"""Two rebuilds of one site follow each other."""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows: two rebuilds at once are then the author's own care
    fcntl = None  # type: ignore[assignment]


@contextmanager
def one_at_a_time(lock: Path, wait_told: Callable[[], None] | None = None) -> Iterator[None]:
    """Waits until nobody else holds the lock, and calls `wait_told` before it waits. The lock dies with its process."""
    held = os.open(lock, os.O_CREAT | os.O_RDWR, 0o644)
    try:
        if fcntl is not None:
            _hold(held, wait_told)
        yield
    finally:
        os.close(held)


def _hold(held: int, wait_told: Callable[[], None] | None) -> None:
    try:
        fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        if wait_told is not None:
            wait_told()
        fcntl.flock(held, fcntl.LOCK_EX)
