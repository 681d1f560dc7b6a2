"""A grading table -> what it measured of each frame, joined by the frame's name, whatever its path or ending, or by its start."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.discards import stem_met
from sitegen.authoring.captures.record import Frame, FrameMeasures, FrameRecord
from sitegen.authoring.recorded.asked_columns import AskedColumns
from sitegen.authoring.recorded.cells import CellRow, cell_rows
from sitegen.authoring.recorded.counts import Verdicts, kept_of, verdicts_of
from sitegen.authoring.recorded.doubts import AskedFor, answer, either
from sitegen.authoring.recorded.grid import GridRow
from sitegen.authoring.recorded.moments_of_rows import Known, row_times, wants_zone
from sitegen.authoring.recorded.numbers import number_in
from sitegen.authoring.recorded.other_cells import elongation_of_eccentricity
from sitegen.authoring.recorded.recorded_files import RecordedRequest
from sitegen.authoring.recorded.sections import Section, sections_of
from sitegen.authoring.recorded.shapes import Shape
from sitegen.authoring.recorded.table_by_example import read_grid
from sitegen.diary.rig import Rig
from sitegen.problems import DiaryProblems, errors_in, one_line
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.standing_train import train_at
from sitegen.reading.capture_logs.wall_clock import Stamp, settle, zone_of
from sitegen.reading.nodes import quoted

NEAR = timedelta(seconds=1)
ARCSEC_OF_MICROMETRE = 206.265
"""Arcseconds of a micrometre at a millimetre: 180 · 3600 / (1000 π)."""
_VERDICTS = ("good", "bad", "verdict")


class Measured(Struct, frozen=True):
    """`of_frame` by the frame's identity; `told` how the table was understood, and which rows met no frame."""

    of_frame: Mapping[int, FrameMeasures]
    told: tuple[str, ...] = ()


class _Graded(Struct, frozen=True):
    """One row: what it names, when it began where it names nothing, what it measured. `fwhm` is in the unit of its column."""

    name: str
    start: datetime | None
    measures: FrameMeasures


def read_measures(
    path: Path, frames: Sequence[Frame], rig: Rig | None, time_zone: str | None, today: date, recorded: RecordedRequest
) -> Measured:
    """Raises DiaryProblems where the table cannot be read as a whole: half of the verdicts would be no grading."""
    problems = LogProblems(str(path))
    request = LogRequest(path, str(path), path.name, None, None, None, None, time_zone, (str(path), 1, 1), today)
    graded: list[_Graded] = []
    remarks: list[str] = []
    try:
        grid = read_grid(path, problems)
        for section in sections_of(grid.rows, _columns(grid.rows, recorded)) if grid is not None else ():
            rows, about = cell_rows(section, recorded.columns, grid.separator if grid is not None else "")
            remarks += about
            graded += _graded(rows, section, request, recorded, remarks, problems)
    except AskedFor as open_question:
        problems.error(open_question.wrong, open_question.remedy)
    if errors_in(problems.all()):
        raise DiaryProblems(problems.all())
    of_frame, strangers = _joined(graded, frames)
    if not of_frame:
        remedy = "it has their names, with or without folder and ending, or their starts"
        problems.error("names none of the frames gathered", remedy)
        raise DiaryProblems(problems.all())
    of_frame, unscaled = _in_arcsec(of_frame, frames, rig)
    remarks += _counts(strangers, unscaled)
    return Measured(of_frame, tuple(one_line(f"{path.name}: {line}") for line in remarks))


def _columns(rows: Sequence[GridRow], recorded: RecordedRequest) -> AskedColumns:
    shapes = (recorded.memory.shape(row.cells).columns for row in rows if recorded.memory.knows(row.cells))
    return {**next(shapes, {}), **recorded.columns}


