"""A table as somebody keeps it -> the subs that it tells of, and one line for each thing that had to be understood."""

from pathlib import Path

from msgspec import Struct, field
from msgspec.structs import force_setattr, replace

from sitegen.authoring.recorded.asked_columns import AskedColumns
from sitegen.authoring.recorded.cells import cell_rows
from sitegen.authoring.recorded.doubts import AskedFor, answer
from sitegen.authoring.recorded.grid import Grid
from sitegen.authoring.recorded.moments_of_rows import Known, row_times, wants_zone
from sitegen.authoring.recorded.plain_table import read_plain_table
from sitegen.authoring.recorded.rows_to_subs import subs_of
from sitegen.authoring.recorded.sections import Section, sections_of
from sitegen.authoring.recorded.shapes import Shape, ShapeMemory
from sitegen.authoring.recorded.spreadsheet import SPREADSHEETS, read_spreadsheet
from sitegen.diary.sub import Sub
from sitegen.problems import Problem, errors_in, one_line
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.nodes import quoted


class RecordedReading(Struct, frozen=True):
    """`told` are lines for the author, fit to be printed."""

    subs: tuple[Sub, ...] = ()
    problems: tuple[Problem, ...] = ()
    told: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        force_setattr(self, "told", tuple(map(one_line, self.told)))


class _Told(Struct):
    lines: list[str] = field(default_factory=list)

    def say(self, lines: tuple[str, ...]) -> None:
        self.lines += [line for line in lines if line not in self.lines]


def read_grid(path: Path, problems: LogProblems) -> Grid | None:
    """The rows of a table in any of its formats; None after an error."""
    if path.suffix.casefold() in SPREADSHEETS:
        return read_spreadsheet(path, problems)
    return read_plain_table(path, problems)


def read_table_by_example(request: LogRequest, asked: AskedColumns, memory: ShapeMemory) -> RecordedReading:
    """Never raises for what a file can hold. What stays open refuses the whole table: half a table would count half a night."""
    problems = LogProblems(request.shown_path)
    grid = read_grid(request.path, problems)
    if grid is None:
        return RecordedReading(problems=problems.all())
    remarks = _Told(list(grid.told))
    try:
        subs, shapes = _of_sections(grid, request, asked, memory, remarks, problems)
    except AskedFor as open_question:
        problems.error(open_question.wrong, open_question.remedy)
        return RecordedReading((), problems.all(), tuple(remarks.lines))
    if not subs and not problems.all():
        problems.warn("lists no frame")
    if not errors_in(problems.all()):
        for headings, shape in shapes:
            memory.remember(headings, shape)
    return RecordedReading(subs, problems.all(), tuple(remarks.lines))


def _of_sections(
    grid: Grid, request: LogRequest, asked: AskedColumns, memory: ShapeMemory, remarks: _Told, problems: LogProblems
) -> tuple[tuple[Sub, ...], list[tuple[str, Shape]]]:
    subs: list[Sub] = []
    shapes: list[tuple[str, Shape]] = []
    probe = next((row for row in grid.rows if memory.knows(row.cells)), None)
    known_columns = memory.shape(probe.cells).columns if probe is not None else {}
    for section in sections_of(grid.rows, {**known_columns, **asked}):
        shape = memory.shape(section.heading.cells)
        columns = {**shape.columns, **asked}
        if column := wants_zone(section):
            _ask_for_zone(column.heading, request)
        earlier = Known(shape.order, shape.dates, columns["dates"].heading if "dates" in columns else "")
        inside, seen = _of_section(section, grid, request, columns, earlier, remarks, problems)
        subs += inside
        shapes.append((section.shape, Shape(columns, seen.order, seen.dates)))
    return tuple(subs), shapes


def _of_section(
    section: Section, grid: Grid, request: LogRequest, columns: AskedColumns, earlier: Known, remarks: _Told,
    problems: LogProblems,
) -> tuple[tuple[Sub, ...], Known]:
    if "exposure_s" not in section.columns and "count" not in section.columns and "end" not in section.columns:
        raise AskedFor("no column tells how long the frames were exposed",
                       f"name it: {answer('exposure_s', section.unread[0] if section.unread else 'HEADING')}")  # fmt: skip
    rows, about_rows = cell_rows(section, columns, grid.separator)
    times = row_times(rows, section, request.path.stem, request.today, earlier, problems)
    subs, about_subs = subs_of(times.times, section, request, problems)
    remarks.say((*about_rows, *times.told, *about_subs, *_not_read(section)))
    return subs, replace(times.known, said=earlier.said)


def _not_read(section: Section) -> tuple[str, ...]:
    fwhm = section.columns.get("fwhm")
    unread = [quoted(heading) for heading in section.unread]
    remarks = (f"not read: {', '.join(unread)}",) if unread else ()
    if fwhm is not None and fwhm.unit != "arcsec":
        cure = answer("fwhm_arcsec", fwhm.heading)
        remarks = (*remarks, f"{quoted(fwhm.heading)} is not read: in arcsec it would be, with {cure}")
    return remarks


def _ask_for_zone(heading: str, request: LogRequest) -> None:
    if request.time_zone is None:
        raise AskedFor(f"{quoted(heading)} is a local time, and no zone is given", "name it, as in --time-zone Europe/Athens")
