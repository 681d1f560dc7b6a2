"""Work shared out: little of it in this process, much of it on every core."""

import gc
import os
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, TypeVar

from sitegen.assembly.bench import Bench
from sitegen.assembly.second_hand import SecondHand, deaf_to_interrupts
from sitegen.late import Late
from sitegen.processes import cores

ProcessPoolExecutor = Late("concurrent.futures", "ProcessPoolExecutor")
multiprocessing = Late("multiprocessing")

Job = TypeVar("Job")
Result = TypeVar("Result")
Task = Callable[[Bench, Sequence[Job]], list[Result]]

WORTH_PROCESSES_S = 3.0
"""A process of its own must first import everything, which takes a second."""
CHUNKS_A_PROCESS = 8
CHUNK_S = 6.0
"""At the end one process has nothing left to do for as long as the other's last chunk takes."""


class Crew:
    """Runs tasks on chunks of jobs, results in the order of the jobs. Processes are started when first worth it."""

    def __init__(self, bench: Bench, processes: int | None, second: SecondHand | None = None) -> None:
        """`second` takes over what is not worth a crew, until there is one."""
        self.bench, self.second = bench, second
        self.processes = processes or cores()
        self.pool: Any = None

    def run(
        self, task: Task[Job, Result], jobs: Sequence[Job], seconds_each: float, most: int = 64, here: bool = False
    ) -> Iterator[Result]:
        """`seconds_each`: about how long a job takes; `most` jobs in one chunk; `here`: a little of it is not handed over."""
        if self.processes == 1 or len(jobs) < 2 or len(jobs) * seconds_each < WORTH_PROCESSES_S:
            for chunk in _chunks(jobs, most):
                yield from task(self.bench, chunk) if here else self._small(task, chunk)
            return
        size = max(1, min(most, len(jobs) // (CHUNKS_A_PROCESS * self.processes), int(CHUNK_S / seconds_each)))
        pool = self._pool()
        with deaf_to_interrupts():
            waiting = pool.map(_work, [task] * -(-len(jobs) // size), _chunks(jobs, size))
        for results in waiting:
            yield from results

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
            given = (self.bench, gc.get_threshold())
            self.pool = ProcessPoolExecutor(self.processes, multiprocessing.get_context("spawn"), _start, given)
        return self.pool

    def __enter__(self) -> "Crew":
        return self

    def __exit__(self, *wrong: object) -> None:
        """Where the work ends early nobody waits for what is in hand: it is made again the next time."""
        if self.pool is None:
            return
        if any(wrong):
            end_processes()
        self.pool.shutdown(cancel_futures=True)


def end_processes() -> None:
    """Those that this process has started, at once. One that waits to hand over its results would wait for ever."""
    for process in multiprocessing.active_children():
        process.kill()


def _chunks(jobs: Sequence[Job], size: int) -> Iterable[Sequence[Job]]:
    return (jobs[first : first + size] for first in range(0, len(jobs), size))


_bench: list[Bench] = []


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
