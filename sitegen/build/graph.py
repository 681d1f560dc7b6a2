"""The scheduler: every task of every rule, in the order of the rules; a task that is up to date is not done.

A task is up to date when its key, the code behind its rule and the stamps of all files that it read are as they were, and its
outputs lie in the store. Its key holds digests of what earlier tasks made, so that an outcome that comes out the same stops
whatever depends on it (early cut-off).
"""

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any, TypeVar

from msgspec import Raw, Struct, msgpack

from sitegen.build.context import BuildContext
from sitegen.build.manifest import Manifest
from sitegen.build.rule import Outcome, Records, Rule, Task, TaskRecord, Value
from sitegen.build.stamps import Stamp
from sitegen.build.stats import BuildStats
from sitegen.build.store import are_whole
from sitegen.build.workers import WorkerPool
from sitegen.problems import Problem, errors_in

Shared = TypeVar("Shared")
Progress = Callable[[str, int, int], None]
"""Called with what is being done, how many of it are done, and of how many."""


def no_progress(doing: str, done: int, total: int) -> None:
    """Nobody is shown anything."""


class Inputs(Struct, frozen=True):
    """The files in content/: their stamps, None for one too new to be trusted, and how problem lines spell the folder."""

    stamps: Mapping[str, Stamp | None]
    shown_as: str

    @property
    def names(self) -> frozenset[str]:
        return frozenset(name.encode("utf-8", "backslashreplace").decode() for name in self.stamps)


