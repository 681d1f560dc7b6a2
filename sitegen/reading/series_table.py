"""A table that an instrument wrote beside the camera: a time in every row, and what was read then."""

import csv
import re
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
from msgspec import Struct

from sitegen.problems import did_you_mean, errors_in
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.moments import read_moment
from sitegen.reading.capture_logs.table_text import read_table_text
from sitegen.reading.nodes import quoted
from sitegen.sky.arrays import Floats

TIME, STATE = "time", "state"
GUIDING = ("ra_arcsec", "dec_arcsec")
IN_PIXELS = ("ra_px", "dec_px")
WEATHER = ("temperature_c", "humidity_percent", "wind_m_s", "cloud_percent", "sky_mag_arcsec2")
MEASURED = (*GUIDING, *IN_PIXELS, *WEATHER)
COLUMNS = (TIME, STATE, *MEASURED)
HEADING_WITHIN = 200
"""Programs write a few lines about themselves first."""
NOT_GUIDING = ("lost", "settl", "dither", "verloren", "beruhig")
"""A row whose state holds one of these words says nothing of the guiding."""
MARKS = ",;\t"
_PLAIN_TIME = re.compile(r"(19|20)\d\d-[01]\d-[0-3]\d[T ][0-2]\d:[0-5]\d(:[0-5]\d(\.\d{1,6})?)?", re.ASCII)
"""What all at once may be read as times. The library would read more, 'now' among it."""
EPOCH = np.datetime64("1970-01-01T00:00:00", "us")


class SeriesTable(Struct, frozen=True):
    """`times_s` are UTC unix seconds, rising; `columns` by canonical name, NaN where a cell is empty, and of the guiding where a
    row tells of a lost star, of settling or of a dither."""

    times_s: Floats
    columns: Mapping[str, Floats]


class _Heading(Struct, frozen=True):
    """`line` counted from 1; `places` of the columns by canonical name."""

    line: int
    mark: str
    places: Mapping[str, int]


def read_series(path: Path, names: Mapping[str, str], zone: ZoneInfo | None, problems: LogProblems) -> SeriesTable | None:
    """`names`: what the table calls the canonical columns. None after an error."""
    text = read_table_text(path, problems)
    if text is None:
        return None
    lines = text.split("\n")
    heading = _heading(lines, {**{name: name for name in COLUMNS}, **names})
    if heading is None:
        _no_heading(lines, names, problems)
        return None
    rows = _rows(lines, heading)
    times = _times_s([row[heading.places[TIME]].strip() for _, row in rows], [number for number, _ in rows], zone, problems)
    columns = {name: _numbers(rows, heading, name, problems) for name in MEASURED if name in heading.places}
    if times is None or errors_in(problems.all()):
        return None
    return _in_order(times, columns, _not_guiding(rows, heading))


def _heading(lines: Sequence[str], names: Mapping[str, str]) -> _Heading | None:
    """The first line with a column of times and one of readings."""
    wanted = {heading.casefold().strip(): name for name, heading in names.items()}
    for number, line in enumerate(lines[:HEADING_WITHIN], start=1):
        mark = max(MARKS, key=line.count)
        cells = [cell.strip().casefold() for cell in _cells(line.removeprefix("#").strip(), mark)]
        places = {wanted[cell]: index for index, cell in reversed(list(enumerate(cells))) if cell in wanted}
        if TIME in places and any(name in places for name in MEASURED):
            return _Heading(number, mark, places)
    return None


def _no_heading(lines: Sequence[str], names: Mapping[str, str], problems: LogProblems) -> None:
    first = next((line for line in lines if line.strip()), "")
    cells = [cell.strip() for cell in _cells(first, max(MARKS, key=first.count))]
    near = next((hint for name in names.values() if (hint := did_you_mean(name, cells)) and hint != name), None)
    example = f"name them as in columns: {{time: {cells[0] if cells and cells[0] else 'Time'}, ra_arcsec: …}}"
    remedy = f"did you mean '{near}'?" if near else example
    problems.error(f"no line names a column of times and one of {', '.join(MEASURED)}", remedy)


def _cells(line: str, mark: str) -> list[str]:
    try:
        return next(csv.reader([line], delimiter=mark, skipinitialspace=True), [])
    except csv.Error:
        return [line]


