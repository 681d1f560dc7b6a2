"""Rows of a table whose times are known -> subs, runs spread over their spans."""

from collections.abc import Iterator, Sequence
from datetime import timedelta

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.recorded.counts import Count, Verdicts, count_of, kept_of, verdicts_of
from sitegen.authoring.recorded.exposures import Exposure, UnitTold, read_exposure, seconds_of, unit_of
from sitegen.authoring.recorded.moments_of_rows import RowTime
from sitegen.authoring.recorded.other_cells import other_values
from sitegen.authoring.recorded.sections import Section
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.moments import odd_date
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.table import MOST_FRAMES
from sitegen.reading.capture_logs.wall_clock import Stamp, settle, zone_of
from sitegen.reading.nodes import quoted

MINUTE_S = 60.0
_SINGLE_SPARE_S = 90.0


class _Run(Struct, frozen=True):
    time: RowTime
    count: Count
    exposure_s: float
    gap_s: float


def subs_of(
    times: Sequence[RowTime], section: Section, request: LogRequest, problems: LogProblems
) -> tuple[tuple[Sub, ...], tuple[str, ...]]:
    """In the order of the rows; those in error are left out. Raises AskedFor."""
    headings = {key: column.heading for key, column in section.columns.items()}
    verdicts = verdicts_of([time.row for time in times], headings)
    pairs = [(time, exposure) for time in times if (exposure := _exposure(time, section, problems)) is not _WRONG]
    unit = _unit(pairs, section, verdicts)
    runs = [run for time, exposure in pairs if (run := _run(time, exposure, unit, verdicts, section, problems)) is not None]
    remarks = (*((unit.why,) if unit.why else ()), *verdicts.told)
    if sum(run.count.frames for run in runs) > MOST_FRAMES:
        problems.error(f"holds more than {MOST_FRAMES} frames", "split it, a file a season")
        return (), remarks
    return tuple(_settled(runs, section, request, problems)), remarks


_WRONG = Exposure("")


def _exposure(time: RowTime, section: Section, problems: LogProblems) -> Exposure | None:
    """None where the row has none; `_WRONG` after an error."""
    cell = time.row.cells.get("exposure_s") or (time.row.cells["count"] if _holds_both(time) else None)
    if cell is None:
        return None
    try:
        return read_exposure(cell)
    except ValueProblem as doubt:
        _at_cell(time, "exposure_s", cell, doubt, section, problems)
        return _WRONG


def _holds_both(time: RowTime) -> bool:
    """'24 x 300 s' under a heading of counts."""
    cell = time.row.cells.get("count", "")
    try:
        return "exposure_s" not in time.row.cells and bool(cell) and read_exposure(cell).count is not None
    except ValueProblem:
        return False


def _at_cell(time: RowTime, key: str, cell: str, doubt: ValueProblem, section: Section, problems: LogProblems) -> None:
    column = section.columns.get(key) or section.columns["count"]
    remedy = doubt.remedy if doubt.remedy != key else ""
    problems.error(f"{quoted(column.heading)} is {quoted(cell)}, {doubt.wrong}", remedy, time.row.row.place_of(column.index))


def _unit(pairs: Sequence[tuple[RowTime, Exposure | None]], section: Section, verdicts: Verdicts) -> UnitTold:
    """Steps between frames are those inside a span, else to the next row of the same night."""
    column = section.columns.get("exposure_s") or section.columns.get("count")
    remarks = [(number, time, exposure) for number, (time, exposure) in enumerate(pairs) if exposure is not None]
    if column is None or not remarks:
        return UnitTold()
    steps = [_step_s(number, [time for time, _ in pairs], exposure, verdicts) for number, _, exposure in remarks]
    return unit_of([exposure for _, _, exposure in remarks], steps, column.heading, column.form or column.unit)


