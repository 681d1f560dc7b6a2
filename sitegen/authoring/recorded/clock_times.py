"""Times of day as a column writes them: 24 hours, 12 hours with AM and PM, spans, ISO 8601, and fractions of a spreadsheet's
day."""

import re
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta, timezone, tzinfo

from msgspec import Struct

from sitegen.authoring.recorded.day_order import Day, read_day, serial_day
from sitegen.authoring.recorded.doubts import AskedFor, answer, either
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import read_moment

NOON_S, DAY_S = 43_200.0, 86_400.0
_TIME = re.compile(
    r"(?<![\d.,:])(\d{1,2})(?:[:h]|\.(?=\d\d ?uhr))(\d{2})(?::(\d{2}(?:[.,]\d{1,6})?))?(?![\d:])(?: ?([ap])\.? ?m\b\.?| ?uhr\b)?"
    r"|(?<![\d.,:])(\d{1,2}) ?([ap])\.? ?m\b\.?", re.I | re.ASCII)  # fmt: skip
_ISO = re.compile(r"\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:?\d{2})?", re.ASCII)
_ZONE = re.compile(
    r"(?:\b(?:UTC|UT|GMT)|(?<=\d) ?Z)\b(?:\s?([+-]\d{1,2})(?::?(\d{2}))?)?|(?<=:\d\d)\s?([+-]\d{2}):?(\d{2})(?!\d)",
    re.I,
)
_BETWEEN = re.compile(r"(?:^|\s)(?:to|bis|until|till|from|von|um|at|and|und|t)(?=\s|$)|(?:^|\s)-+(?=\s|$)|[,;()]|^-+|-+$", re.I)
_NUMBER = re.compile(r"\d{1,12}(?:[.,]\d{1,20})?", re.ASCII)


class Clock(Struct, frozen=True):
    """A time of day as written: hours, the seconds beyond, and 'a' or 'p' where it says so."""

    text: str
    hour: int
    rest_s: float
    half: str = ""

    @property
    def seconds(self) -> float:
        """Of 24 hours, once the half is known or needs not to be."""
        hour = self.hour % 12 + (12 if self.half == "p" else 0) if self.half and self.hour <= 12 else self.hour
        return hour * 3600.0 + self.rest_s


class Moment(Struct, frozen=True):
    """What one cell says of a time: a day, one clock or a span of two, an offset. `until` is the day of the second clock."""

    text: str
    day: Day | None = None
    clocks: tuple[Clock, ...] = ()
    zone: tzinfo | None = None
    until: Day | None = None


def read_moment_cell(text: str) -> Moment:
    """Raises ValueProblem."""
    if _ISO.fullmatch(text):
        return _of_iso(text)
    if _NUMBER.fullmatch(text):
        return _of_number(text)
    zone = _ZONE.search(text)
    plain = text[: zone.start()] + text[zone.end() :] if zone else text
    clocks = tuple(_clock(match) for match in _TIME.finditer(plain))
    if len(clocks) > 2:
        raise ValueProblem("more than two times", "write one time a cell, or a span")
    words = [" ".join(_BETWEEN.sub(" ", part).split()) for part in _around(plain)]
    days = [read_day(word) for word in words if word]
    if len(days) > max(1, len(clocks)) or not (days or clocks):
        raise ValueProblem("no date and no time", "write it as in 2026-04-18T21:03:12Z")
    return Moment(text, days[0] if days else None, _with_halves(clocks), _zone(zone) if zone else None,
                  days[1] if len(days) > 1 else None)  # fmt: skip


def _around(plain: str) -> list[str]:
    """The text before, between and behind the times, where dates may stand."""
    pieces, last = [], 0
    for match in _TIME.finditer(plain):
        pieces.append(plain[last : match.start()])
        last = match.end()
    return [*pieces, plain[last:]]


def _of_iso(text: str) -> Moment:
    moment = read_moment(text)
    day = Day(text, {"": moment.date()})
    rest_s = moment.minute * 60 + moment.second + moment.microsecond / 1e6
    return Moment(text, day, (Clock(text, moment.hour, rest_s),), moment.tzinfo)


