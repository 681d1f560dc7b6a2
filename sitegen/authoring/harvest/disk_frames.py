"""Frame files by the clock that stamped them, and what of them is no light before rigs and targets are looked at."""

from collections.abc import Sequence
from datetime import UTC, date

from msgspec import Struct

from sitegen.authoring.captures.reading import ReadFrames, Unreadable, frames_of
from sitegen.authoring.captures.record import Frame, FrameFile, FrameRecord
from sitegen.authoring.captures.sorting import LeftOut, kinds_told, without_date
from sitegen.authoring.harvest.known_logs import KnownLogs
from sitegen.authoring.harvest.questions import Answers, Question, asked_of
from sitegen.problems import Problem

CLOCK = "time_zone: ZONE"
_LOCAL_CLOCK = "in which time zone ran the clock of {}? Their headers say that it was a local one"


class DiskFrames(Struct, frozen=True):
    """`set_aside` counts files that the author leaves out; `left_out` are those of no kind and finished ones without a date.
    `clockless` wait for the zone of their clock; their starts are the clock's."""

    frames: tuple[Frame, ...]
    clockless: tuple[Frame, ...]
    left_out: tuple[LeftOut, ...]
    unreadable: tuple[Unreadable, ...]
    questions: tuple[Question, ...]
    problems: tuple[Problem, ...]
    set_aside: int


def disk_frames(
    files: Sequence[FrameFile], records: Sequence[FrameRecord], answers: Answers, logs: KnownLogs, today: date
) -> DiskFrames:
    wanted = [number for number, file in enumerate(files) if not answers.about(file).leave_out]
    read = _by_clock(files, records, wanted, answers, logs, today)
    clockless = [file for file in read.unreadable if _is_clockless(file)]
    finished, broken = without_date(file for file in read.unreadable if not _is_clockless(file))
    frames, strange = kinds_told(read.frames)
    questions = asked_of(_LOCAL_CLOCK, CLOCK, (file.file for file in clockless))
    return DiskFrames(
        tuple(frames), tuple(map(_by_own_clock, clockless)), (*finished, *strange), tuple(broken), tuple(questions),
        read.problems, len(files) - len(wanted),
    )  # fmt: skip


def _by_clock(
    files: Sequence[FrameFile], records: Sequence[FrameRecord], wanted: Sequence[int], answers: Answers, logs: KnownLogs,
    today: date,
) -> ReadFrames:  # fmt: skip
    by_zone: dict[str | None, list[int]] = {}
    for number in wanted:
        by_zone.setdefault(_zone_of(files[number], records[number], answers, logs), []).append(number)
    parts = [
        frames_of([files[number] for number in numbers], [records[number] for number in numbers], (), zone, today)
        for zone, numbers in by_zone.items()
    ]
    return ReadFrames(
        tuple(frame for part in parts for frame in part.frames), tuple(file for part in parts for file in part.unreadable), (),
        tuple(problem for part in parts for problem in part.problems),
    )  # fmt: skip


def _zone_of(file: FrameFile, record: FrameRecord, answers: Answers, logs: KnownLogs) -> str | None:
    """Only of those that need one: the author's answer, else the clock by which the frame's log was read."""
    if record.start is None or record.start.tzinfo is not None:
        return None
    return answers.about(file).time_zone or logs.clock_of(file.folder, file.below)


def _by_own_clock(file: Unreadable) -> Frame:
    record = file.record
    assert record.start is not None and record.exposure_s is not None
    return Frame(file.file, record, record.start.replace(tzinfo=UTC), record.exposure_s)


def _is_clockless(file: Unreadable) -> bool:
    record = file.record
    return record.local and not record.wrong and record.start is not None and record.exposure_s is not None
