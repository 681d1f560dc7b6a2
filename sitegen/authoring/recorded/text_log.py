"""Text logs, line by line, through their author's patterns -> the subs that they tell of."""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

from sitegen.authoring.captures.record import stem_of
from sitegen.authoring.recorded.counts import NO, YES
from sitegen.authoring.recorded.exposures import UnitTold, read_exposure, seconds_of
from sitegen.authoring.recorded.line_patterns import LONGEST_LINE, MOST_WAYS, MOST_WAYS_OF_FILE, TIMES, LinePattern
from sitegen.authoring.recorded.line_times import LineTime, datetimes_of, read_line_time
from sitegen.authoring.recorded.numbers import pointed
from sitegen.authoring.recorded.other_cells import READERS
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.moments import odd_date
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.table import MOST_FRAMES
from sitegen.reading.capture_logs.wall_clock import Stamp, settle, zone_of
from sitegen.reading.nodes import quoted


class LoggedFrame(Struct):
    """One exposure as its lines tell it. `start` is None where only its end is told."""

    line: int
    start: LineTime | None
    values: dict[str, str]
    end: LineTime | None = None
    kept: bool = True
    reason: str = ""


class LinesRead(Struct):
    """`times` in the order of the lines; `unmatched` lines tell nothing, `untried` were too long or could mean too much."""

    frames: list[LoggedFrame] = field(default_factory=list)
    times: list[LineTime] = field(default_factory=list)
    unmatched: int = 0
    untried: int = 0
    strangers: int = 0
    settings: dict[str, str] = field(default_factory=dict)


def read_lines(text: str, patterns: Sequence[LinePattern], problems: LogProblems) -> LinesRead:
    read = LinesRead()
    budget = MOST_WAYS_OF_FILE
    for number, line in enumerate(text.split("\n"), start=1):
        if not line.strip():
            continue
        plain = line.strip()
        ways = {pattern.text: pattern.ways(plain.casefold()) for pattern in patterns} if len(plain) <= LONGEST_LINE else {}
        if not ways or max(ways.values()) > min(MOST_WAYS, budget):
            read.untried += 1
            continue
        budget -= sum(ways.values())
        for pattern in patterns:
            values = pattern.values(plain) if ways[pattern.text] else None
            if values is not None:
                _take(read, pattern, values, number, problems)
                break
        else:
            read.unmatched += 1
        if len(read.frames) > MOST_FRAMES:
            problems.error(f"holds more than {MOST_FRAMES} frames", "split the log, a file a season")
            return LinesRead()
    return read


def _take(read: LinesRead, pattern: LinePattern, values: dict[str, str], number: int, problems: LogProblems) -> None:
    times: dict[str, LineTime] = {}
    for name in TIMES:
        if name not in values:
            continue
        try:
            times[name] = read_line_time(values.pop(name), pattern.forms[name], name, number)
        except ValueProblem as doubt:
            problems.error(f"'{name}' is {doubt.wrong}", doubt.remedy, lambda: (number, 1))
            return
    read.times += times.values()
    if pattern.kind == "start":
        frame = LoggedFrame(number, times["start"], {**read.settings, **values}, times.get("end"))
        read.frames.append(frame)
        _judge(frame, values, False, problems)
    elif pattern.kind == "setting":
        read.settings |= values
    elif pattern.kind == "end":
        _end(read, times["end"], values, number, problems)
    elif (frame_meant := _meant(read, values)) is None:
        read.strangers += 1
    else:
        _judge(frame_meant, values, True, problems)


def _end(read: LinesRead, end: LineTime, values: dict[str, str], number: int, problems: LogProblems) -> None:
    waiting = read.frames[-1] if read.frames and read.frames[-1].end is None else None
    if waiting is None:
        waiting = LoggedFrame(number, None, dict(read.settings))
        read.frames.append(waiting)
    waiting.end = end
    waiting.values |= values
    _judge(waiting, values, False, problems)


def _meant(read: LinesRead, values: dict[str, str]) -> LoggedFrame | None:
    """The frame of that name where lines bear names, else the last one begun."""
    named = [frame for frame in read.frames if "file" in frame.values]
    if "file" in values and named:
        wanted = _stem(values["file"])
        return next((frame for frame in reversed(named) if _stem(frame.values["file"]) == wanted), None)
    return read.frames[-1] if read.frames else None


def _stem(path: str) -> str:
    return stem_of(path.replace("\\", "/").rpartition("/")[2]).casefold()


