"""Dates as a column writes them: whether the day or the month comes first is told by the whole column."""

import re
from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta
from functools import lru_cache

from msgspec import Struct

from sitegen.authoring.recorded.doubts import AskedFor, answer, either
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import FIRST_DIGITAL_YEAR, POSSIBLE_YEARS

ORDERS: Mapping[str, tuple[int, int, int]] = {"day": (0, 1, 2), "month": (1, 0, 2), "year": (2, 1, 0)}
"""What stands first: the places of day, month and year."""
FORMS = {"day": "%d{0}%m{0}{1}", "month": "%m{0}%d{0}{1}", "year": "{1}{0}%m{0}%d"}
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_GERMAN = {"mär": 3, "mrz": 3, "mae": 3, "mai": 5, "okt": 10, "dez": 12}
_NUMBERS = re.compile(r"(\d{1,2})\s?([-/.])\s?(\d{1,2})\s?\2\s?(\d{4}|\d{2})\.?", re.ASCII)
_YEAR_FIRST = re.compile(r"(\d{4})([-/.])(\d{1,2})\2(\d{1,2})", re.ASCII)
_EIGHT = re.compile(r"(\d{4})(\d{2})(\d{2})", re.ASCII)
_NAMED_DAY_FIRST = re.compile(r"(\d{1,2})(?:st|nd|rd|th|\.)?[ -]?([^\W\d]{3,10})\.?,?[ -](\d{4}|\d{2})", re.I)
_NAMED_MONTH_FIRST = re.compile(r"([^\W\d]{3,10})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})", re.I)
_WEEKDAY = re.compile(r"^[^\W\d]{2,10}[.,]{0,2} (?=\d)|^(?:mon|tue|wed|thu|fri|sat|sun)\w*[.,]{1,2} ", re.I)
_TWO_EVENINGS = re.compile(r"(\d{1,2})\.?\s?[/-]\s?(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})", re.ASCII)
_ISO_EVENINGS = re.compile(r"(\d{4})-(\d{2})-(\d{2})\s?/\s?(?:\d{2}-)?(\d{2})", re.ASCII)
_IN_TEXT = re.compile(
    r"(?<!\d)(?:\d{4}[-_.]\d{2}[-_.]\d{2}|\d{8}|\d{1,2}\.\d{1,2}\.\d{4}|\d{1,2}[/-]\d{1,2}[/-]\d{4})(?!\d)",
    re.ASCII,
)
_SERIAL_DAYS = range(32_874, 73_050)  # 1990 to 2099, in days of spreadsheets
_EPOCH = date(1899, 12, 30)


class Day(Struct, frozen=True):
    """A date as written: its readings by what stands first, '' where there is but one. `is_evening` where it names a night by
    both its days: '18./19.04.2026'."""

    text: str
    readings: Mapping[str, date]
    is_evening: bool = False
    separator: str = ""
    is_serial: bool = False


@lru_cache(maxsize=4_096)
def read_day(text: str) -> Day:
    """Raises ValueProblem."""
    plain = _WEEKDAY.sub("", text.strip())
    for read in (_by_name, _by_numbers, _of_two_evenings):
        if (day := read(text, plain)) is not None:
            if not day.readings:
                raise ValueProblem("no day of any year", "")
            return day
    if re.fullmatch(r"\d{1,2}[./-]\d{1,2}\.?", plain):
        raise ValueProblem("a date without its year", "write the year, too")
    raise ValueProblem("no date", "write it as in 2026-04-18")


def serial_day(number: float) -> date | None:
    """Of a spreadsheet's day number (1900 system, ECMA-376 part 1, 18.17.4.1); None for a number that is none."""
    return _EPOCH + timedelta(days=int(number)) if _SERIAL_DAYS[0] <= number < _SERIAL_DAYS[-1] + 1 else None


def _by_name(text: str, plain: str) -> Day | None:
    if match := _NAMED_DAY_FIRST.fullmatch(plain):
        day, name, year = match.groups()
    elif match := _NAMED_MONTH_FIRST.fullmatch(plain):
        name, day, year = match.groups()
    else:
        return None
    month = _month(name)
    return None if month is None else Day(text, _only(_year(year), month, int(day)))


def _month(name: str) -> int | None:
    start = name.casefold()[:3]
    return _GERMAN.get(start) or (_MONTHS.index(start) + 1 if start in _MONTHS else None)


def _by_numbers(text: str, plain: str) -> Day | None:
    if match := _YEAR_FIRST.fullmatch(plain) or _EIGHT.fullmatch(plain):
        parts = [part for part in match.groups() if part.isdigit()]
        return Day(text, _only(*map(int, parts)))
    if match := _NUMBERS.fullmatch(plain):
        first, separator, second, last = match.groups()
        numbers = (first, second, last)
        readings: dict[str, date] = {}
        for order, (day, month, year) in ORDERS.items():
            if order == "year" and (separator != "-" or len(last) == 4):
                continue
            if only := _only(_year(numbers[year]), int(numbers[month]), int(numbers[day])):
                readings[order] = only[""]
        return Day(text, readings, separator=separator)
    return None


