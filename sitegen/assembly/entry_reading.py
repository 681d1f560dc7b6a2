"""Files to entries."""

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from sitegen.assembly.bench import Bench, Gone
from sitegen.assembly.jobs import ENTRIES, LOGS, ReadJob
from sitegen.assembly.log_memory import KeptLog, LogMemory
from sitegen.assembly.records import Marks, ReadEntry
from sitegen.diary.entry import Entry
from sitegen.diary.rigs_used import rigs_of
from sitegen.reading.reader import read_entry


def read_entries(bench: Bench, chunk: Sequence[ReadJob]) -> list[ReadEntry]:
    """The marks are filled in by who looked."""
    return [_read(bench, job) for job in chunk]


def _read(bench: Bench, job: ReadJob) -> ReadEntry:
    memory = LogMemory(_logs(bench, job), job.unchanged)
    reading = read_entry(job.relative, bench.frame, memory.read)
    marks: Marks = tuple((name, None) for name in (job.relative, *reading.sources))
    logs = bench.put(LOGS, memory.now)
    found = ReadEntry(job.relative, marks, reading.asked, job.frame, bench.frame.today, reading.problems, logs)
    entry = reading.entry
    if entry is None:
        return found
    digest = bench.put(ENTRIES, entry)
    return replace(
        found,
        slug=entry.slug,
        entry=digest,
        published=entry.published,
        unlisted=entry.unlisted,
        rigs=rigs_of(entry),
        extra=extra_files(entry),
        named=reading.named,
    )


def _logs(bench: Bench, job: ReadJob) -> Mapping[str, KeptLog]:
    try:
        found: Mapping[str, KeptLog] = bench.get(LOGS, job.logs) if job.logs and job.unchanged else {}
    except Gone:
        return {}
    return found


def extra_files(entry: Entry) -> tuple[str, ...]:
    """Pictures, pictures of steps, and star frames, sorted."""
    steps = [step.file for picture in entry.pictures for step in picture.steps if step.file]
    return tuple(sorted({*(picture.file for picture in entry.pictures), *steps, *entry.star_survey, *entry.star_rings}))
