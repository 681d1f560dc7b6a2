"""Work shared out: little of it in this process, much of it on every core."""

import gc
import os
import shutil
import signal
import sys
import threading
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any, TypeVar

from sitegen.assembly.bench import Bench
from sitegen.assembly.second_hand import SecondHand, deaf_to_interrupts
from sitegen.late import Late
from sitegen.processes import cores, mark_as_parent

ProcessPoolExecutor = Late("concurrent.futures", "ProcessPoolExecutor")
futures = Late("concurrent.futures.process")
multiprocessing = Late("multiprocessing")
finalizers = Late("multiprocessing.util")

Job = TypeVar("Job")
Result = TypeVar("Result")
Task = Callable[[Bench, Sequence[Job]], list[Result]]

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


class Crew:
    """Runs tasks on chunks of jobs, results in the order of the jobs. Processes are started when first worth it."""

    def __init__(self, bench: Bench, processes: int | None, second: SecondHand | None = None) -> None:
        """`second` takes over what is not worth a crew, until there is one."""
        self.bench, self.second = bench, second
        self.processes = processes or cores()
        self.pool: Any = None

    def run(
        self, task: Task[Job, Result], jobs: Sequence[Job], seconds_each: float, most: int = 64, here: bool = False,
        names: Sequence[str] = (),
    ) -> Iterator[Result]:  # fmt: skip
        """`seconds_each`: about how long a job takes; `most` jobs in one chunk; `here`: a little of it is not handed over;
        `names` of the jobs, for a problem line. Raises WorkerDied."""
        if self.processes == 1 or len(jobs) < 2 or len(jobs) * seconds_each < WORTH_PROCESSES_S:
            for chunk in _chunks(jobs, most):
                yield from task(self.bench, chunk) if here else self._small(task, chunk)
            return
        size = max(1, min(most, len(jobs) // (CHUNKS_A_PROCESS * self.processes), int(CHUNK_S / seconds_each)))
        pool = self._pool()
        with deaf_to_interrupts():
            waiting = pool.map(_work, [task] * -(-len(jobs) // size), _chunks(jobs, size))
        done = 0
        try:
            for results in waiting:
                done += len(results)
                yield from results
        except futures.BrokenProcessPool:
            yield from self._one_by_one(task, jobs[done:], names[done:])

    def _one_by_one(self, task: Task[Job, Result], jobs: Sequence[Job], names: Sequence[str]) -> Iterator[Result]:
        """After a process of the crew died: by one process, so that the job is known in which the next one dies, and so that it
        has all the memory there is."""
        self.close(at_once=True)
        self.processes = 1
        pool = self._pool()
        worker = None
        for number, job in enumerate(jobs):
            with deaf_to_interrupts():
                waiting = pool.submit(_work, task, [job])
            worker = worker or max(multiprocessing.active_children(), key=lambda process: process.pid)
            try:
                yield from waiting.result()
            except futures.BrokenProcessPool as broken:
                raise WorkerDied(names[number] if names else "", _last_file(self.bench, worker.pid), _end_of(worker)) from broken

    def _small(self, task: Task[Job, Result], chunk: Sequence[Job]) -> list[Result]:
        number = self.second.ask(task, self.bench, chunk) if self.second else None
        return self._answer(task, chunk, number)

    def _answer(self, task: Task[Job, Result], chunk: Sequence[Job], number: int | None) -> list[Result]:
        found = self.second.answer(number) if self.second and number is not None else None
        return task(self.bench, chunk) if found is None else found

    def begun(self, task: Task[Job, Result], job: Job) -> Callable[[], Result] | None:
        """A job with a small result that will be asked for later, begun while this process goes on; gives what waits for it. None
        where nobody else is there to do it."""
        number = self.second.ask(task, self.bench, [job]) if self.second else None
        return None if number is None else lambda: self._answer(task, [job], number)[0]

    def _pool(self) -> Any:
        if self.pool is None:
            if self.second:
                self.second.close()
            mark_as_parent()
            given = (self.bench, gc.get_threshold())
            self.pool = ProcessPoolExecutor(self.processes, multiprocessing.get_context("spawn"), _start, given)
        return self.pool

    def __enter__(self) -> "Crew":
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
        if self.bench is not None:
            shutil.rmtree(self.bench.keep / AT_WORK, ignore_errors=True)


def end_processes() -> None:
    """Those that this process has started, at once. One that waits to hand over its results would wait for ever."""
    for process in multiprocessing.active_children():
        process.kill()


def release_semaphores() -> None:
    """Called before this process ends without its own clean-up: what watches over the semaphores of a crew would warn of them."""
    if "multiprocessing.synchronize" in sys.modules:
        finalizers._run_finalizers(0)


def _chunks(jobs: Sequence[Job], size: int) -> Iterable[Sequence[Job]]:
    return (jobs[first : first + size] for first in range(0, len(jobs), size))


_bench: list[Bench] = []
END_KNOWN_TRIES, END_KNOWN_S = 100, 0.02
AT_WORK = "at-work"
"""Folder of kept things: each process of a crew writes down which picture or frame it opens, under its number."""


def working_on(file: Path) -> None:
    """Called before a library written in C gets the file: where that ends the process, nobody else can tell which it was."""
    if _bench:
        place = _bench[0].keep / AT_WORK / str(os.getpid())
        place.parent.mkdir(exist_ok=True)
        place.write_bytes(os.fsencode(file))


def _last_file(bench: Bench, process: int) -> Path | None:
    try:
        return Path(os.fsdecode((bench.keep / AT_WORK / str(process)).read_bytes()))
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


def _start(bench: Bench, seldom: tuple[int, int, int]) -> None:
    """A process of the crew looks for rubbish as seldom as the one that started it, and does not outlive it."""
    threading.Thread(target=_end_with_parent, daemon=True).start()
    gc.set_threshold(*seldom)
    _bench.append(bench)


def _end_with_parent() -> None:
    """One that is killed closes nothing, and the crew would wait for its next task for ever."""
    multiprocessing.parent_process().join()
    os._exit(1)


def _work(task: Task[Any, Any], chunk: Sequence[Any]) -> list[Any]:
    return task(_bench[0], chunk)