def _of_two_evenings(text: str, plain: str) -> Day | None:
    if match := _TWO_EVENINGS.fullmatch(plain):
        first, second, month, year = match.groups()
        later = _only(_year(year), int(month), int(second))
        evening = {order: day - timedelta(days=1) for order, day in later.items()}
        return Day(text, {order: day for order, day in evening.items() if day.day == int(first)}, is_evening=True)
    if match := _ISO_EVENINGS.fullmatch(plain):
        evening = _only(*map(int, match.groups()[:3]))
        return Day(text, {order: day for order, day in evening.items() if (day + timedelta(days=1)).day == int(match.group(4))},
                   is_evening=True)  # fmt: skip
    return None


def _only(year: int, month: int, day: int) -> dict[str, date]:
    try:
        return {"": date(year, month, day)} if year in POSSIBLE_YEARS else {}
    except ValueError:
        return {}


def _year(text: str) -> int:
    """Two digits stand for a year that a digital camera can have seen."""
    year = int(text)
    return year if len(text) == 4 else year + (1900 if year >= FIRST_DIGITAL_YEAR % 100 else 2000)


class OrderTold(Struct, frozen=True):
    """`order` is '' where no date of the column leaves a choice; `why` says what told it."""

    order: str
    why: str = ""


def order_of(days: Sequence[Day], today: date, heading: str, earlier: str = "") -> OrderTold:
    """What stands first in the whole column; `earlier` is what its author said, or what tables of this shape had before. Raises
    AskedFor where it stays open."""
    open_days = [day for day in days if "" not in day.readings]
    if not open_days:
        return OrderTold("")
    orders = [order for order in ORDERS if all(order in day.readings for day in open_days)]
    if not orders:
        raise _contradiction(open_days)
    past = [order for order in orders if not any(day.readings[order] > today + timedelta(days=1) for day in open_days)]
    if len(past or orders) == 1:
        return OrderTold((past or orders)[0], _why(open_days, (past or orders)[0], len(orders) > 1))
    if earlier in (past or orders):
        return OrderTold(earlier, f"{open_days[0].text} is {earlier} first, as was said of such tables")
    if all(len({day.readings[order] for order in (past or orders)}) == 1 for day in open_days):
        return OrderTold(orders[0])
    if all(day.separator == "." for day in open_days):
        return OrderTold("day", f"{open_days[0].text} is day first, as dates with points are")
    raise _open(open_days[0], past or orders, heading)


def _why(days: Sequence[Day], order: str, is_by_future: bool) -> str:
    """By the date that leaves no other reading."""
    if is_by_future:
        return f"{days[0].text} is {order} first: otherwise days would lie in the future"
    telling = next((day for day in days if len(day.readings) == 1), days[0])
    match = _NUMBERS.fullmatch(_WEEKDAY.sub("", telling.text.strip()))
    numbers = match.group(1, 3) if match else ("", "")
    too_large = next((number for number in numbers if number and int(number) > 12), "")
    since = f", since {int(too_large)} is no month" if too_large else ""
    return f"{telling.text} is {order} first{since}"


def _contradiction(days: Sequence[Day]) -> AskedFor:
    first = days[0]
    other = next((day for day in days if not day.readings.keys() & first.readings.keys()), days[-1])
    return AskedFor(f"{first.text} and {other.text} stand in one column, and one has the day first, the other the month",
                    "write the dates one way, best as in 2026-04-18")  # fmt: skip


def _open(day: Day, orders: Sequence[str], heading: str) -> AskedFor:
    year = "%Y" if re.search(r"\d{4}", day.text) else "%y"
    remarks = " or ".join(day.readings[order].isoformat() for order in orders)
    answers = (answer("date", heading, FORMS[order].format(day.separator, year)) for order in orders)
    return AskedFor(f"{day.text} may be {remarks}, and no row of the column tells which", either(*answers))


def order_in_form(form: str) -> str:
    """'day' of '%d/%m/%Y'; '' of a form without a date."""
    places = {name: form.find(letter) for name, letter in (("day", "%d"), ("month", "%m"))}
    year = max(form.find("%y"), form.find("%Y"))
    if min(*places.values(), year) < 0:
        return ""
    return min((*places.items(), ("year", year)), key=lambda place: place[1])[0]


def date_in_text(text: str, today: date) -> date | None:
    """The one date of a file's name or a title line; None for none, for several, and where day and month could change places."""
    spelt = _IN_TEXT.findall(text)
    dates = set()
    for words in spelt:
        try:
            day = read_day(words.replace("_", "-"))
            dates.add(day.readings[""] if "" in day.readings else day.readings[order_of([day], today, "").order])
        except (ValueProblem, AskedFor):
            return None
    return dates.pop() if len(dates) == 1 else None


def as_datetime(day: date, seconds: float) -> datetime:
    return datetime(day.year, day.month, day.day) + timedelta(seconds=seconds)  # noqa: DTZ001 - the zone is settled later