def _rows(lines: Sequence[str], heading: _Heading) -> list[tuple[int, list[str]]]:
    """With the number of their lines. Comments, and notes in between, which have one cell or no time, are left out."""
    width, time = 1 + max(heading.places.values()), heading.places[TIME]
    numbered = enumerate(lines[heading.line :], start=heading.line + 1)
    cells = ((number, _cells(line, heading.mark)) for number, line in numbered if line and not line.startswith("#"))
    return [(number, row + [""] * (width - len(row))) for number, row in cells if len(row) > max(time, 1) and row[time].strip()]


def _times_s(texts: list[str], numbers: list[int], zone: ZoneInfo | None, problems: LogProblems) -> Floats | None:
    """UTC unix seconds; a bare time counts in the zone, else in UTC. All at once where all of them are written alike."""
    are_utc = {text.endswith("Z") for text in texts}
    if len(are_utc) > 1 and zone is not None:
        return _times_one_by_one(texts, numbers, zone, problems)
    plain = [text.removesuffix("Z") for text in texts]
    try:
        moments = np.array(plain, dtype="datetime64[us]") if all(map(_PLAIN_TIME.fullmatch, plain)) else None
    except ValueError:
        moments = None
    if moments is None:
        return _times_one_by_one(texts, numbers, zone, problems)
    bare_s: Floats = (moments - EPOCH) / np.timedelta64(1, "s")
    return bare_s if zone is None or are_utc == {True} else bare_s - _offsets_s(bare_s, zone)


def _times_one_by_one(texts: list[str], numbers: list[int], zone: ZoneInfo | None, problems: LogProblems) -> Floats | None:
    times_s: list[float] = []
    for text, number in zip(texts, numbers, strict=True):
        try:
            moment = read_moment(text)
        except ValueProblem as doubt:
            problems.error(f"'{TIME}' is {quoted(text)}, {doubt.wrong}", doubt.remedy, lambda number=number: (number, 1))  # type: ignore[misc]
            if problems.is_full:
                return None
            continue
        times_s.append(moment.replace(tzinfo=moment.tzinfo or zone or UTC).timestamp())
    return np.array(times_s) if len(times_s) == len(texts) else None


def _offsets_s(bare_s: Floats, zone: ZoneInfo | None) -> Floats:
    """Of the zone's clock from UTC at each time, looked up once an hour; the hour that comes twice counts as its first."""
    hours, where = np.unique(np.floor(bare_s / 3600.0), return_inverse=True)
    offsets = [datetime.fromtimestamp(hour * 3600.0, UTC).replace(tzinfo=zone).utcoffset() for hour in hours.tolist()]
    return np.array([offset.total_seconds() if offset else 0.0 for offset in offsets])[where]


def _numbers(rows: list[tuple[int, list[str]]], heading: _Heading, name: str, problems: LogProblems) -> Floats:
    """Commas may stand for points where they do not part the columns."""
    place = heading.places[name]
    cells = [row[place].strip() for _, row in rows]
    if heading.mark != ",":
        cells = [cell.replace(",", ".") for cell in cells]
    try:
        values = np.array([cell or "nan" for cell in cells], dtype=float)
        return np.where(np.isfinite(values), values, np.nan)
    except ValueError:
        wrong = [(number, cell) for (number, _), cell in zip(rows, cells, strict=True) if not _is_number(cell or "nan")]
        (line, first), more = wrong[0], len(wrong) - 1
        so_many = f" (so in {more} more {'row' if more == 1 else 'rows'})" if more else ""
        remedy = "leave the cell empty where nothing was read"
        problems.error(f"'{name}' is {quoted(first)}, no number{so_many}", remedy, lambda: (line, 1))
        return np.full(len(cells), np.nan)


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


def _not_guiding(rows: list[tuple[int, list[str]]], heading: _Heading) -> np.ndarray:
    if STATE not in heading.places:
        return np.zeros(len(rows), dtype=bool)
    states = (row[heading.places[STATE]].casefold() for _, row in rows)
    return np.array([any(word in state for word in NOT_GUIDING) for state in states], dtype=bool)


def _in_order(times_s: Floats, columns: Mapping[str, Floats], not_guiding: np.ndarray) -> SeriesTable:
    order = np.argsort(times_s, kind="stable")
    kept = {
        name: np.where(not_guiding, np.nan, values)[order] if name in (*GUIDING, *IN_PIXELS) else values[order]
        for name, values in columns.items()
    }
    return SeriesTable(times_s[order], kept)