def _step_s(number: int, times: Sequence[RowTime], exposure: Exposure, verdicts: Verdicts) -> float:
    """0 where nothing follows within hours."""
    time = times[number]
    try:
        count = count_of(time.row, exposure, verdicts)
    except ValueProblem:
        return 0.0
    frames = count.frames if count is not None else 1
    if not frames:
        return 0.0
    if time.span_s is not None:
        return time.span_s / frames
    later = times[number + 1].start if number + 1 < len(times) else None
    if later is None or (later.tzinfo is None) != (time.start.tzinfo is None):
        return 0.0
    apart_s = abs((later - time.start).total_seconds())
    return apart_s / frames if apart_s < 4 * 3600 else 0.0


def _run(
    time: RowTime, exposure: Exposure | None, unit: UnitTold, verdicts: Verdicts, section: Section, problems: LogProblems
) -> _Run | None:
    try:
        count = count_of(time.row, exposure, verdicts)
        exposure_s = seconds_of(exposure, unit) if exposure is not None else _by_span(time, count)
        if exposure_s == 0 and "bias" not in time.row.cells.get("kind", "").casefold():
            raise ValueProblem("only a bias frame has no exposure", "exposure_s")
        gap_s, count = _gap(time, exposure_s, count, verdicts)
    except ValueProblem as doubt:
        key = doubt.remedy if doubt.remedy in section.columns else "exposure_s" if "exposure_s" in time.row.cells else "start"
        _at_cell(time, key, time.row.cells.get(key, ""), doubt, section, problems)
        return None
    return _Run(time, count, exposure_s, gap_s)


def _by_span(time: RowTime, count: Count | None) -> float:
    """One frame from start to end."""
    if time.span_s is None or count is not None:
        raise ValueProblem("and no cell tells the exposure", "write it, as in 300 s")
    return time.span_s


def _gap(time: RowTime, exposure_s: float, count: Count | None, verdicts: Verdicts) -> tuple[float, Count]:
    """Seconds between the frames of a run, so that they fill its span."""
    if count is None:
        count = _single(time, exposure_s, verdicts)
    gap = time.row.cells.get("gap_s")
    if time.span_s is None or count.frames < 2:
        return (read_seconds(gap) if gap else 0.0), count
    spare_s = time.span_s - count.frames * exposure_s
    if spare_s < -MINUTE_S:
        raise ValueProblem(f"and {count.frames} × {exposure_s:g} s do not fit before its end", "start")
    return max(spare_s, 0.0) / (count.frames - 1), count


def read_seconds(cell: str) -> float:
    exposure = read_exposure(cell)
    return exposure.seconds if exposure.seconds is not None else exposure.number or 0.0


def _single(time: RowTime, exposure_s: float, verdicts: Verdicts) -> Count:
    if time.span_s is not None and time.span_s > exposure_s * 1.5 + _SINGLE_SPARE_S:
        raise ValueProblem(f"and holds more than one frame of {exposure_s:g} s until its end",
                           "say how many in a column, or as in 24 x 300 s")  # fmt: skip
    return Count(1, 0) if kept_of(time.row, verdicts) else Count(0, 1)


def _settled(runs: Sequence[_Run], section: Section, request: LogRequest, problems: LogProblems) -> Iterator[Sub]:
    stamps = [Stamp(run.time.start, run.count.frames * (run.exposure_s + run.gap_s),
                    run.time.row.row.place_of(section.columns["start"].index)) for run in runs]  # fmt: skip
    for run, start in zip(runs, settle(stamps, zone_of(request, problems), problems), strict=True):
        if start is None:
            continue
        place = run.time.row.row.place_of(section.columns["start"].index)
        if odd := odd_date(start, request.today):
            problems.alike("warning", *odd, place)
        clock = None if run.time.start.tzinfo is not None else request.time_zone or "UTC"
        values = other_values(run.time.row, section, problems)
        if values is None:
            continue
        first = Sub(start, run.exposure_s, "", "", source=request.source, clock=clock, **values)
        step = timedelta(seconds=run.exposure_s + run.gap_s)
        for number in range(run.count.frames):
            is_kept = number < run.count.kept
            yield replace(first, start=start + number * step, kept=is_kept, reason=None if is_kept else first.reason)
