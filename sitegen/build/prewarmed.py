"""The prewarmed worker of a small rebuild: it loads what reading and drawing need while this process looks up what is up to date.

It is a copy of this process, made while few modules are loaded. It takes over all work that is too little for a pool; where there
is none, or it is gone, the work is done in this process.
"""

import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from typing import Any

from sitegen.build.resolve import resolve
from sitegen.lazy_module import LazyModule
from sitegen.processes import close_inherited_files, cores, end_with

multiprocessing = LazyModule("multiprocessing")

Loading = Callable[[list[Any]], Iterator[None]]
"""Given the context, once it is known: loads a part at every step, so that between two of them work may be done."""


class PrewarmedWorker:
    """Only on Linux, with two or more cores and no other thread running: fork() copies only the calling thread."""

    def __init__(self, loading: Loading) -> None:
        self.process: Any = None
        self.sent: Any = None
        if sys.platform == "linux" and hasattr(os, "fork") and threading.active_count() == 1 and cores() > 1:
            copying = multiprocessing.get_context("fork")
            self.pipe, other = copying.Pipe()
            self.process = copying.Process(target=_serve, args=(other, loading, os.getpid()), daemon=True)
            with block_sigint():
                self.process.start()
            other.close()

    def do(self, work: str, context: Any, chunk: Sequence[Any]) -> list[Any] | None:
        """The results of the work; None where nobody is there, or any more. Raises what the work raised."""
        if self.process is None:
            return None
        try:
            self.pipe.send((work, None if context is self.sent else context, chunk))
            self.sent = context
            is_done, answer = self.pipe.recv()
        except (OSError, EOFError):
            self.close()
            return None
        if not is_done:
            raise answer
        results: list[Any] = answer
        return results

    def close(self) -> None:
        """At once: what it is in the midst of, nobody waits for."""
        if self.process is not None:
            self.pipe.close()
            self.process.kill()
            self.process.join()
            self.process = None


def _serve(pipe: Any, loading: Loading, parent: int) -> None:
    """Does work until nobody asks any more; loads in between."""
    close_inherited_files(pipe.fileno())
    end_with(parent)
    contexts: list[Any] = []
    still_to_load = loading(contexts)
    with suppress(EOFError, ConnectionError):
        while True:
            while not pipe.poll() and next(still_to_load, still_to_load) is not still_to_load:
                pass
            work, context, chunk = pipe.recv()
            contexts[:] = [context] if context is not None else contexts
            pipe.send(_done(work, contexts[0], chunk))


def _done(work: str, context: Any, chunk: Sequence[Any]) -> tuple[bool, Any]:
    """Results, or what was raised."""
    try:
        return True, resolve(work)(context, chunk)
    except Exception as trouble:
        return False, trouble


@contextmanager
def block_sigint() -> Iterator[None]:
    """Ctrl-C goes to every process of a terminal; those started here leave it to the one that started them."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