def _graded(
    rows: Sequence[CellRow], section: Section, request: LogRequest, recorded: RecordedRequest, remarks: list[str],
    problems: LogProblems,
) -> list[_Graded]:  # fmt: skip
    _ask_for_unit(section)
    headings = {key: column.heading for key, column in section.columns.items()}
    verdicts = verdicts_of(rows, headings)
    if verdicts.good_counts or verdicts.bad_counts:
        verdicts = Verdicts()
    starts = {} if "file" in section.columns else _starts(rows, section, request, recorded, remarks, problems)
    graded = []
    for row in rows:
        try:
            measures = _measures(row, section, verdicts)
        except ValueProblem as doubt:
            column = section.columns[doubt.remedy]
            wrong = f"{quoted(column.heading)} is {quoted(row.cells[doubt.remedy])}, {doubt.wrong}"
            problems.error(wrong, "", row.row.place_of(column.index))
            continue
        graded.append(_Graded(row.cells.get("file", ""), starts.get(id(row)), measures))
    remarks += verdicts.told
    if section.unread:
        remarks.append(f"not read: {', '.join(map(quoted, section.unread))}")
    recorded.memory.remember(section.shape, Shape({**recorded.memory.shape(section.heading.cells).columns, **recorded.columns}))
    return graded


def _ask_for_unit(section: Section) -> None:
    fwhm = section.columns.get("fwhm")
    if fwhm is not None and fwhm.unit not in ("px", "arcsec"):
        raise AskedFor(f"{quoted(fwhm.heading)} may be in pixels or in arcseconds",
                       either(answer("fwhm_px", fwhm.heading), answer("fwhm_arcsec", fwhm.heading)))  # fmt: skip


def _starts(
    rows: Sequence[CellRow], section: Section, request: LogRequest, recorded: RecordedRequest, remarks: list[str],
    problems: LogProblems,
) -> Mapping[int, datetime]:  # fmt: skip
    """UTC by the row's identity."""
    if "start" not in section.columns:
        raise AskedFor("no column names the frames, nor tells their starts", f"name it: {answer('file', 'HEADING')}")
    if request.time_zone is None and (column := wants_zone(section)):
        wrong = f"{quoted(column.heading)} is a local time, and no zone is given"
        raise AskedFor(wrong, "name it, as in --time-zone Europe/Athens")
    said = recorded.columns["dates"].heading if "dates" in recorded.columns else ""
    times = row_times(rows, section, request.path.stem, request.today, Known(said=said), problems)
    remarks += times.told
    stamps = [Stamp(time.start, 0.0, time.row.row.start) for time in times.times]
    settled = settle(stamps, zone_of(request, problems), problems)
    return {id(time.row): start for time, start in zip(times.times, settled, strict=True) if start is not None}


def _measures(row: CellRow, section: Section, verdicts: Verdicts) -> FrameMeasures:
    """Raises ValueProblem, whose `remedy` is the key of the cell."""
    has_verdict = any(key in section.columns for key in _VERDICTS)
    kept = kept_of(row, verdicts) if has_verdict else None
    fwhm = _number(row, "fwhm", 0, 600)
    is_arcsec = fwhm is not None and section.columns["fwhm"].unit == "arcsec"
    elongation = _number(row, "elongation", 1, 100)
    if elongation is None and "eccentricity" in row.cells:
        try:
            elongation = round(elongation_of_eccentricity(row.cells["eccentricity"]), 4)
        except ValueProblem as doubt:
            raise ValueProblem(doubt.wrong, "eccentricity") from None
    stars = _number(row, "stars", 0, 1e7)
    return FrameMeasures(
        fwhm_arcsec=fwhm if is_arcsec else None, fwhm_px=None if is_arcsec else fwhm, elongation=elongation,
        stars=int(stars) if stars is not None else None, kept=kept, reason=row.cells.get("reason", "") if kept is False else "",
    )  # fmt: skip


def _number(row: CellRow, key: str, least: float, most: float) -> float | None:
    if key not in row.cells:
        return None
    try:
        return number_in(row.cells[key], least, most)
    except ValueProblem as doubt:
        raise ValueProblem(doubt.wrong, key) from None


