"""The rows of a file -> tables with their headings: lines before, repeated headings and tables under each other are told
apart."""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from sitegen.authoring.recorded.asked_columns import AskedColumns
from sitegen.authoring.recorded.clock_times import read_moment_cell
from sitegen.authoring.recorded.doubts import AskedFor, answer
from sitegen.authoring.recorded.grid import GridRow
from sitegen.authoring.recorded.numbers import plain_number
from sitegen.authoring.recorded.vocabulary import WORDS_ASKED, Meaning, meaning_of, shape_of
from sitegen.reading.capture_logs.log_problems import ValueProblem

MOST_BEFORE = 40
MOST_CELLS = 500
FEWEST_KNOWN = 2


class Column(Struct, frozen=True):
    """`form` is what its author said of how it is written: a unit, or a strptime format."""

    key: str
    heading: str
    index: int
    unit: str = ""
    form: str = ""


class Section(Struct, frozen=True):
    """`before` are the cells of the lines over its headings. `unread` are headings that say nothing here."""

    heading: GridRow
    columns: Mapping[str, Column]
    rows: tuple[GridRow, ...]
    before: tuple[str, ...]
    unread: tuple[str, ...]

    @property
    def shape(self) -> str:
        return shape_of(self.heading.cells)


def sections_of(rows: Sequence[GridRow], asked: AskedColumns) -> tuple[Section, ...]:
    """Raises AskedFor where no line holds headings, or two columns say the same."""
    headings = [number for number, row in enumerate(rows) if is_heading(row, asked)]
    if not headings or headings[0] > MOST_BEFORE:
        raise AskedFor("has no heading line that is understood",
                       "write one over the columns, as in Start, Exposure (s), Filter; or name your own: "
                       f"{answer('start', 'HEADING')} {answer('exposure_s', 'HEADING')}")  # fmt: skip
    sections: list[Section] = []
    for place, first in enumerate(headings):
        last = headings[place + 1] if place + 1 < len(headings) else len(rows)
        before = rows[: first] if place == 0 else ()
        inside = rows[first + 1 : last]
        if sections and shape_of(rows[first].cells) == sections[-1].shape:
            earlier = sections.pop()
            sections.append(_section(earlier.heading, [*earlier.rows, *inside], earlier.before, asked))
        else:
            sections.append(_section(rows[first], inside, [cell for row in before for cell in row.cells if cell], asked))
    return tuple(sections)


def is_heading(row: GridRow, asked: AskedColumns) -> bool:
    """Words alone, of which two or more say what stands below them, or all that its author named."""
    cells = [cell for cell in row.cells if cell]
    if len(cells) < FEWEST_KNOWN or len(cells) > MOST_CELLS or any(_is_value(cell) for cell in cells):
        return False
    folded = {cell.casefold() for cell in cells}
    named = sum(column.heading.casefold() in folded for key, column in asked.items() if key not in WORDS_ASKED)
    earlier = sum(meaning_of(cell) is not None for cell in cells)
    return named + earlier >= FEWEST_KNOWN and (named > 0 or earlier * 3 >= len(cells))


def _is_value(cell: str) -> bool:
    if plain_number(cell.replace(",", ".")) is not None:
        return True
    try:
        return bool(read_moment_cell(cell))
    except ValueProblem:
        return False


def _section(heading: GridRow, rows: Sequence[GridRow], before: Iterable[str], asked: AskedColumns) -> Section:
    columns: dict[str, Column] = {}
    unread = []
    named = {column.heading.casefold(): (key, column.form) for key, column in asked.items() if key not in WORDS_ASKED}
    for index, cell in enumerate(heading.cells):
        column = _column(cell, index, named, asked)
        if column is None:
            unread += [cell] if cell else []
        elif column.key in columns and cell.casefold() in named:
            raise AskedFor(f"the heading '{cell}' stands here again", "give each column a heading of its own")
        elif column.key in columns:
            first = columns[column.key]
            raise AskedFor(f"'{first.heading}' and '{cell}' both say '{_asked_key(column.key)}'",
                           f"say which: {answer(_asked_key(column.key), first.heading)}, "
                           f"or {answer(_asked_key(column.key), cell)}")  # fmt: skip
        else:
            columns[column.key] = column
    return Section(heading, _as_sorted(columns, rows), tuple(rows), tuple(before), tuple(unread))


def _column(cell: str, index: int, named: Mapping[str, tuple[str, str]], asked: AskedColumns) -> Column | None:
    meaning: Meaning | None = meaning_of(cell)
    if (own := named.get(cell.casefold())) is not None:
        key, form = own
        unit = form if form and not form.startswith("%") else meaning.unit if meaning is not None else ""
        key, unit = ("fwhm", key.removeprefix("fwhm_")) if key.startswith("fwhm_") else (key, unit)
        return Column("good" if key == "kept" else key, cell, index, unit, form)
    if meaning is None:
        return None
    key, unit = meaning.key, meaning.unit
    if key.startswith("fwhm_"):
        key = "fwhm"
    if _asked_key(key) in asked or key in asked:
        return None
    return Column(key, cell, index, unit)


def _asked_key(key: str) -> str:
    return {"good": "kept"}.get(key, key)


def _as_sorted(columns: dict[str, Column], rows: Sequence[GridRow]) -> Mapping[str, Column]:
    """A column of dates that tells times as well is the start, where no other is."""
    for key in ("date", "evening"):
        if key in columns and "start" not in columns and _tells_times(columns[key], rows):
            columns["start"] = Column("start", columns[key].heading, columns[key].index, columns[key].unit, columns[key].form)
            del columns[key]
    return columns


def _tells_times(column: Column, rows: Sequence[GridRow]) -> bool:
    for row in rows:
        try:
            if row.cell(column.index) and read_moment_cell(row.cell(column.index)).clocks:
                return True
        except ValueProblem:
            continue
    return False
