"""Files to entries."""

from collections.abc import Mapping, Sequence

from sitegen.build.context import BuildContext
from sitegen.build.kept_entries import put_entry
from sitegen.build.resolve import resolve
from sitegen.build.rule import Outcome
from sitegen.build.rules.entries import EntryRead, ReadJob
from sitegen.build.store import CacheMiss, digest_of
from sitegen.build.work.log_memory import KeptLog, KeptSeries, LogMemory, SeriesMemory
from sitegen.diary.entry import Entry
from sitegen.diary.rigs_used import rigs_of
from sitegen.diary.same_frame import camera_stretches
from sitegen.reading.entry_series import Exposure, SeriesReading, SeriesRequest
from sitegen.reading.reader import EntryReading, read_entry

SERIES_WORK = "sitegen.reading.series_reading:read_all_series"


def read_entries(context: BuildContext, chunk: Sequence[ReadJob]) -> list[Outcome[EntryRead]]:
    return [_read(context, job) for job in chunk]


def _read(context: BuildContext, job: ReadJob) -> Outcome[EntryRead]:
    memory = LogMemory(_logs(context, job), job.unchanged)
    beside = SeriesMemory(_series(context, job), job.unchanged, _read_series)
    reading = read_entry(job.relative, context.config, memory.read, beside.read)
    logs, series = context.store.put(memory.now), context.store.put(beside.now) if beside.now else None
    kept = (logs, *([series] if series else ()))
    reads = (job.relative, *reading.sources)
    if reading.entry is None:
        failed = EntryRead(logs, plans=reading.plans, series=series)
        return Outcome(failed, reads, reading.asked, problems=reading.problems, uses=kept)
    name = put_entry(context.store, reading.entry)
    value = _value(name, (logs, series), reading, reading.entry)
    return Outcome(value, reads, reading.asked, problems=reading.problems, uses=(*kept, name))


def _read_series(requests: Sequence[SeriesRequest], exposures: Sequence[Exposure]) -> SeriesReading:
    """Its arrays load a library that few entries need."""
    reading: SeriesReading = resolve(SERIES_WORK)(requests, exposures)
    return reading


def _value(name: str, kept: tuple[str, str | None], reading: EntryReading, entry: Entry) -> EntryRead:
    logs, series = kept
    return EntryRead(
        logs=logs,
        series=series,
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


def _series(context: BuildContext, job: ReadJob) -> KeptSeries | None:
    try:
        return context.store.get(job.series, KeptSeries) if job.series else None
    except CacheMiss:
        return None


def extra_files(entry: Entry) -> tuple[str, ...]:
    """Pictures, pictures of steps, and star frames, sorted."""
    steps = [step.file for picture in entry.pictures for step in picture.steps if step.file]
    stars = [star.file for star in (*entry.star_survey, *entry.star_rings)]
    return tuple(sorted({*(picture.file for picture in entry.pictures), *steps, *stars}))
