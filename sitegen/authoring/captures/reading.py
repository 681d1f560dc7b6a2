"""Headers of many files, each read once: from memory where the file is as it was, else from the disk."""

from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from datetime import UTC, date, datetime, timedelta, tzinfo
from functools import partial
from pathlib import Path
from time import perf_counter, thread_time

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.camera_record import camera_record
from sitegen.authoring.captures.fits_record import fits_record
from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.record import Frame, FrameFile, FrameRecord
from sitegen.authoring.recorded.recorded_files import RecordedRequest, read_recorded
from sitegen.diary.sub import Sub
from sitegen.problems import Problem, one_line
from sitegen.reading.capture_logs.exif_log import RAW
from sitegen.reading.capture_logs.fits_log import SUFFIXES as FITS
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.moments import odd_date
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.wall_clock import Stamp, settle, zone_of

READERS, MOST_AHEAD = 8, 256
PROBED = 32
SLOW_FILE_S = 0.002
"""From this time a file on, beyond what the processor works, the disk is waited for, and several readers are quicker than one."""

Progress = Callable[[str], None]
"""Called with the name of each file that is read."""


class Unreadable(Struct, frozen=True, gc=False):
    """A frame file that cannot be counted, and why."""

    file: FrameFile
    record: FrameRecord
    wrong: str
    remedy: str


class ReadFrames(Struct, frozen=True):
    """Every frame file is in one of the first two. `table_rows` are the rows of tables and text logs, as frames; `problems`
    those of them, and warnings about headers; `told` says how they were understood."""

    frames: tuple[Frame, ...]
    unreadable: tuple[Unreadable, ...]
    table_rows: tuple[Frame, ...]
    problems: tuple[Problem, ...]
    told: tuple[str, ...] = ()


def read_records(
    files: Sequence[FrameFile], memory: FrameMemory, jobs: int | None = None, progress: Progress | None = None,
    on_record: Callable[[FrameRecord], None] | None = None,
) -> tuple[FrameRecord, ...]:  # fmt: skip
    """In the order of the files. `on_record` is called with each that is read, before `progress`."""
    records = memory.records(files)
    unknown = [number for number, record in enumerate(records) if record is None]
    for number, record in zip(unknown, _read_all([files[number] for number in unknown], jobs), strict=True):
        records[number] = record
        memory.remember(files[number], record)
        if on_record is not None:
            on_record(record)
        if progress is not None:
            progress(files[number].name)
    return tuple(record for record in records if record is not None)


def _read_all(files: Sequence[FrameFile], jobs: int | None) -> Iterator[FrameRecord]:
    """The first ones by one reader; the others by several where the disk turns out slow: on a quick one they only get in each
    other's way."""
    began_s, worked_s = perf_counter(), thread_time()
    for file in files[:PROBED]:
        yield record_of(file)
    rest = files[PROBED:]
    if not rest:
        return
    waited_s = (perf_counter() - began_s) - (thread_time() - worked_s)
    if jobs == 1 or (jobs is None and waited_s / PROBED < SLOW_FILE_S):
        yield from map(record_of, rest)
        return
    pool = ThreadPoolExecutor(jobs or READERS)
    try:
        yield from _in_turn(pool, rest)
    finally:
        pool.shutdown(cancel_futures=True)


def _in_turn(pool: ThreadPoolExecutor, files: Iterable[FrameFile]) -> Iterator[FrameRecord]:
    """In the order of the files, only so many of them asked for ahead: what waits for an answer takes two kilobytes a file."""
    waiting: deque[Future[FrameRecord]] = deque()
    for file in files:
        waiting.append(pool.submit(record_of, file))
        if len(waiting) == MOST_AHEAD:
            yield waiting.popleft().result()
    while waiting:
        yield waiting.popleft().result()


def record_of(file: FrameFile) -> FrameRecord:
    """Never raises for what a file can hold."""
    path = file.below.casefold()
    if path.endswith(FITS):
        return fits_record(file.path)
    return camera_record(file.path, "raw" if path.endswith(RAW) else "picture")


def frames_of(
    files: Sequence[FrameFile], records: Sequence[FrameRecord], tables: Iterable[Path], time_zone: str | None, today: date,
    recorded: RecordedRequest | None = None,
) -> ReadFrames:  # fmt: skip
    """`time_zone` is the clock of records that do not tell theirs; UTC where it is None. `tables` are also text logs; `recorded`
    says what is known of them."""
    starts, problems, twofold = _starts(files, records, time_zone)
    frames, unreadable = [], []
    for number, (file, record) in enumerate(zip(files, records, strict=True)):
        start, exposure_s = starts.get(number), record.exposure_s
        if start is None or exposure_s is None or record.wrong:
            wrong, remedy = (record.wrong, record.remedy) if record.wrong else problems.get(number, ("has no start", ""))
            unreadable.append(Unreadable(file, record, wrong, remedy))
            continue
        clock = None if record.start is None or record.start.tzinfo is not None else (time_zone or "UTC")
        frames.append(Frame(file, record, start, exposure_s, clock))
    rows, table_problems, remarks = _rows_of(tables, time_zone, today, recorded or RecordedRequest())
    return ReadFrames(tuple(frames), tuple(unreadable), rows, (*twofold, *_warnings(frames, today), *table_problems), remarks)


