"""Times of a wall clock -> UTC, across the nights on which the clock was changed."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta, tzinfo
from itertools import pairwise
from typing import NamedTuple
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from sitegen.reading.capture_logs.log_problems import LogProblems, top_of_file
from sitegen.reading.capture_logs.moments import as_utc
from sitegen.reading.capture_logs.request import LogRequest

TOLERANCE = timedelta(seconds=1)


class Stamp(NamedTuple):
    """A start as the log has it: aware, or by the wall clock. `span_s`: how long the row's frames took; `at` gives its place."""

    when: datetime
    span_s: float = 0.0
    at: Callable[[], tuple[int, int]] = top_of_file


def zone_of(request: LogRequest, problems: LogProblems) -> ZoneInfo | None:
    """The log's own time zone; None for UTC."""
    if request.time_zone is None:
        return None
    try:
        return ZoneInfo(request.time_zone)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        problems.in_entry(request.item_place, f"'{request.time_zone}' is no time zone", "name it as in Europe/Athens")
        return None


def name_the_zone(request: LogRequest) -> str:
    """The line to write for records whose clock is not told: the site's own zone is the likeliest."""
    zone = request.site.time_zone if request.site is not None else "Europe/Athens"
    return f"write 'time_zone: {zone}' in the log item" + ("" if request.site is not None else ", with its own zone")


def settle(stamps: Sequence[Stamp], zone: tzinfo | None, problems: LogProblems) -> list[datetime | None]:
    """UTC of each stamp, in the order given; None for a time that the clock skipped. Bare times are UTC where `zone` is None."""
    if zone is None:
        return [plainly(stamp.when) for stamp in stamps]
    choices = [_possible(stamp, zone, problems) for stamp in stamps]
    order = list(range(len(stamps)))
    if _newest_first(choices):
        order.reverse()
    for run in _twofold_runs(choices, order):
        _choose(run, choices, order, stamps, problems)
    return [choice[0] if choice else None for choice in choices]


def plainly(when: datetime) -> datetime:
    """UTC of a moment that is aware, or bare and UTC by convention."""
    if when.tzinfo is UTC:
        return when
    return as_utc(when) if when.tzinfo is None else when.astimezone(UTC)


def _possible(stamp: Stamp, zone: tzinfo, problems: LogProblems) -> list[datetime]:
    """Nothing for a time in the gap, one moment as a rule, two for an hour that the clock showed twice."""
    if stamp.when.tzinfo is not None:
        return [stamp.when.astimezone(UTC)]
    early, late = (stamp.when.replace(tzinfo=zone, fold=fold) for fold in (0, 1))
    if early.utcoffset() == late.utcoffset():
        return [early.astimezone(UTC)]
    if early.astimezone(UTC) < late.astimezone(UTC):
        return [early.astimezone(UTC), late.astimezone(UTC)]
    problems.error(
        f"{stamp.when:%Y-%m-%d %H:%M:%S} does not exist in {zone}: the clock was put forward over it",
        "write the time with its offset, or in UTC with a Z",
        stamp.at,
    )
    return []


def _newest_first(choices: Sequence[list[datetime]]) -> bool:
    sure = [choice[0] for choice in choices if len(choice) == 1]
    return len(sure) > 1 and sure[0] > sure[-1]


def _twofold_runs(choices: Sequence[list[datetime]], order: list[int]) -> list[range]:
    """Positions in `order` of neighbouring stamps with two possible moments each."""
    runs: list[range] = []
    for position, index in enumerate(order):
        if len(choices[index]) < 2:
            continue
        if runs and runs[-1].stop == position:
            runs[-1] = range(runs[-1].start, position + 1)
        else:
            runs.append(range(position, position + 1))
    return runs


def _choose(
    run: range, choices: list[list[datetime]], order: list[int], stamps: Sequence[Stamp], problems: LogProblems
) -> None:
    """All before some row of the run are the first pass of the clock, the others the second; only orders in which time runs on
    are possible. Where several are, the first pass is taken, and said to be."""
    around = range(max(run.start - 1, 0), min(run.stop + 1, len(order)))
    possible = [
        switch for switch in _switches(run, order, stamps) if _runs_on(_line(around, run, switch, choices, order, stamps))
    ]
    switch = possible[0] if len(possible) == 1 else run.stop
    if len(possible) != 1:
        _say_twofold(stamps[order[run.start]], choices[order[run.start]][0], len(run), problems)
    for position in run:
        choices[order[position]] = [choices[order[position]][position >= switch]]


def _switches(run: range, order: list[int], stamps: Sequence[Stamp]) -> list[int]:
    """Where the clock may have been put back: where its time runs back; if it never does, before, within and after the run."""
    rows = [stamps[order[position]] for position in run]
    back = [
        run.start + number
        for number, (before, after) in enumerate(pairwise(rows), start=1)
        if after.when < before.when + timedelta(seconds=before.span_s) - TOLERANCE
    ]
    if back:
        return back if len(back) == 1 else []
    return sorted({run.start, min(run.start + 1, run.stop), run.stop})


def _line(
    around: range, run: range, switch: int, choices: list[list[datetime]], order: list[int], stamps: Sequence[Stamp]
) -> list[tuple[datetime, datetime]]:
    """Start and end of each row, were the clock put back before `switch`."""
    spans = []
    for position in around:
        choice = choices[order[position]]
        if choice:
            start = choice[position >= switch] if position in run else choice[0]
            spans.append((start, start + timedelta(seconds=stamps[order[position]].span_s)))
    return spans


def _runs_on(line: list[tuple[datetime, datetime]]) -> bool:
    return all(after[0] >= before[1] - TOLERANCE for before, after in pairwise(line))


def _say_twofold(stamp: Stamp, taken: datetime, rows: int, problems: LogProblems) -> None:
    so_many = "" if rows == 1 else f" (so for {rows} rows from here)"
    local = stamp.when
    offset = local - taken.replace(tzinfo=None)
    sign, minutes = ("-", -offset) if offset < timedelta(0) else ("+", offset)
    hours, rest = divmod(round(minutes.total_seconds() / 60), 60)
    problems.warn(
        f"{local:%Y-%m-%d %H:%M:%S} came twice that night; taken as the first time{so_many}",
        f"write the offset, as in {local:%Y-%m-%dT%H:%M:%S}{sign}{hours:02}:{rest:02}",
        stamp.at,
    )
