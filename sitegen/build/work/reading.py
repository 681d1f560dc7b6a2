"""Files to entries."""

from collections.abc import Mapping, Sequence

from sitegen.build.context import BuildContext
from sitegen.build.rule import Outcome
from sitegen.build.rules.entries import EntryRead, ReadJob
from sitegen.build.store import CacheMiss, digest_of
from sitegen.build.work.log_memory import KeptLog, LogMemory
from sitegen.diary.entry import Entry
from sitegen.diary.rigs_used import rigs_of
from sitegen.diary.same_frame import camera_stretches
from sitegen.reading.reader import EntryReading, read_entry


def read_entries(context: BuildContext, chunk: Sequence[ReadJob]) -> list[Outcome[EntryRead]]:
    return [_read(context, job) for job in chunk]


def _read(context: BuildContext, job: ReadJob) -> Outcome[EntryRead]:
    memory = LogMemory(_logs(context, job), job.unchanged)
    reading = read_entry(job.relative, context.config, memory.read)
    logs = context.store.put(memory.now)
    reads = (job.relative, *reading.sources)
    if reading.entry is None:
        return Outcome(EntryRead(logs, plans=reading.plans), reads, reading.asked, problems=reading.problems, uses=(logs,))
    name = context.store.put(reading.entry)
    value = _value(name, logs, reading, reading.entry)
    return Outcome(value, reads, reading.asked, problems=reading.problems, uses=(logs, name))


def _value(name: str, logs: str, reading: EntryReading, entry: Entry) -> EntryRead:
    return EntryRead(
        logs=logs,
        slug=entry.slug,
        entry=name,
        published=entry.published,
        unlisted=entry.unlisted,
        rigs=rigs_of(entry),
        extra=extra_files(entry),
        frames=_frames_digest(entry),
        stretches=camera_stretches(entry.lights),
        named=reading.named,
        plans=reading.plans,
    )


def _frames_digest(entry: Entry) -> str:
    """Of what decides about frames that another entry tells too (see `facts.frame_tellers`): not its text, nor measures."""
    places = [(target.slug, target.name, target.ra_deg, target.dec_deg) for target in entry.targets]
    frames = [
        (sub.start.timestamp(), sub.exposure_s, sub.rig, sub.origin and sub.origin.camera_id, sub.kept, sub.filter, sub.target,
         sub.source)
        for sub in entry.lights
    ]  # fmt: skip
    return digest_of((places, frames))


def _logs(context: BuildContext, job: ReadJob) -> Mapping[str, KeptLog]:
    try:
        logs = context.store.get(job.logs, dict[str, KeptLog]) if job.logs and job.unchanged else {}
    except CacheMiss:
        return {}
    return logs


def extra_files(entry: Entry) -> tuple[str, ...]:
    """Pictures, pictures of steps, and star frames, sorted."""
    steps = [step.file for picture in entry.pictures for step in picture.steps if step.file]
    stars = [star.file for star in (*entry.star_survey, *entry.star_rings)]
    return tuple(sorted({*(picture.file for picture in entry.pictures), *steps, *stars}))