def _starts(
    files: Sequence[FrameFile], records: Sequence[FrameRecord], time_zone: str | None
) -> tuple[dict[int, datetime], Mapping[int, tuple[str, str]], Sequence[Problem]]:
    """UTC to the millisecond by number, why there is none, and which were guessed. A directory's bare times are settled together,
    in the order of the names: the hour that a clock showed twice is told by what comes before and after it."""
    starts: dict[int, datetime] = {}
    twofold: list[Problem] = []
    wrong: dict[int, tuple[str, str]] = {}
    bare: dict[str, list[int]] = {}
    for number, record in enumerate(records):
        if record.start is None or record.wrong:
            continue
        if record.start.tzinfo is not None:
            starts[number] = to_milliseconds(record.start)
        elif record.local and time_zone is None:
            wrong[number] = "TIMESYS is 'LOCAL', and no time zone is given", "name it with --time-zone"
        elif time_zone is None:
            starts[number] = to_milliseconds(record.start.replace(tzinfo=UTC))
        else:
            bare.setdefault(files[number].directory, []).append(number)
    for numbers in bare.values():
        twofold += _settle(numbers, records, files, str(time_zone), starts, wrong)
    return starts, wrong, twofold


def _settle(
    numbers: list[int], records: Sequence[FrameRecord], files: Sequence[FrameFile], time_zone: str,
    starts: dict[int, datetime], wrong: dict[int, tuple[str, str]],
) -> Iterator[Problem]:  # fmt: skip
    """Gives a warning for each run of frames in an hour that came twice, where nothing tells which time it was."""
    numbers.sort(key=lambda number: files[number].name)
    problems = LogProblems(files[numbers[0]].directory)
    stamps = []
    for place, number in enumerate(numbers):
        start = records[number].start
        assert start is not None
        stamps.append(Stamp(start, records[number].exposure_s or 0.0, partial(_as_line, place)))
    zone = _zone(time_zone, problems)
    for number, start in zip(numbers, settle(stamps, zone, problems), strict=True):
        if start is None:
            wrong[number] = f"its start does not exist in {time_zone}: the clock was put forward over it", "is it another zone?"
        else:
            starts[number] = to_milliseconds(start)
    for problem in problems.all():
        if problem.severity == "warning":
            stamp, file = stamps[problem.line - 1], files[numbers[problem.line - 1]]
            second = stamp.when.replace(tzinfo=zone, fold=1).astimezone(UTC)
            remedy = f"if it was the second time, write {second:%Y-%m-%dT%H:%M:%SZ} as its 'start' into the log"
            yield Problem(file.path, 1, 1, problem.wrong.replace(" rows ", " frames "), remedy, "warning")


def _as_line(place: int) -> tuple[int, int]:
    return place + 1, 1


def _zone(time_zone: str, problems: LogProblems) -> tzinfo | None:
    return zone_of(_request(Path(), time_zone, date.min), problems)


def to_milliseconds(start: datetime) -> datetime:
    """As exactly as a start is written, so that a frame is recognised by what was written of it."""
    utc = start if start.tzinfo is UTC else start.astimezone(UTC)
    rest = utc.microsecond % 1000
    if not rest:
        return utc
    return utc + timedelta(microseconds=1000 - rest if rest >= 500 else -rest)


def _warnings(frames: Iterable[Frame], today: date) -> Iterator[Problem]:
    for frame in frames:
        shown = frame.file.path if frame.file else ""
        if frame.record.warning:
            yield Problem(shown, 1, 1, frame.record.warning, frame.record.warning_remedy, "warning")
        if odd := odd_date(frame.start, today):
            yield Problem(shown, 1, 1, *odd, "warning")


def _rows_of(
    tables: Iterable[Path], time_zone: str | None, today: date, recorded: RecordedRequest
) -> tuple[tuple[Frame, ...], tuple[Problem, ...], tuple[str, ...]]:
    frames: list[Frame] = []
    problems: list[Problem] = []
    remarks: list[str] = []
    for path in tables:
        reading = read_recorded(_request(path, time_zone, today), recorded)
        frames += map(frame_of_sub, reading.subs)
        problems += reading.problems
        remarks += (one_line(f"{path.name}: {line}") for line in reading.told)
    return tuple(frames), tuple(problems), tuple(remarks)


def frame_of_sub(sub: Sub) -> Frame:
    """A row of a table as if it were a header."""
    origin = sub.origin
    record = FrameRecord(
        "table", sub.kind, start=sub.start, exposure_s=sub.exposure_s, filter_words=sub.filter or "", binning=sub.binning,
        gain=sub.gain, sensor_c=sub.sensor_c,
    )  # fmt: skip
    if origin is not None:
        record = replace(
            record, object=origin.object or "", ra_deg=origin.ra_deg, dec_deg=origin.dec_deg, camera_id=origin.camera_id or "",
            focal_length_mm=origin.focal_length_mm, pixel_um=origin.pixel_um, width_px=origin.width_px,
            height_px=origin.height_px, filter_words=origin.filter_told or sub.filter or "",
        )  # fmt: skip
    return Frame(None, record, to_milliseconds(sub.start), sub.exposure_s, sub.clock, sub)


def _request(path: Path, time_zone: str | None, today: date) -> LogRequest:
    return LogRequest(path, str(path), path.name, None, None, None, None, time_zone, (str(path), 1, 1), today)
