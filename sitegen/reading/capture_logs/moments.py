"""Dates with times of day, as tables and headers write them."""

import re
from datetime import UTC, date, datetime, timedelta

from sitegen.reading.capture_logs.log_problems import Doubt

WRITE_ISO = "write it as in 2026-04-18T21:03:12Z"
FIRST_DIGITAL_YEAR = 1990
_DAY_OF_GRACE = timedelta(days=1)
_EPOCH = datetime(2000, 1, 1, tzinfo=UTC)
_BARE_EPOCH = _EPOCH.replace(tzinfo=None)
_POSSIBLE_YEARS = range(1900, 2101)
_CLOCK_ONLY = re.compile(r"\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?", re.ASCII)
_DAY_FIRST = re.compile(r"(\d{1,2})[./-](\d{1,2})[./-](\d{4})\b.*", re.ASCII)
_SLASHED = re.compile(r"(\d{4})[/.](\d{1,2})[/.](\d{1,2})([ T].*)?", re.ASCII)


def read_moment(text: str) -> datetime:
    """ISO 8601 with a time of day; aware where the text carries `Z` or an offset. Raises Doubt."""
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        raise _doubt(text) from None
    if ":" not in text and "T" not in text:
        raise Doubt("a date without a time of day", WRITE_ISO)
    if moment.year not in _POSSIBLE_YEARS:
        raise Doubt("in no year of this diary", WRITE_ISO)
    return moment


def _doubt(text: str) -> Doubt:
    if _CLOCK_ONLY.fullmatch(text):
        return Doubt("a time of day without a date", WRITE_ISO)
    if found := _DAY_FIRST.fullmatch(text):
        first, second, year = found.groups()
        return Doubt("not ISO 8601", _either_way(year, first, second))
    if found := _SLASHED.fullmatch(text):
        year, month, day, _ = found.groups()
        if (day_meant := possible_day(year, month, day)) is not None:
            return Doubt("not ISO 8601", f"write the date as {day_meant}")
    return Doubt("not a date and time", WRITE_ISO)


def possible_day(year: str, month: str, day: str) -> date | None:
    try:
        return date(int(year), int(month), int(day))
    except ValueError:
        return None


def _either_way(year: str, first: str, second: str) -> str:
    """No month has the number 18; where both readings are days, the author has to say."""
    readings = possible_day(year, second, first), possible_day(year, first, second)
    day_first, month_first = readings
    if day_first is None or month_first is None:
        meant = day_first or month_first
        return f"write the date as {meant}" if meant else WRITE_ISO
    if day_first == month_first:
        return f"write the date as {day_first}"
    return f"write the date as {day_first} if the day stands first, as {month_first} if the month does"


def odd_date(start: datetime, today: date) -> tuple[str, str] | None:
    """What is strange about an aware UTC start, and the remedy; a day of grace covers every time zone."""
    if start.year < FIRST_DIGITAL_YEAR:
        return f"starts in {start.year}, before {FIRST_DIGITAL_YEAR}", "look at the camera's clock"
    if start.date() - today > _DAY_OF_GRACE:
        return f"starts on {start.date()}, in the future", "look at the camera's clock"
    return None


def as_utc(bare: datetime) -> datetime:
    """A bare moment that counts in UTC, said to; ten times as fast as `replace`."""
    return _EPOCH + (bare - _BARE_EPOCH)
