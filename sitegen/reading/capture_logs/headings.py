"""The heading line of a table -> which cell of a row holds which canonical column."""

import difflib
from collections.abc import Callable, Mapping
from typing import Any

from msgspec import Struct

from sitegen.problems import hint_for
from sitegen.reading.capture_logs.columns import CANONICAL, READ, REQUIRED, in_unit
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem
from sitegen.reading.capture_logs.moments import read_moment
from sitegen.reading.capture_logs.records import Record
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.nodes import quoted

_NEAR = 0.75
MOST_COLUMNS = 500


class Headings(Struct, frozen=True):
    """`count` cells a row; `readers` by canonical name: index of the cell and how it is read."""

    count: int
    readers: Mapping[str, tuple[int, Callable[[str], Any]]]


def find_headings(heading: Record, request: LogRequest, problems: LogProblems, units: Mapping[str, str]) -> Headings | None:
    """None after an error that leaves no row readable."""
    words = [cell.strip() for cell in heading.cells]
    if _is_data(words):
        problems.error("has no heading line", "begin it with one, as in start,exposure_s,filter", heading.start)
        return None
    if len(words) > MOST_COLUMNS:
        problems.error(f"the heading line has {len(words)} cells", f"a table has at most {MOST_COLUMNS} columns", heading.start)
        return None
    places = _places(heading, words, request, problems)
    _warn_of_near_misses(heading, words, places, problems)
    missing = [name for name in REQUIRED if name not in places]
    for name in missing:
        _say_missing(name, heading, words, request, problems)
    readers = {name: (index, _reader(name, heading, index, units, problems)) for name, index in places.items()}
    return None if missing else Headings(_count(words), readers)


def _is_data(words: list[str]) -> bool:
    try:
        read_moment(words[0])
    except ValueProblem:
        return False
    return True


def _count(words: list[str]) -> int:
    """Without the empty headings with which a spreadsheet pads the line."""
    return max((number for number, word in enumerate(words, start=1) if word), default=0)


def _places(heading: Record, words: list[str], request: LogRequest, problems: LogProblems) -> dict[str, int]:
    folded = [word.casefold() for word in words]
    _check_mapping(request, problems)
    places: dict[str, int] = {}
    for name in READ:
        wanted = request.columns.get(name, name).strip().casefold()
        if folded.count(wanted) > 1:
            second = folded.index(wanted, folded.index(wanted) + 1)
            problems.error(f"the heading {quoted(words[second])} stands here again", "keep one", heading.place(second))
        if wanted in folded:
            places[name] = folded.index(wanted)
        elif name in request.columns:
            wrong = f"{problems.shown_path} has no column {quoted(request.columns[name])} (for '{name}')"
            problems.in_entry(request.item_place, wrong, hint_for(request.columns[name], filter(None, words)))
    return places


def _check_mapping(request: LogRequest, problems: LogProblems) -> None:
    for name in request.columns:
        if name not in CANONICAL:
            wrong = f"'columns' names {quoted(name)}, which is no column"
            problems.in_entry(request.item_place, wrong, hint_for(name, CANONICAL))


def _warn_of_near_misses(heading: Record, words: list[str], places: dict[str, int], problems: LogProblems) -> None:
    """A misspelt 'kept' would count what was thrown away."""
    free = [name for name in CANONICAL if name not in places and name not in REQUIRED]
    for index, word in enumerate(words):
        near = difflib.get_close_matches(word.casefold(), free, n=1, cutoff=_NEAR)
        if near and index not in places.values() and word.casefold() not in CANONICAL:
            problems.warn(f"the column {quoted(word)} is not read", f"did you mean '{near[0]}'?", heading.place(index))


def _say_missing(name: str, heading: Record, words: list[str], request: LogRequest, problems: LogProblems) -> None:
    if name in request.columns:
        return
    near = difflib.get_close_matches(name, [word.casefold() for word in words], n=1, cutoff=0.5)
    example = next((word for word in words if near and word.casefold() == near[0]), "their heading")
    problems.error(
        f"has no column '{name}'",
        f"name it so, or write 'columns: {{{name}: {example}}}' in the entry's log item",
        heading.start,
    )


def _reader(
    name: str, heading: Record, index: int, units: Mapping[str, str], problems: LogProblems
) -> Callable[[str], Any]:
    column, unit = READ[name], units.get(heading.cells[index].strip(), "")
    if not unit or not column.units:
        return column.read
    if unit not in column.units:
        problems.error(f"the column '{name}' is in {quoted(unit)}", hint_for(unit, column.units), heading.place(index))
        return column.read
    return in_unit(column, unit)