def _of_number(text: str) -> Moment:
    """46130.877 of a spreadsheet that lost the look of its dates, or 0.877 of its times, 20260418 of a camera."""
    if re.fullmatch(r"(?:19|20)\d{6}", text):
        return Moment(text, read_day(text))
    number = float(text.replace(",", "."))
    day = serial_day(number)
    seconds = round(number % 1 * DAY_S, 1)
    clock = (Clock(text, int(seconds // 3600), seconds % 3600),)
    if day is not None:
        return Moment(text, Day(text, {"": day}, is_serial=True), clock if seconds else ())
    if 0 <= number < 1 and not number.is_integer():
        return Moment(text, None, clock)
    raise ValueProblem("no date and no time", "write it as in 2026-04-18T21:03:12Z")


def _clock(match: re.Match[str]) -> Clock:
    hour, minute, second, half, bare_hour, bare_half = match.groups()
    half = (half or bare_half or "").casefold()
    seconds = float((second or "0").replace(",", "."))
    if int(hour or bare_hour) > (12 if half == "a" else 24) or int(minute or 0) > 59 or seconds >= 60:
        raise ValueProblem("no time of day", "write it as in 21:03")
    if half == "a" and (hour or bare_hour) in ("0", "00"):
        half = ""
    rest_s = int(minute or 0) * 60 + seconds
    return Clock(match.group(), int(hour or bare_hour), rest_s, half)


def _with_halves(clocks: tuple[Clock, ...]) -> tuple[Clock, ...]:
    """'9:36 - 11:40 PM': the half of the second holds for the first, unless the first would then be the later one."""
    if len(clocks) != 2 or clocks[0].half or not clocks[1].half:
        return clocks
    first = Clock(clocks[0].text, clocks[0].hour, clocks[0].rest_s, clocks[1].half)
    if first.seconds > clocks[1].seconds:
        first = Clock(first.text, first.hour, first.rest_s, "a" if clocks[1].half == "p" else "p")
    return first, clocks[1]


def _zone(match: re.Match[str]) -> tzinfo:
    hours, minutes = (match.group(1), match.group(2)) if match.group(1) else (match.group(3), match.group(4))
    if hours is None:
        return UTC
    if abs(int(hours)) > 14 or int(minutes or 0) > 59:
        raise ValueProblem("with an offset that no clock has", "write it as in 2026-04-18T21:03:12+02:00")
    sign = -1 if hours.startswith("-") else 1
    return timezone(timedelta(hours=int(hours), minutes=sign * int(minutes or 0)))


class HoursTold(Struct, frozen=True):
    """`is_evening_clock`: hours of 12 without AM or PM, from 6 on in the evening, up to 5 after midnight."""

    is_evening_clock: bool = False
    why: str = ""


def hours_of(moments: Sequence[Moment], heading: str, form: str = "") -> HoursTold:
    """How the column counts its hours; `form` is the strptime format that its author gave. Raises AskedFor."""
    clocks = [clock for moment in moments if not _ISO.fullmatch(moment.text) for clock in moment.clocks]
    halved = next((clock for clock in clocks if clock.half), None)
    bare = [clock for clock in clocks if not clock.half]
    if halved is not None:
        unclear = next((clock for clock in bare if 1 <= clock.hour <= 12), None)
        if unclear is not None:
            raise AskedFor(f"{unclear.text} says neither AM nor PM, as {halved.text} does", "write AM or PM behind every time")
        return HoursTold(why=f"{halved.text} is {_as_text(halved.seconds)}")
    if "%H" in form or not bare or not _may_be_halved(bare):
        return HoursTold()
    if "%I" in form:
        return HoursTold(is_evening_clock=True, why=f"{bare[0].text} is {_as_text(evening_seconds(bare[0]))}, as was said")
    shown = next(clock for clock in bare if 6 <= clock.hour <= 11)
    raise AskedFor(f"{shown.text} may be in the morning or in the evening: no time of the column is later than 12:59",
                   either(answer("start", heading, "%H:%M"), answer("start", heading, "%I:%M")))  # fmt: skip


def _may_be_halved(clocks: Sequence[Clock]) -> bool:
    """Hours of 24 are mostly written with two digits, and pass 12 or 0 in a night."""
    hours = [clock.hour for clock in clocks]
    short = any(re.match(r"\d[:h]", clock.text) for clock in clocks)
    return short and all(1 <= hour <= 12 for hour in hours) and any(6 <= hour <= 11 for hour in hours)


def evening_seconds(clock: Clock) -> float:
    return (clock.hour % 12 + (12 if 6 <= clock.hour <= 11 else 0)) * 3600.0 + clock.rest_s


def _as_text(seconds: float) -> str:
    return (datetime(2000, 1, 1, tzinfo=UTC) + timedelta(seconds=seconds)).strftime("%H:%M")
