"""Every entry read: its file, and the logs that it names."""

from collections.abc import Iterable
from datetime import date
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.rule import Rule, Task
from sitegen.build.store import digest_of
from sitegen.diary.same_frame import CameraStretches
from sitegen.problems import Problem
from sitegen.reading.diary_config import entry_files
from sitegen.reading.entry_lessons import EntryPlans, unmet_plans
from sitegen.reading.shared_addresses import AddressedName, shared_addresses

if TYPE_CHECKING:
    from sitegen.build.graph import Build

READ_S = 0.004


class EntryRead(Struct, frozen=True, gc=False):
    """`entry` names its record, None where a problem is an error; `logs` the record of its logs as they were read, `series` that
    of the tables of instruments beside them; `extra` are the pictures and star frames that it names; `frames` is the digest of
    all that other entries ask of its light frames, `stretches` when its cameras took them; `named` and `plans` as in
    `reading.reader`."""

    logs: str
    slug: str = ""
    entry: str | None = None
    published: date = date.min
    unlisted: bool = False
    rigs: tuple[str, ...] = ()
    extra: tuple[str, ...] = ()
    frames: str = ""
    stretches: CameraStretches = ()
    named: tuple[AddressedName, ...] = ()
    plans: EntryPlans = EntryPlans()
    series: str | None = None


class ReadJob(Struct, frozen=True):
    """`relative` inside content/; `logs` and `series` name the records of its logs and its instruments' tables as they were read
    before, if any, and `unchanged` the files that are as they were."""

    relative: str
    logs: str | None
    unchanged: frozenset[str]
    series: str | None = None


def _tasks(build: "Build") -> Iterable[Task]:
    config = build.context.config
    key = digest_of((config.known, config.folder.shown_as))
    for relative in entry_files(config):
        yield Task(relative, key, partial(_job, build, relative), READ_S)


def _job(build: "Build", relative: str) -> ReadJob:
    earlier = build.earlier_value(ENTRIES, relative)
    unchanged = build.unchanged_reads(build.earlier_record(ENTRIES, relative))
    return ReadJob(relative, earlier.logs if earlier else None, unchanged, earlier.series if earlier else None)


def _between_entries(build: "Build") -> Iterable[Problem]:
    entries = build.values(ENTRIES).values()
    yield from shared_addresses(named for entry in entries for named in entry.named)
    yield from unmet_plans(entry.plans for entry in entries)


def listed(build: "Build") -> list[EntryRead]:
    """Entries that are published, newest first."""
    entries = (entry for entry in build.values(ENTRIES).values() if not entry.unlisted)
    return sorted(entries, key=lambda entry: (-entry.published.toordinal(), entry.slug))


ENTRIES: Rule[EntryRead] = Rule(
    name="entries",
    value=EntryRead,
    work="work.reading:read_entries",
    tasks=_tasks,
    doing="reading entries",
    stage="reading",
    counted="entries read",
    together=_between_entries,
    in_this_process=True,
    by_the_day=True,
)
