"""Two rebuilds of one output follow each other."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows: two rebuilds at once are then the author's own care
    fcntl = None  # type: ignore[assignment]


@contextmanager
def only_rebuild(output: Path) -> Iterator[None]:
    """Waits until no other rebuild is putting a site into `output`. The lock dies with its process."""
    lock = os.open(output.with_name(f".{output.name}.lock"), os.O_CREAT | os.O_RDWR, 0o644)
    try:
        if fcntl is not None:
            fcntl.flock(lock, fcntl.LOCK_EX)
        yield
    finally:
        os.close(lock)
