"""The date and time cells of a table -> when each row began and ended, by the clock it was written with."""

from collections.abc import Mapping, Sequence
from datetime import UTC, date, datetime, timedelta, tzinfo

from msgspec import Struct

from sitegen.authoring.recorded.cells import CellRow
from sitegen.authoring.recorded.clock_times import Clock, HoursTold, Moment, evening_seconds, hours_of, read_moment_cell
from sitegen.authoring.recorded.day_order import Day, as_datetime, date_in_text, order_in_form, order_of
from sitegen.authoring.recorded.doubts import AskedFor, answer
from sitegen.authoring.recorded.nights import DatedTime, evenings_of, moment_of, running_on
from sitegen.authoring.recorded.sections import Column, Section
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.nodes import quoted

KEYS = ("start", "date", "evening", "end")
_UTC_WORDS: Mapping[str, tzinfo] = {"utc": UTC}


class Known(Struct, frozen=True):
    """What was seen of tables of this shape: what stands first in a date, and whether 'calendar' or 'evening' dates the hours
    after midnight. `said` is the author's word on the second."""

    order: str = ""
    dates: str = ""
    said: str = ""


class RowTime(Struct, frozen=True):
    """`start` aware where the row tells its clock; `span_s` to its end, None where it does not say."""

    row: CellRow
    start: datetime
    span_s: float | None = None


class TimesTold(Struct, frozen=True):
    """`known` is what may be remembered."""

    times: tuple[RowTime, ...]
    told: tuple[str, ...]
    known: Known


class _Parsed(Struct, frozen=True):
    row: CellRow
    cells: Mapping[str, Moment]

    @property
    def day(self) -> Day | None:
        return next((moment.day for key in ("start", "date", "evening") if (moment := self.cells.get(key)) and moment.day), None)

    @property
    def own_day(self) -> bool:
        return "start" in self.cells and self.cells["start"].day is not None


def row_times(
    rows: Sequence[CellRow], section: Section, name: str, today: date, earlier: Known, problems: LogProblems
) -> TimesTold:
    """`name` is the file's, which may bear the date. Rows in error are left out. Raises AskedFor."""
    if "start" not in section.columns:
        raise AskedFor("no column tells when the frames began",
                       f"name it: {answer('start', 'HEADING')}; where only nights are known, list the totals as 'recalled' "
                       "in the entry")  # fmt: skip
    parsed = [row for row in (_parsed(row, section, problems) for row in rows) if row is not None]
    days = [day for row in parsed for moment in row.cells.values() for day in (moment.day, moment.until) if day is not None]
    heading = next((section.columns[key].heading for key in ("date", "evening", "start") if key in section.columns), "")
    said = next((first for key in KEYS if key in section.columns and (first := order_in_form(section.columns[key].form))), "")
    order = order_of(days, today, heading, said or earlier.order)
    if said and order.order not in ("", said):
        raise AskedFor(f"{quoted(heading)} is {order.order} first, not {said} first", "correct --columns")
    hours = hours_of([moment for row in parsed for key in ("start", "end") if (moment := row.cells.get(key))],
                     section.columns["start"].heading, section.columns["start"].form)  # fmt: skip
    reading = _Reading(section, order.order, hours, name, today, earlier)
    times, evening = reading.times(parsed)
    serial = next((day for day in days if day.is_serial), None)
    remarks = [f"{serial.text} is {serial.readings['']}, by the day numbers of spreadsheets (from 1900)"] if serial else []
    remarks += [why for why in (order.why, hours.why, *reading.told) if why]
    return TimesTold(times, tuple(remarks), Known(order.order or earlier.order, evening or earlier.dates))


def _parsed(row: CellRow, section: Section, problems: LogProblems) -> _Parsed | None:
    cells = {}
    for key in KEYS:
        if key not in row.cells:
            continue
        try:
            cells[key] = read_moment_cell(row.cells[key])
        except ValueProblem as doubt:
            column = section.columns[key]
            wrong = f"{quoted(column.heading)} is {quoted(row.cells[key])}, {doubt.wrong}"
            problems.error(wrong, doubt.remedy, row.row.place_of(column.index))
            return None
    if "start" not in cells or not cells["start"].clocks:
        column = section.columns["start"]
        wrong = f"{quoted(column.heading)} tells no time of day"
        problems.error(wrong, "write when the frame began", row.row.place_of(column.index))
        return None
    return _Parsed(row, cells)