class Build:
    """One run of the graph. `earlier` is the manifest of the last one; `trusting`: files of the store are taken for whole."""

    def __init__(
        self, context: BuildContext, inputs: Inputs, earlier: Manifest, workers: WorkerPool, stats: BuildStats,
        progress: Progress = no_progress, trusting: bool = False,
    ) -> None:  # fmt: skip
        self.context, self.inputs, self.earlier, self.workers = context, inputs, earlier, workers
        self.stats, self.progress, self.trusting = stats, progress, trusting
        content = os.fsencode(context.content.absolute())
        self.manifest = Manifest(earlier.version, context.config.today, inputs.shown_as, content, inputs.names)
        self.moved = sorted(earlier.names ^ self.manifest.names)
        self.problems: list[Problem] = []
        self._values: dict[str, dict[str, Any]] = {}
        self._once: dict[Callable[[Build], Any], Any] = {}

    def run(self, rules: Iterable[Rule[Any]]) -> bool:
        """Whether there is no error; after a rule with one, the next is not done."""
        for rule in rules:
            self._run(rule)
            if errors_in(self.problems):
                return False
        return True

    def finished(self) -> Manifest:
        """The manifest of this run. Rules that were not done keep their records, as far as they are still true."""
        for name, records in self.earlier.tasks.items():
            if name not in self.manifest.tasks:
                kept = {task: record for task, record in records.items() if not self._is_dated(record)}
                self.manifest.tasks[name] = kept
        return self.manifest

    def values(self, rule: Rule[Value]) -> dict[str, Value]:
        """What the tasks of a rule told in this run, by name, in their order."""
        values: dict[str, Value] = self._values[rule.name]
        return values

    def once(self, compute: "Callable[[Build], Shared]") -> Shared:
        """What several rules ask for, computed once in this run."""
        if compute not in self._once:
            self._once[compute] = compute(self)
        shared: Shared = self._once[compute]
        return shared

    def earlier_record(self, rule: Rule[Any], name: str) -> TaskRecord | None:
        """Of a task when it was done last; None where code of another version did it."""
        record = self.earlier.tasks.get(rule.name, {}).get(name)
        return record if record is not None and record.code == self.version(rule) else None

    def earlier_value(self, rule: Rule[Value], name: str) -> Value | None:
        """What a task told when it was done last."""
        record = self.earlier_record(rule, name)
        return msgpack.decode(record.value, type=rule.value) if record else None

    def unchanged_reads(self, record: TaskRecord | None) -> frozenset[str]:
        """Of the files that a task read, those that are as they were."""
        return frozenset(name for name, stamp in record.reads if self._is_unchanged(name, stamp)) if record else frozenset()

    def version(self, rule: Rule[Any]) -> str:
        """Of all code behind the rule's work."""
        return self.context.versions[rule.module]

    def is_up_to_date(self, rule: Rule[Any], task: Task) -> bool:
        """The one place where this is decided."""
        record = self.earlier_record(rule, task.name)
        return (
            record is not None
            and record.key == task.key
            and not errors_in(record.problems)
            and not self._is_dated(record)
            and not rule.due_on(record, self.earlier.day, self.manifest.day)
            and all(self._is_unchanged(name, stamp) for name, stamp in record.reads)
            and (self.trusting or are_whole(record.outputs, self.context.root))
        )

    def _is_unchanged(self, name: str, stamp: Stamp | None) -> bool:
        return stamp is not None and self.inputs.stamps.get(name) == stamp

    def _is_dated(self, record: TaskRecord) -> bool:
        """Files came or went where it looked for files, or its problems spell another folder."""
        if record.problems and self.earlier.shown_as != self.manifest.shown_as:
            return True
        return bool(record.looked_under) and any(name.startswith(record.looked_under) for name in self.moved)

    def _run(self, rule: Rule[Value]) -> None:
        tasks = list(rule.tasks(self))
        earlier = self.earlier.tasks.get(rule.name, {})
        stale = [task for task in tasks if not self.is_up_to_date(rule, task)]
        outcomes = dict(zip((task.name for task in stale), self._outcomes(rule, stale), strict=True))
        records = {task.name: self._record(rule, task, outcomes.get(task.name)) for task in tasks}
        self.manifest.tasks[rule.name] = records
        self._values[rule.name] = {name: self._value(rule, record, outcomes.get(name)) for name, record in records.items()}
        self.problems += [problem for record in records.values() for problem in record.problems]
        self.problems += rule.together(self)
        self._count(rule, records, earlier, len(stale))
        self.stats.step(rule.stage)

    def _outcomes(self, rule: Rule[Value], stale: Sequence[Task]) -> Iterator[Outcome[Value]]:
        """As they come, each told to who watches."""
        if not stale:
            return
        jobs, names = [task.job() for task in stale], [task.shown or task.name for task in stale]
        seconds = sum(task.seconds for task in stale) / len(stale)
        outcomes = self.workers.run(rule.function, jobs, seconds, rule.most_at_once, rule.in_this_process, names)
        for done, outcome in enumerate(outcomes, 1):
            self.progress(rule.doing, done, len(stale))
            yield outcome

    def _record(self, rule: Rule[Value], task: Task, outcome: Outcome[Value] | None) -> TaskRecord:
        if outcome is None:
            return self.earlier.tasks[rule.name][task.name]
        reads = tuple((name, self.inputs.stamps.get(name)) for name in outcome.reads)
        value = Raw(msgpack.encode(outcome.value))
        return TaskRecord(self.version(rule), task.key, value, reads, outcome.looked_under, outcome.outputs, outcome.problems,
                          outcome.uses)  # fmt: skip

    def _value(self, rule: Rule[Value], record: TaskRecord, outcome: Outcome[Value] | None) -> Value:
        return outcome.value if outcome else msgpack.decode(record.value, type=rule.value)

    def _count(self, rule: Rule[Any], records: Records, earlier: Records, stale: int) -> None:
        if not rule.counts_pages:
            self.stats.count(rule.counted, stale, len(records))
            return
        before = {output for record in earlier.values() for output in record.outputs}
        pages = [page for record in records.values() for page in record.outputs if page.path.endswith(".html")]
        self.stats.count(rule.counted, sum(page not in before for page in pages), len(pages))
