"""Times of a text log's lines -> moments: each line's own date, the date above it, or that of the file's name or first line."""

import re
from collections.abc import Sequence
from datetime import date, datetime, timedelta

from msgspec import Struct

from sitegen.authoring.recorded.clock_times import NOON_S, Clock, Moment, read_moment_cell
from sitegen.authoring.recorded.day_order import Day, as_datetime, date_in_text, order_of
from sitegen.authoring.recorded.doubts import AskedFor, answer, either
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.nodes import quoted

_DATE_LETTERS = ("%d", "%j", "%b", "%B", "%m")
_YEARS = ("%Y", "%y")
_ORDERS = {"tg": "day", "ta": "month"}


class LineTime(Struct, frozen=True, eq=False):
    """A time as one line has it; 'date' lines have no clock, and hold for the lines below them."""

    moment: Moment
    name: str
    line: int
    form: str


def read_line_time(text: str, form: str, name: str, line: int) -> LineTime:
    """Raises ValueProblem."""
    moment = _by_form(text, form) if "%" in form else read_moment_cell(text)
    if name != "date" and not moment.clocks:
        raise ValueProblem(f"{quoted(text)}, without a time of day", "")
    if name == "date" and moment.day is None:
        raise ValueProblem(f"{quoted(text)}, without a day", "")
    return LineTime(moment, name, line, form)


def _by_form(text: str, form: str) -> Moment:
    has_day = any(letter in form for letter in _DATE_LETTERS)
    if has_day and not any(letter in form for letter in _YEARS):
        raise ValueProblem(f"{quoted(text)}, a date without its year", "write {date:…%Y} for a line that has it")
    try:
        moment = datetime.strptime(text, form)  # noqa: DTZ007 - an offset is kept where the form has one
    except (ValueError, re.error):  # the second of a form that names a thing twice
        raise ValueProblem(f"{quoted(text)}, not as {form} says", "") from None
    day = Day(text, {"": moment.date()}) if has_day else None
    rest_s = moment.minute * 60 + moment.second + moment.microsecond / 1e6
    clocks = (Clock(text, moment.hour, rest_s),) if any(letter in form for letter in ("%H", "%I")) else ()
    return Moment(text, day, clocks, moment.tzinfo)


def datetimes_of(
    times: Sequence[LineTime], titles: Sequence[str], today: date, said: str
) -> tuple[list[datetime], tuple[str, ...]]:
    """In the order given; aware where a line tells its offset. `titles` are the file's first line and its name, either of which
    may bear the date. Raises AskedFor."""
    days = [time.moment.day for time in times if time.moment.day is not None]
    form = next((time.form for time in times if time.form in _ORDERS), "")
    order = order_of(days, today, "{date}", _ORDERS.get(form, ""))
    remarks = [order.why] if order.why else []
    current, last = _first_day(times, titles, today, said, remarks)
    moments = []
    for time in times:
        own = time.moment.day
        if own is not None:
            current = own.readings[""] if "" in own.readings else own.readings[order.order]
            last = None if time.name == "date" else last
        seconds = time.moment.clocks[0].seconds if time.moment.clocks else 0.0
        if time.name != "date" and own is None and last is not None and seconds < last - 3600:
            current += timedelta(days=1)
        moment = as_datetime(current, seconds)
        moments.append(moment.replace(tzinfo=time.moment.zone) if time.moment.zone is not None else moment)
        last = seconds if time.name != "date" else None
    if remarks and moments and not days:
        remarks[-1] += f", and run on to {moments[-1].date()}"
    return moments, tuple(remarks)


def _first_day(
    times: Sequence[LineTime], titles: Sequence[str], today: date, said: str, remarks: list[str]
) -> tuple[date, float | None]:
    """The date of the lines above the first date, where any line needs it."""
    undated = next((time for time in times if time.moment.clocks), None)
    if undated is None or undated.moment.day is not None or times[0].name == "date":
        return date.min, None
    dated = {day: title for title in reversed(titles) if (day := date_in_text(title, today)) is not None}
    if len(dated) > 1:
        raise AskedFor(f"its first line and its name tell different dates: {' and '.join(map(str, sorted(dated)))}",
                       "name the file by the right one")  # fmt: skip
    day = next(iter(dated), None)
    if day is None:
        raise AskedFor("no line and no name of the file tells the date",
                       "name the file by its date, as in 2026-04-18.log, or give a pattern with {date:%Y-%m-%d}")  # fmt: skip
    seconds = undated.moment.clocks[0].seconds
    if seconds < NOON_S and not said:
        raise AskedFor(f"{undated.moment.clocks[0].text} of a log of {day} may be on that day, or in the night that began on it",
                       either(answer("dates", "calendar"), answer("dates", "evening")))  # fmt: skip
    remarks.append(f"its lines begin on {day}, as {quoted(dated[day])} says")
    return (day + timedelta(days=1) if said == "evening" and seconds < NOON_S else day), None
