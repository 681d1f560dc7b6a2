"""A date in one column, a time in another: is the date that of the calendar, or that of the evening?"""

from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from sitegen.authoring.recorded.clock_times import DAY_S, NOON_S
from sitegen.authoring.recorded.day_order import as_datetime
from sitegen.authoring.recorded.doubts import AskedFor, answer, either

LONGEST_NIGHT = timedelta(hours=10)


class DatedTime(Struct, frozen=True):
    """A row's date and time of day; rows of one `lane` (its filter) follow each other."""

    day: date
    seconds: float
    lane: str = ""
    text: str = ""


class EveningsTold(Struct, frozen=True):
    is_evening: bool
    why: str = ""


def evenings_of(times: Sequence[DatedTime], heading: str, said: str = "", before: str = "") -> EveningsTold:
    """`said` is 'calendar' or 'evening' where the author, or the heading, says so, `before` what tables of this shape had. Raises
    AskedFor."""
    early = [time for time in times if time.seconds < NOON_S]
    if said or not early:
        return EveningsTold(said == "evening")
    lanes = [time.lane for time in times]
    fitting = [way for way in (False, True) if _is_in_order([moment_of(time, way) for time in times], lanes)]
    if len(fitting) == 1:
        words = "that of the evening" if fitting[0] else "that of the calendar"
        why = f"'{heading}' is {words} also after midnight ({early[0].text}), as the rows follow each other"
        return EveningsTold(fitting[0], why)
    if len(fitting) == 2 and all(_runs_on(times, number) for number, time in enumerate(times) if time.seconds < NOON_S):
        why = f"'{heading}' is that of the calendar also after midnight ({early[0].text}), as it follows the evening before"
        return EveningsTold(False, why)
    if before:
        words = "that of the evening" if before == "evening" else "that of the calendar"
        return EveningsTold(before == "evening", f"'{heading}' is {words} also after midnight, as in such tables before")
    day = early[0].day
    raise AskedFor(f"{early[0].text} under {day} may be on that day, or in the night that began on it",
                   either(answer("dates", "calendar"), answer("dates", "evening")))  # fmt: skip


def moment_of(time: DatedTime, is_evening: bool) -> datetime:
    return as_datetime(time.day, time.seconds + (DAY_S if is_evening and time.seconds < NOON_S else 0.0))


def _runs_on(times: Sequence[DatedTime], number: int) -> bool:
    """Whether a row after midnight follows, within a night's hours, one of the evening of the day before."""
    early = times[number]
    before = next((time for time in reversed(times[:number]) if time.seconds >= NOON_S), None)
    if before is None or early.day - before.day != timedelta(days=1):
        return False
    return moment_of(early, False) - moment_of(before, False) <= LONGEST_NIGHT


def _is_in_order(moments: Sequence[datetime], lanes: Sequence[str]) -> bool:
    """All rows, newest first or last; else those of each lane."""
    if _ascends(moments) or _ascends(moments[::-1]):
        return True
    by_lane: dict[str, list[datetime]] = {}
    for moment, lane in zip(moments, lanes, strict=True):
        by_lane.setdefault(lane, []).append(moment)
    return len(by_lane) > 1 and all(_ascends(inside) for inside in by_lane.values())


def _ascends(moments: Sequence[datetime]) -> bool:
    return all(first <= second for first, second in pairwise(moments))


def running_on(times: Iterable[float], first: date) -> list[datetime]:
    """Times of one night, in their order, of which only the date of the first is known: a time earlier than the one before by
    more than an hour is of the next day."""
    moments: list[datetime] = []
    day = first
    last: float | None = None
    for seconds in times:
        if last is not None and seconds < last - 3600:
            day += timedelta(days=1)
        moments.append(as_datetime(day, seconds))
        last = seconds
    return moments