def _joined(graded: Iterable[_Graded], frames: Sequence[Frame]) -> tuple[dict[int, FrameMeasures], int]:
    """By the frame's identity, and how many rows met none, or several that nothing tells apart."""
    by_stem: dict[str, list[Frame]] = {}
    for frame in frames:
        if frame.file is not None:
            by_stem.setdefault(frame.file.stem.casefold(), []).append(frame)
    in_order = sorted(frames, key=lambda frame: frame.start)
    of_frame: dict[int, FrameMeasures] = {}
    strangers = 0
    for row in graded:
        met = _by_name(row.name, by_stem) if row.name else _by_start(row.start, in_order)
        strangers += not met
        of_frame |= {id(frame): row.measures for frame in met}
    return of_frame, strangers


def _by_name(name: str, by_stem: Mapping[str, list[Frame]]) -> list[Frame]:
    """Of several of that name, those whose folders the row names, too; all where they show one exposure."""
    path = name.replace("\\", "/").casefold()
    stem = stem_met(path.rpartition("/")[2], by_stem.keys())
    frames = by_stem.get(stem or "", [])
    if len({frame.start for frame in frames}) <= 1:
        return frames
    folders = path.split("/")[:-1]
    shared = [_shared_folders(folders, frame) for frame in frames]
    best = [frame for frame, count in zip(frames, shared, strict=True) if count == max(shared) > 0]
    return best if len({frame.start for frame in best}) == 1 else []


def _shared_folders(folders: Sequence[str], frame: Frame) -> int:
    """How many folders above the file are of the same name."""
    own = frame.file.directory.casefold().split("/") if frame.file is not None else []
    count = 0
    for first, second in zip(reversed(folders), reversed(own), strict=False):
        if first != second:
            break
        count += 1
    return count


def _by_start(start: datetime | None, frames: Sequence[Frame]) -> list[Frame]:
    return [frame for frame in frames if start is not None and abs(frame.start - start) < NEAR]


def _in_arcsec(
    of_frame: Mapping[int, FrameMeasures], frames: Iterable[Frame], rig: Rig | None
) -> tuple[dict[int, FrameMeasures], int]:
    """Widths in pixels by the scale of the frame's train; without one they are left out, and counted."""
    scaled, unscaled = dict(of_frame), 0
    for frame in frames:
        measures = of_frame.get(id(frame))
        if measures is None or measures.fwhm_px is None:
            continue
        scale = scale_arcsec_px(frame.record, frame.start, rig)
        unscaled += scale is None
        if scale is not None:
            scaled[id(frame)] = replace(measures, fwhm_arcsec=round(measures.fwhm_px * scale, 3))
    return scaled, unscaled


def scale_arcsec_px(record: FrameRecord, start: datetime, rig: Rig | None) -> float | None:
    """Of the frame's own, binned pixels: by the rig as it stood, else by the header."""
    if rig is not None:
        train = train_at(rig, None, start)
        focal_length_mm = train.telescope.focal_length_mm * train.telescope.factor
        return ARCSEC_OF_MICROMETRE * train.camera.pixel_um * (record.binning or 1) / focal_length_mm
    if record.pixel_um and record.focal_length_mm:
        return ARCSEC_OF_MICROMETRE * record.pixel_um / record.focal_length_mm
    return None


def _counts(strangers: int, unscaled: int) -> Iterable[str]:
    if strangers:
        yield f"{strangers} row{'' if strangers == 1 else 's'} met no frame gathered, or several of one name"
    if unscaled:
        yield f"FWHM of {unscaled} frame{'' if unscaled == 1 else 's'} is in pixels, whose scale nothing tells: name the --rig"


def with_measures(frames: Iterable[Frame], measured: Measured) -> tuple[Frame, ...]:
    return tuple(replace(frame, measures=measured.of_frame[id(frame)]) if id(frame) in measured.of_frame else frame
                 for frame in frames)  # fmt: skip
