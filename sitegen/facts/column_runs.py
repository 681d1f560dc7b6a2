"""A long column of facts.json as runs of equal steps.

A column of up to `MOST_PLAIN` values is a plain array. A longer one is `{count, first, step, decimals}`: three arrays with an
element a run, and the decimals of its values. Value k of a run, counted from 0, is first + k × step, rounded to `decimals`;
`step` is in seconds where the values are times. A run of texts, truths or unknowns is one value repeated: its step is 0.

Each value of a run opens an interval of steps that lead to it, and the run goes on as long as all intervals have a step in common
(E. H. Bristol, Swinging door trending, ISA 1990, cited from memory). A run that ends soon is tried again from a little beside its
first value. Of the steps in common the one with the fewest digits is published.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from math import inf
from typing import Any

from msgspec import Struct

from sitegen.facts.utc_text import utc_text

MOST_PLAIN = 10_000
HALF = 0.49
"""Of the last digit: nearer to the middle between two values than this, readers might round to either side."""
TIME_DECIMALS = 3
STEP_DIGITS = 15
BESIDE = (0.0, 0.2, -0.2, 0.4, -0.4)
"""Of the last digit: where a run may begin beside its first value, as that was rounded itself."""
LONG = 16


class Runs(Struct, frozen=True):
    """One column; the arrays have one length."""

    count: list[int]
    first: list[Any]
    step: list[float | int]
    decimals: int


def published_column(values: Sequence[Any], unit: str, decimals: int | None) -> Sequence[Any] | Runs:
    """The column as it stands in facts.json."""
    if len(values) <= MOST_PLAIN:
        return values
    if unit == "UTC":
        return _of_times(values)
    if decimals is None and any(type(value) is int for value in values):
        return _of_numbers(values, 0)
    return _of_words(values) if decimals is None else _of_numbers(values, decimals)


def _of_words(values: Sequence[Any]) -> Runs:
    counts: list[int] = []
    first: list[Any] = []
    for value in values:
        if first and value == first[-1]:
            counts[-1] += 1
        else:
            first.append(value)
            counts.append(1)
    return Runs(counts, first, [0] * len(first), 0)


def _of_numbers(values: Sequence[float | int | None], decimals: int) -> Runs:
    unit = 10**decimals
    whole = [None if value is None else round(value * unit) for value in values]
    runs = list(_runs(whole, decimals, BESIDE))
    starts = [None if run.first is None else _plainly(round(run.first / unit, decimals + 1)) for run in runs]
    return Runs([run.count for run in runs], starts, [run.step for run in runs], decimals)


def _of_times(values: Sequence[str]) -> Runs:
    moments = [datetime.fromisoformat(text) for text in values]
    begin, unit = moments[0], timedelta(milliseconds=1)
    runs = list(_runs([(moment - begin) // unit for moment in moments], TIME_DECIMALS, BESIDE[:1]))
    starts = [utc_text(moments[run.place]) for run in runs]
    return Runs([run.count for run in runs], starts, [run.step for run in runs], TIME_DECIMALS)


class _Run(Struct, frozen=True, gc=False):
    """`place`: of its first value in the column. `first` in units of the last decimal, `step` in whole units."""

    place: int
    count: int
    first: float | None
    step: float | int


def _runs(values: Sequence[int | None], decimals: int, beside: Sequence[float]) -> Iterator[_Run]:
    """`values` in units of the last decimal; a run may begin as far beside its first value as `beside` says."""
    place = 0
    while place < len(values):
        value = values[place]
        run = _unknown(values, place) if value is None else _longest(values, place, decimals, [value + away for away in beside])
        yield run
        place += run.count


def _unknown(values: Sequence[int | None], place: int) -> _Run:
    end = next((end for end in range(place, len(values)) if values[end] is not None), len(values))
    return _Run(place, end - place, None, 0)


def _longest(values: Sequence[int | None], place: int, decimals: int, firsts: Sequence[float]) -> _Run:
    """Of runs that begin with each of these values, up to one that is long enough."""
    longest = _Run(place, 0, None, 0)
    for first in firsts:
        count, least, most = _reach(values, place, first)
        if count > longest.count:
            longest = _Run(place, count, first, _short_step(least, most, decimals) if count > 1 else 0)
        if count >= LONG:
            break
    return longest


def _reach(values: Sequence[int | None], place: int, first: float) -> tuple[int, float, float]:
    """How many values one step leads to, and the least and the greatest such step."""
    least, most = -inf, inf
    for number in range(1, len(values) - place):
        value = values[place + number]
        if value is None:
            return number, least, most
        lower, upper = (value - first - HALF) / number, (value - first + HALF) / number
        if lower > most or upper < least:
            return number, least, most
        least, most = max(least, lower), min(most, upper)
    return len(values) - place, least, most


def _short_step(least: float, most: float, decimals: int) -> float | int:
    """Between both, with the fewest digits, in whole units instead of the last decimal."""
    unit = 10**decimals
    steps = (round((least + most) / 2 / unit, digits) for digits in range(STEP_DIGITS))
    return _plainly(next((step for step in steps if least <= step * unit <= most), (least + most) / 2 / unit))


def _plainly(value: float) -> float | int:
    """A whole number without a point."""
    return int(value) if value.is_integer() else value
