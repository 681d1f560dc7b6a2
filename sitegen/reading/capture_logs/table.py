"""The records of a table -> subs: what CSV and ECSV logs have in common."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from itertools import accumulate, islice
from typing import Any, NamedTuple

from msgspec.structs import replace

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.columns import ORIGIN_NAMES
from sitegen.reading.capture_logs.gathered_train import tell_trains
from sitegen.reading.capture_logs.headings import Headings, find_headings
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.moments import odd_date
from sitegen.reading.capture_logs.records import Record
from sitegen.reading.capture_logs.repeated_rows import RepeatedRows
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.capture_logs.row_filters import RowFilters
from sitegen.reading.capture_logs.wall_clock import Stamp, plainly, settle, zone_of
from sitegen.reading.nodes import quoted

MOST_FRAMES = 100_000
_OPTIONAL = ("reason", "binning", "gain", "sensor_c", "fwhm_arcsec", "elongation", "guiding_rms_arcsec", "stars",
             "panel", "note")  # fmt: skip
_EMPTY: Mapping[str, Any] = {}


class _Row(NamedTuple):
    """A record understood, but for its time zone. `values` by canonical name; a cell left empty is absent."""

    record: Record
    values: Mapping[str, Any]

    @property
    def frames(self) -> int:
        return int(self.values.get("count") or 1)

    @property
    def step_s(self) -> float:
        return float(self.values["exposure_s"]) + float(self.values.get("gap_s") or 0.0)

    @property
    def span_s(self) -> float:
        return self.frames * self.step_s - float(self.values.get("gap_s") or 0.0)


def read_rows(
    records: Iterator[Record], request: LogRequest, problems: LogProblems, units: Mapping[str, str] = _EMPTY
) -> LogReading:
    """`units` by heading, for the columns whose table declares one."""
    heading = next(records, None)
    if heading is None:
        if not problems.all():
            problems.error("is empty", "begin it with a line of headings: start,exposure_s,filter")
        return LogReading(problems=problems.all())
    headings = find_headings(heading, request, problems, units)
    if headings is None:
        return LogReading(problems=problems.all())
    possible = islice(records, MOST_FRAMES + 1)
    rows = [row for record in possible if (row := _understood(record, headings, problems)) is not None]
    if not rows and not problems.all():
        problems.warn("lists no frame", "", heading.start)
    so_far = accumulate(row.frames for row in rows)
    if too_many := next((row for row, frames in zip(rows, so_far, strict=True) if frames > MOST_FRAMES), None):
        problems.error(f"holds more than {MOST_FRAMES} frames", "split the log, a file a season", too_many.record.start)
        return LogReading(problems=problems.all())
    subs = tuple(_subs(rows, headings, request, problems))
    tell_trains(subs, request, problems)
    return LogReading(subs, problems.all())


def _understood(record: Record, headings: Headings, problems: LogProblems) -> _Row | None:
    if not _fits(record, headings, problems):
        return None
    values: dict[str, Any] = {}
    doubted = False
    for name, (index, read) in headings.readers.items():
        text = record.cells[index].strip()
        if not text:
            continue
        try:
            values[name] = read(text)
        except ValueProblem as doubt:
            doubted = True
            problems.error(f"'{name}' is {quoted(text)}, {doubt.wrong}", doubt.remedy, record.place(index))
    return _Row(record, values) if _has_required(record, values, headings, problems, doubted) else None


def _fits(record: Record, headings: Headings, problems: LogProblems) -> bool:
    """As many cells as headings; empty ones too many are a spreadsheet's habit."""
    cells, wanted = len(record.cells), headings.count
    if cells == wanted or (cells > wanted and not any(cell.strip() for cell in record.cells[wanted:])):
        return True
    remedy = "decimal commas? write 2.5, with a point" if cells > wanted else "leave a cell empty between two commas"
    problems.error(f"the row has {cells} cells, the heading line {wanted}", remedy, record.place(min(cells, wanted)))
    return False


def _has_required(record: Record, values: dict[str, Any], headings: Headings, problems: LogProblems, doubted: bool) -> bool:
    if doubted:
        return False
    for name in ("start", "exposure_s"):
        if name not in values:
            problems.error(f"'{name}' is empty", "", record.place(headings.readers[name][0]))
            return False
    if values["exposure_s"] == 0 and values.get("kind", "light") != "bias":
        problems.error("'exposure_s' is 0", "only a bias frame has no exposure", record.place(headings.readers["exposure_s"][0]))
        return False
    return True


def _subs(rows: list[_Row], headings: Headings, request: LogRequest, problems: LogProblems) -> Iterator[Sub]:
    at = headings.readers["start"][0]
    short_of, repeated = _filters(rows, headings, request, problems), RepeatedRows()
    for row, start in zip(rows, _starts(rows, at, request, problems), strict=True):
        if start is None:
            continue
        if odd := odd_date(start, request.today):
            problems.alike("warning", *odd, row.record.place(at))
        values = row.values
        once = Sub(
            start=start,
            exposure_s=values["exposure_s"],
            rig=request.rig.slug if request.rig else "",
            site=request.site.slug if request.site else "",
            target=request.target,
            filter=short_of(row),
            kind=values.get("kind", "light"),
            kept=values.get("kept", True),
            source=request.source,
            clock=_clock(values, request),
            origin=_origin(values),
            **{name: values[name] for name in _OPTIONAL if name in values},
        )
        repeated.see(once, row.record.start)
        yield once
        yield from (_later(once, number * row.step_s) for number in range(1, row.frames))
    repeated.tell(problems)


def _filters(
    rows: list[_Row], headings: Headings, request: LogRequest, problems: LogProblems
) -> Callable[[_Row], str | None]:
    """Each row's filter; what is wrong with those of the whole log is told first."""
    index = headings.readers["filter"][0] if "filter" in headings.readers else None
    filters = RowFilters(request)
    for row in rows:
        at = row.record.place(index) if index is not None else row.record.start
        filters.take(row.values.get("filter", ""), row.values.get("kind", "light"), row.frames, at)
    filters.tell(problems)
    return lambda row: filters.short(row.values.get("filter", ""))


def _clock(values: Mapping[str, Any], request: LogRequest) -> str | None:
    """What a bare time was read as; a gathered log remembers what its frames said."""
    if values["start"].tzinfo is None:
        return request.time_zone or "UTC"
    clock: str | None = values.get("clock")
    return clock


def _origin(values: Mapping[str, Any]) -> FrameOrigin | None:
    columns = {name: values[name] for name in ORIGIN_NAMES if values.get(name) is not None}
    return FrameOrigin(**columns) if columns else None


def _starts(rows: list[_Row], at: int, request: LogRequest, problems: LogProblems) -> Iterable[datetime | None]:
    """UTC; None for a time that no clock showed. `at` is the cell they stand in."""
    if request.time_zone is None:
        return (plainly(row.values["start"]) for row in rows)
    stamps = [Stamp(row.values["start"], row.span_s, row.record.place(at)) for row in rows]
    return settle(stamps, zone_of(request, problems), problems)


def _later(sub: Sub, seconds: float) -> Sub:
    return replace(sub, start=sub.start + timedelta(seconds=seconds))
