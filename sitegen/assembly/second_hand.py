"""A second process for a rebuild of little: it loads what reading and drawing need while this one looks up what is known.

It is a copy of this process, made while few modules are loaded. It takes over every task that is too small for a crew of
processes; where there is none, or it is gone, the tasks are done in this one.
"""

import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from typing import Any

from sitegen.late import Late
from sitegen.processes import close_inherited_files, cores, end_with

multiprocessing = Late("multiprocessing")

Task = Callable[..., list[Any]]
Loading = Callable[[list[Any]], Iterator[None]]
"""Given the bench, once it is known: loads a part at every step, so that between two a task may be done."""


class SecondHand:
    """None is started beside threads, which a copy would lack, on one core, and where the system copies no processes."""

    def __init__(self, loading: Loading) -> None:
        self.process: Any = None
        self.met: Any = None
        self.asked, self.heard = 0, 0
        self.told: dict[int, tuple[bool, Any]] = {}
        if sys.platform == "linux" and hasattr(os, "fork") and threading.active_count() == 1 and cores() > 1:
            copying = multiprocessing.get_context("fork")
            self.line, other = copying.Pipe()
            self.process = copying.Process(target=_serve, args=(other, loading, os.getpid()), daemon=True)
            with deaf_to_interrupts():
                self.process.start()
            other.close()

    def ask(self, task: Task, bench: Any, chunk: Sequence[Any]) -> int | None:
        """The number of a task that is begun as soon as those before it are done; None where nobody is there."""
        if self.process is None:
            return None
        try:
            self.line.send((task, None if bench is self.met else bench, chunk))
        except OSError:
            self.close()
            return None
        self.met = bench
        self.asked += 1
        return self.asked

    def answer(self, number: int) -> list[Any] | None:
        """The task's results, once; None where nobody is there any more. Raises what the task raised."""
        try:
            while self.process is not None and self.heard < number:
                told = self.line.recv()
                self.heard += 1
                self.told[self.heard] = told
        except (OSError, EOFError):
            self.close()
        done, found = self.told.pop(number, (True, None))
        if not done:
            raise found
        results: list[Any] | None = found
        return results

    def close(self) -> None:
        """At once: what it was in the midst of, nobody waits for."""
        if self.process is not None:
            self.line.close()
            self.process.kill()
            self.process.join()
            self.process = None


def _serve(line: Any, loading: Loading, parent: int) -> None:
    """Tasks until nobody asks any more; what is still to be loaded in between."""
    close_inherited_files(line.fileno())
    end_with(parent)
    met: list[Any] = []
    still = loading(met)
    with suppress(EOFError, ConnectionError):
        while True:
            while not line.poll() and next(still, still) is not still:
                pass
            task, bench, chunk = line.recv()
            met[:] = [bench] if bench is not None else met
            line.send(_done(task, met[0], chunk))


def _done(task: Task, bench: Any, chunk: Sequence[Any]) -> tuple[bool, Any]:
    """Results, or what was raised."""
    try:
        return True, task(bench, chunk)
    except Exception as trouble:
        return False, trouble


@contextmanager
def deaf_to_interrupts() -> Iterator[None]:
    """Ctrl-C goes to every process of a terminal; those started here leave it to the one that started them."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