class _Reading(Struct):
    """One section, once the order of its dates and the way of its hours are known."""

    section: Section
    order: str
    hours: HoursTold
    name: str
    today: date
    known: Known
    told: list[str] = []

    def times(self, parsed: Sequence[_Parsed]) -> tuple[tuple[RowTime, ...], str]:
        self.told = []
        if not any(row.day for row in parsed):
            starts, evening = self._undated(parsed), ""
        else:
            starts, evening = self._dated(parsed)
        return tuple(self._row_time(row, start) for row, start in zip(parsed, starts, strict=True) if start is not None), evening

    def _undated(self, parsed: Sequence[_Parsed]) -> Sequence[datetime | None]:
        """The date stands over the table, or in the file's name."""
        if not parsed:
            return []
        titles = (*self.section.before, self.name)
        dated = [(day, text) for text in titles if (day := date_in_text(text, self.today)) is not None]
        if not dated:
            raise AskedFor("no column, no line over the table and no name of the file tells the date",
                           "add a column with the date of each row")  # fmt: skip
        day, text = dated[0]
        seconds = [self._seconds(row.cells["start"].clocks[0]) for row in parsed]
        if seconds[0] < 43_200:
            raise AskedFor(f"{day} ({quoted(text)}) may be the date of the evening or of the morning after",
                           "add a column with the date of each row")  # fmt: skip
        self.told.append(f"its first row is of {day}, as {quoted(text)} says; times that run on over midnight are a day later")
        return running_on(seconds, day)

    def _dated(self, parsed: Sequence[_Parsed]) -> tuple[Sequence[datetime | None], str]:
        apart = [row for row in parsed if not row.own_day and row.day is not None]
        times = [DatedTime(self._date(row.day), self._seconds(row.cells["start"].clocks[0]), row.row.cells.get("filter", ""),
                           row.cells["start"].clocks[0].text) for row in apart if row.day is not None]  # fmt: skip
        column = self.section.columns.get("date") or self.section.columns.get("evening")
        both = any(row.day.is_evening for row in apart if row.day is not None)
        said = self.known.said or ("evening" if both or "evening" in self.section.columns else "")
        evening = evenings_of(times, column.heading if column else "", said, self.known.dates)
        if evening.why:
            self.told.append(evening.why)
        moments = iter([moment_of(time, evening.is_evening) for time in times])
        starts = [next(moments) if not row.own_day and row.day is not None else self._own_start(row) for row in parsed]
        return starts, ("evening" if evening.is_evening else "calendar") if evening.why else ""

    def _own_start(self, row: _Parsed) -> datetime | None:
        day = row.cells["start"].day
        return as_datetime(self._date(day), self._seconds(row.cells["start"].clocks[0])) if day is not None else None

    def _date(self, day: Day) -> date:
        return day.readings[""] if "" in day.readings else day.readings[self.order]

    def _seconds(self, clock: Clock) -> float:
        return evening_seconds(clock) if self.hours.is_evening_clock and not clock.half else clock.seconds

    def _row_time(self, row: _Parsed, start: datetime) -> RowTime:
        moment = row.cells["start"]
        zone = moment.zone or _UTC_WORDS.get(self._unit())
        aware = start.replace(tzinfo=zone).astimezone(UTC) if zone is not None else start
        end = row.cells.get("end")
        clock = moment.clocks[1] if len(moment.clocks) == 2 else end.clocks[0] if end is not None and end.clocks else None
        if clock is None:
            return RowTime(row.row, aware)
        until = moment.until or (end.day if end is not None else None)
        if until is not None:
            stop = as_datetime(self._date(until), self._seconds(clock))
        else:
            stop = datetime.combine(start.date(), datetime.min.time()) + timedelta(seconds=self._seconds(clock))
            stop += timedelta(days=1) if stop < start else timedelta()
        return RowTime(row.row, aware, (stop - start).total_seconds())

    def _unit(self) -> str:
        return next((unit for key in ("start", "date") if key in self.section.columns
                     and (unit := self.section.columns[key].unit) in ("utc", "local")), "")  # fmt: skip


def wants_zone(section: Section) -> Column | None:
    """The column whose heading says that its times are local."""
    return next((section.columns[key] for key in KEYS if key in section.columns and section.columns[key].unit == "local"), None)
