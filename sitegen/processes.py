"""What a process that was started owes the one that started it: to hold nothing of its, and not to outlive it."""

import os
import sys
import threading
import time

LAST_STANDARD_FILE = 2
LOOK_EVERY_S = 0.25
PARENT = "SITEGEN_PARENT"
"""In the environment of a process that is spawned, so that it knows whose it is before it has loaded anything."""
MOST_FILES = 65_536


def cores() -> int:
    """Those that this process may use, where the system tells."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def close_inherited_files(*needed: int) -> None:
    """A copied process holds all that the first one has open, above all the diary's lock, which would outlive its holder."""
    start = LAST_STANDARD_FILE + 1
    for file in (*sorted(needed), _most_files()):
        os.closerange(start, file)
        start = file + 1


def _most_files() -> int:
    try:
        return os.sysconf("SC_OPEN_MAX")
    except (AttributeError, ValueError, OSError):
        return MOST_FILES


def end_with(parent: int) -> None:
    """This process ends a quarter of a second after the one of that number has, whatever it is doing. For systems that hand
    it to another parent then; Windows does not."""
    threading.Thread(target=_wait_for_the_end_of, args=(parent,), daemon=True).start()


def mark_as_parent() -> None:
    """Called before others are spawned."""
    os.environ[PARENT] = str(os.getpid())


def end_with_who_spawned_this() -> None:
    """Called first of all, in every process: loading takes a spawned one longer than it may outlive its parent."""
    if PARENT in os.environ and "--multiprocessing-fork" in sys.orig_argv and sys.platform != "win32":
        end_with(int(os.environ[PARENT]))


def _wait_for_the_end_of(parent: int) -> None:
    while os.getppid() == parent:
        time.sleep(LOOK_EVERY_S)
    os._exit(1)