def _judge(frame: LoggedFrame, values: dict[str, str], is_verdict: bool, problems: LogProblems) -> None:
    word = values.get("kept", "").casefold().strip(" .!")
    if word and word not in YES | NO:
        problems.error(f"'kept' is {quoted(values['kept'])}, neither yes nor no", "", lambda: (frame.line, 1))
    if is_verdict or word:
        frame.kept = word in YES if word else False
        frame.reason = values.get("reason", "")


def subs_of_lines(
    read: LinesRead, first_line: str, request: LogRequest, said: str, problems: LogProblems
) -> tuple[tuple[Sub, ...], tuple[str, ...]]:
    """Raises AskedFor where the date stays open. `said` is 'calendar' or 'evening' where its author says so."""
    moments, remarks = datetimes_of(read.times, (first_line, request.path.stem), request.today, said)
    at = {id(time): moment for time, moment in zip(read.times, moments, strict=True)}
    dated = [dated for frame in read.frames if (dated := _sub(frame, at, request, problems)) is not None]
    zone = zone_of(request, problems)
    starts = settle([Stamp(sub.start, sub.exposure_s, lambda line=frame.line: (line, 1)) for frame, sub in dated],  # type: ignore[misc]
                    zone, problems)  # fmt: skip
    subs = tuple(_placed(sub, start, request) for (_, sub), start in zip(dated, starts, strict=True) if start is not None)
    for (frame, _), start in zip(dated, starts, strict=True):
        if start is not None and (odd := odd_date(start, request.today)):
            problems.alike("warning", *odd, lambda line=frame.line: (line, 1))  # type: ignore[misc]
    return subs, (*remarks, *_counts(read, len(read.frames) - len(dated)))


def _placed(sub: Sub, start: datetime, request: LogRequest) -> Sub:
    return replace(sub, start=start, clock=None if sub.start.tzinfo is not None else request.time_zone or "UTC")


def _sub(
    frame: LoggedFrame, at: dict[int, datetime], request: LogRequest, problems: LogProblems
) -> tuple[LoggedFrame, Sub] | None:
    """None for a frame in error, and for one that was begun and never ended, of which nobody knows how long it was."""
    end = at[id(frame.end)] if frame.end is not None else None
    start = at[id(frame.start)] if frame.start is not None else None
    try:
        exposure_s = _exposure_s(frame, start, end)
        if exposure_s is None:
            return None
        values = _values(frame)
    except ValueProblem as doubt:
        problems.error(doubt.wrong, doubt.remedy, lambda: (frame.line, 1))
        return None
    if start is None:
        assert end is not None
        start = end - timedelta(seconds=exposure_s)
    reason = (frame.reason or None) if not frame.kept else None
    return frame, Sub(start, exposure_s, "", "", kept=frame.kept, reason=reason, source=request.source, **values)


def _exposure_s(frame: LoggedFrame, start: datetime | None, end: datetime | None) -> float | None:
    remarks = frame.values.get("exposure_s")
    if remarks is not None:
        try:
            return seconds_of(read_exposure(pointed(remarks, "comma" if "." not in remarks else "point")), UnitTold())
        except ValueProblem as doubt:
            raise ValueProblem(f"'exposure_s' is {quoted(remarks)}, {doubt.wrong}", doubt.remedy) from None
    if start is None or end is None:
        return None
    return (end - start).total_seconds()


def _values(frame: LoggedFrame) -> dict[str, Any]:
    values: dict[str, Any] = {}
    for key, (name, read) in READERS.items():
        if key in frame.values and key != "reason":
            try:
                values[name] = read(pointed(frame.values[key], "point"))
            except ValueProblem as doubt:
                raise ValueProblem(f"'{key}' is {quoted(frame.values[key])}, {doubt.wrong}", doubt.remedy) from None
    if "object" in frame.values:
        values["origin"] = FrameOrigin(object=frame.values["object"])
    return values


def _counts(read: LinesRead, unknown: int) -> Iterator[str]:
    if unknown:
        yield f"{unknown} frames were begun and never ended, and no line tells their exposure: not counted"
    if read.strangers:
        yield f"{read.strangers} lines throw a frame away that no line began"
    if read.unmatched:
        yield f"{read.unmatched} lines match no pattern"
    if read.untried:
        yield f"{read.untried} lines are too long, or could be read in too many ways: not read"
