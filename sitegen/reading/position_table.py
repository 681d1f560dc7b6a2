"""A table of where something that moves was: time, right ascension and declination, as ephemeris services give them."""

import csv
import re
from collections.abc import Iterator, Sequence
from datetime import UTC

from sitegen.diary.target import Positions
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import as_utc, read_moment
from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics, Place
from sitegen.reading.nodes import TextNode, quoted
from sitegen.reading.text_file import read_text
from sitegen.reading.value_types.angle import Declination, RightAscension

COLUMNS = ("time", "ra", "dec")
FEWEST = 2
EXAMPLE = "begin it with a line 'time,ra,dec', in UTC and ICRS degrees"
Row = tuple[float, float, float]


def positions_in(relative: str, content: ContentFolder, diagnostics: Diagnostics) -> Positions | None:
    """None after problems, which stand in the table's own lines."""
    at = Diagnostics(content.shown(relative), content, diagnostics.today, diagnostics.problems)
    text = read_text(content.path(relative), at)
    rows = None if text is None else at.until_full(lambda: _rows(text, at))
    if rows is None:
        return None
    times_s, ra_deg, dec_deg = zip(*rows, strict=True)
    return Positions(relative, times_s, ra_deg, dec_deg)


def _rows(text: str, at: Diagnostics) -> list[Row] | None:
    lines = [(number, line) for number, line in enumerate(text.split("\n"), 1) if line.strip() and not line.startswith("#")]
    cells = list(_cells(lines))
    columns = _columns(cells[0][1]) if cells else None
    if columns is None:
        at.error(Place(lines[0][0] if lines else 1), "no columns 'time', 'ra' and 'dec'", EXAMPLE)
        return None
    rows = [_row(number, [*line, "", ""], columns, at) for number, line in cells[1:]]
    whole = [row for row in rows if row is not None]
    if len(whole) < len(rows):
        return None
    if len(whole) < FEWEST:
        at.error(Place(cells[-1][0]), "too few places to interpolate between", "give one before and one after your nights")
        return None
    return whole if _is_in_order(whole, cells[1:], at) else None


def _cells(lines: Sequence[tuple[int, str]]) -> Iterator[tuple[int, list[str]]]:
    """By the mark that parts the headings: a comma, a semicolon, a tab, blanks."""
    head = lines[0][1] if lines else ""
    mark = next((mark for mark in ",;\t" if mark in head), " ")
    for number, line in lines:
        cells = next(csv.reader([line if mark != " " else re.sub(r"\s+", " ", line.strip())], delimiter=mark))
        yield number, [cell.strip() for cell in cells]


def _columns(headings: Sequence[str]) -> tuple[int, int, int] | None:
    folded = [heading.casefold().removesuffix("_deg") for heading in headings]
    if any(column not in folded for column in COLUMNS):
        return None
    return folded.index("time"), folded.index("ra"), folded.index("dec")


def _row(number: int, cells: Sequence[str], columns: tuple[int, int, int], at: Diagnostics) -> Row | None:
    time, ra, dec = (TextNode(cells[min(column, len(cells) - 1)], number, 1, plain=False) for column in columns)
    time_s = _time_s(time, at)
    ra_deg, dec_deg = RightAscension().read(ra, "'ra'", at), Declination().read(dec, "'dec'", at)
    return None if time_s is None or ra_deg is None or dec_deg is None else (time_s, ra_deg, dec_deg)


def _time_s(node: TextNode, at: Diagnostics) -> float | None:
    """UTC unix seconds; a bare time is UTC."""
    try:
        moment = read_moment(node.text)
    except ValueProblem as problem:
        at.error(node, f"'time' is {quoted(node.text)}, {problem.wrong}", problem.remedy)
        return None
    return (as_utc(moment) if moment.tzinfo is None else moment.astimezone(UTC)).timestamp()


def _is_in_order(rows: Sequence[Row], cells: Sequence[tuple[int, list[str]]], at: Diagnostics) -> bool:
    for index in range(1, len(rows)):
        if rows[index][0] <= rows[index - 1][0]:
            at.error(Place(cells[index][0]), "this time is not after the one before it", "sort the table by time, each once")
            return False
    return True
