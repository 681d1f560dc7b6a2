"""Processes that a process started, as Linux tells of them."""

import time
from pathlib import Path

PATIENCE_S = 30.0


def children_of(pid: int) -> set[int]:
    """Those at work."""
    return {int(place.name) for place in Path("/proc").glob("[0-9]*") if (told := _told(place)) and told[1] == pid}


def descendants_of(pid: int) -> set[int]:
    """Those, and whatever they started."""
    children = children_of(pid)
    return children.union(*map(descendants_of, children))


def at_work(pids: set[int]) -> set[int]:
    """Those of them that are; one that has ended and waits for its parent to notice is not."""
    return {pid for pid in pids if _told(Path(f"/proc/{pid}"))}


def assert_all_end(pids: set[int]) -> None:
    """Within half a minute."""
    until = time.monotonic() + PATIENCE_S
    while (left := at_work(pids)) and time.monotonic() < until:
        time.sleep(0.05)
    assert left == set()


def _told(place: Path) -> tuple[str, int] | None:
    """State and parent; None for one that is gone or has ended."""
    try:
        state, parent = (place / "stat").read_text("ascii", "replace").rpartition(")")[2].split()[:2]
    except OSError:
        return None
    return None if state in "ZX" else (state, int(parent))
