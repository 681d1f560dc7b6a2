"""Numbers as a column writes them: the decimal mark is that of the whole table."""

import re
from collections.abc import Iterable
from typing import Literal

from sitegen.authoring.recorded.doubts import AskedFor
from sitegen.reading.capture_logs.columns import out_of_range
from sitegen.reading.capture_logs.log_problems import ValueProblem

Mark = Literal["point", "comma"]
_PLAIN = re.compile(r"[+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?", re.I | re.ASCII)
_COMMA_ONLY = re.compile(r"[+-]?(?:\d+,\d{1,2}|\d+,\d{4,}|\d{4,},\d+|0\d*,\d+)(?!\d)", re.ASCII)
_COMMA_LAST = re.compile(r"\d\.\d{3},\d", re.ASCII)
_POINT_LAST = re.compile(r"\d,\d{3}\.\d|\d,\d{3},\d{3}", re.ASCII)
_EITHER = re.compile(r"[+-]?[1-9]\d{0,2},\d{3}(?!\d)", re.ASCII)
_BLANK_THOUSANDS = re.compile(r"(?<=\d) (?=\d{3}(?:\D|$))")
_NUMBER_WITH_COMMA = re.compile(r"\d,\d")


def decimal_mark(cells: Iterable[str], separator: str) -> tuple[Mark, str]:
    """The mark of the table and the cell that shows it, '' where nothing had to be decided. Raises AskedFor."""
    with_comma = [_BLANK_THOUSANDS.sub("", cell) for cell in cells if _NUMBER_WITH_COMMA.search(cell)]
    comma = next((cell for cell in with_comma if _COMMA_LAST.search(cell) or _COMMA_ONLY.match(cell)), "")
    point = next((cell for cell in with_comma if _POINT_LAST.search(cell)), "")
    if comma and point:
        raise AskedFor(f"has decimal commas ({comma}) and decimal points ({point})", "write all numbers one way")
    if comma or point:
        return ("comma", comma) if comma else ("point", point)
    either = next((cell for cell in with_comma if _EITHER.match(cell)), "")
    if not either:
        return "point", ""
    if separator == ",":
        return "point", either
    raise AskedFor(f"{either} may be a number with decimals or one of thousands",
                   "say which: --columns decimal=comma, or --columns decimal=point")  # fmt: skip


def pointed(cell: str, mark: Mark) -> str:
    """The cell with points for decimals and nothing between thousands."""
    if mark == "comma":
        return re.sub(r"(?<=\d)[. ](?=\d{3}(?:\D|$))", "", cell).replace(",", ".") if _NUMBER_WITH_COMMA.search(cell) else cell
    return re.sub(r"(?<=\d)[, '](?=\d{3}(?:\D|$))", "", cell)


def plain_number(cell: str) -> float | None:
    return float(cell) if _PLAIN.fullmatch(cell) else None


def number_in(cell: str, least: float, most: float) -> float:
    """The number with which a cell begins or ends: '24x', '24 subs', '-10 °C'. Raises ValueProblem."""
    match = re.fullmatch(r"(?:[x×~#]\s*)?([+-]?\d+(?:\.\d+)?)\s*[^\d.,]*", cell, re.ASCII)
    if match is None:
        raise ValueProblem("no number")
    value = float(match.group(1))
    if not least <= value <= most:
        raise ValueProblem(out_of_range(least, most))
    return value
