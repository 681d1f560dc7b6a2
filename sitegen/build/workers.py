"""Workers: little work is done in this process or the prewarmed one, much of it on every core."""

import gc
import os
import shutil
import signal
import sys
import threading
import time
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from sitegen.build.context import BuildContext
from sitegen.build.prewarmed import PrewarmedWorker, block_sigint
from sitegen.build.resolve import resolve
from sitegen.lazy_module import LazyModule
from sitegen.processes import cores, mark_as_parent

ProcessPoolExecutor = LazyModule("concurrent.futures", "ProcessPoolExecutor")
futures = LazyModule("concurrent.futures.process")
multiprocessing = LazyModule("multiprocessing")
finalizers = LazyModule("multiprocessing.util")

Jobs = Sequence[Any]
WORTH_PROCESSES_S = 3.0
"""A process of its own must first import everything, which takes a second."""
CHUNKS_A_PROCESS = 8
CHUNK_S = 6.0
"""At the end one process has nothing left to do for as long as the other's last chunk takes."""


class WorkerDied(Exception):
    """A process ended in the midst of `item` (an entry's file, an evening, a list), each time it was tried; `file` inside the
    diary is what it had open, '' where nobody knows, `ended` how: a signal's name or an exit status."""

    def __init__(self, item: str, file: Path | None, ended: str) -> None:
        super().__init__(f"{ended} in {item}")
        self.item, self.file, self.ended = item, file, ended


class WorkerPool:
    """Does work on chunks of jobs, results in the order of the jobs. Processes are started when first worth it.

    Work is a name, 'module:function'; the function takes the context and some jobs, and gives as many results.
    """

    def __init__(self, context: BuildContext, processes: int | None, prewarmed: PrewarmedWorker | None = None) -> None:
        """`prewarmed` takes over what is not worth a pool, until there is one."""
        self.context, self.prewarmed = context, prewarmed
        self.processes = processes or cores()
        self.pool: Any = None

    def run(
        self, work: str, jobs: Jobs, seconds_each: float, most: int = 64, here: bool = False, names: Sequence[str] = ()
    ) -> Iterator[Any]:
        """`seconds_each`: about how long a job takes; `most` jobs in one chunk; `here`: a little of it is not handed over;
        `names` of the jobs, for a problem line. Raises WorkerDied."""
        if self.processes == 1 or len(jobs) < 2 or len(jobs) * seconds_each < WORTH_PROCESSES_S:
            for chunk in _chunks(jobs, most):
                yield from do_work(work, self.context, chunk) if here else self._small(work, chunk)
            return
        size = max(1, min(most, len(jobs) // (CHUNKS_A_PROCESS * self.processes), int(CHUNK_S / seconds_each)))
        pool = self._pool()
        with block_sigint():
            waiting = pool.map(_work, [work] * -(-len(jobs) // size), _chunks(jobs, size))
        done = 0
        try:
            for results in waiting:
                done += len(results)
                yield from results
        except futures.BrokenProcessPool:
            yield from self._one_by_one(work, jobs[done:], names[done:])

    def _one_by_one(self, work: str, jobs: Jobs, names: Sequence[str]) -> Iterator[Any]:
        """After a worker died: by one process, so that the job is known in which the next one dies, and so that it
        has all the memory there is."""
        self.close(at_once=True)
        self.processes = 1
        pool = self._pool()
        worker = None
        for number, job in enumerate(jobs):
            with block_sigint():
                waiting = pool.submit(_work, work, [job])
            worker = worker or max(multiprocessing.active_children(), key=lambda process: process.pid)
            try:
                yield from waiting.result()
            except futures.BrokenProcessPool as broken:
                item, file = names[number] if names else "", _last_file(self.context.root, worker.pid)
                raise WorkerDied(item, file, _end_of(worker)) from broken

    def _small(self, work: str, chunk: Jobs) -> list[Any]:
        results = self.prewarmed.do(work, self.context, chunk) if self.prewarmed else None
        return do_work(work, self.context, chunk) if results is None else results

    def _pool(self) -> Any:
        if self.pool is None:
            if self.prewarmed:
                self.prewarmed.close()
            mark_as_parent()
            given = (self.context, gc.get_threshold())
            self.pool = ProcessPoolExecutor(self.processes, multiprocessing.get_context("spawn"), _start, given)
        return self.pool

    def __enter__(self) -> "WorkerPool":
        return self

    def __exit__(self, *wrong: object) -> None:
        """Where the work ends early nobody waits for what is in hand: it is made again the next time."""
        self.close(at_once=any(wrong))

    def close(self, at_once: bool) -> None:
        if self.pool is None:
            return
        if at_once:
            end_processes()
        self.pool.shutdown(cancel_futures=True)
        self.pool = None
        if self.context is not None:
            shutil.rmtree(self.context.root / AT_WORK, ignore_errors=True)


def end_processes() -> None:
    """Those that this process has started, at once. One that waits to hand over its results would wait for ever."""
    for process in multiprocessing.active_children():
        process.kill()


def release_semaphores() -> None:
    """Called before this process ends without its own clean-up: what watches over the semaphores of a pool would warn of them."""
    if "multiprocessing.synchronize" in sys.modules:
        finalizers._run_finalizers(0)


def _chunks(jobs: Jobs, size: int) -> Iterable[Jobs]:
    return (jobs[first : first + size] for first in range(0, len(jobs), size))


_context: list[BuildContext] = []
END_KNOWN_TRIES, END_KNOWN_S = 100, 0.02
AT_WORK = "at-work"
"""Below the root of the store: each worker of a pool writes down which picture or frame it opens, under its number."""


def working_on(file: Path) -> None:
    """Called before a library written in C gets the file: where that ends the process, nobody else can tell which it was."""
    if _context:
        place = _context[0].root / AT_WORK / str(os.getpid())
        place.parent.mkdir(exist_ok=True)
        place.write_bytes(os.fsencode(file))


def _last_file(root: Path, process: int) -> Path | None:
    try:
        return Path(os.fsdecode((root / AT_WORK / str(process)).read_bytes()))
    except OSError:
        return None


def _end_of(process: Any) -> str:
    """'SIGKILL', or 'exit status 3'."""
    process.join()
    for _ in range(END_KNOWN_TRIES):  # the pool's own thread may be waiting for it, and is told the end in this one's place
        if process.exitcode is not None:
            break
        time.sleep(END_KNOWN_S)
    number = process.exitcode or 0
    try:
        return signal.Signals(-number).name
    except ValueError:
        return f"exit status {number}"


def _start(context: BuildContext, seldom: tuple[int, int, int]) -> None:
    """A worker collects garbage as seldom as the one that started it, and does not outlive it."""
    threading.Thread(target=_end_with_parent, daemon=True).start()
    gc.set_threshold(*seldom)
    _context.append(context)


def _end_with_parent() -> None:
    """One that is killed closes nothing, and the worker would wait for its next task for ever."""
    multiprocessing.parent_process().join()
    os._exit(1)


def _work(work: str, chunk: Jobs) -> list[Any]:
    return do_work(work, _context[0], chunk)


def do_work(work: str, context: BuildContext, chunk: Jobs) -> list[Any]:
    results: list[Any] = resolve(work)(context, chunk)
    return results
