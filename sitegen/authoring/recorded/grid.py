"""A table before anything in it is understood: rows of cells as text, each of which knows where it stands."""

import re
from collections.abc import Callable, Sequence
from functools import partial

from msgspec import Struct

from sitegen.reading.capture_logs.log_problems import Place

_BLANKS = re.compile(r"[\s\u00a0\u2007\u2009\u202f\ufeff]+")
_DASHES = re.compile(r"[\u2010-\u2015\u2212]")


class GridRow(Struct, frozen=True):
    """`place_of` gives line and column of the cell with an index; in a spreadsheet its row and column."""

    line: int
    cells: tuple[str, ...]
    place_of: Callable[[int], Callable[[], Place]]

    def cell(self, index: int) -> str:
        """'' beyond the last one."""
        return self.cells[index] if index < len(self.cells) else ""

    @property
    def start(self) -> Callable[[], Place]:
        return partial(_line, self.line)


class Grid(Struct, frozen=True):
    """`told` says how the file was taken apart; `separator` is '' in a spreadsheet."""

    rows: tuple[GridRow, ...]
    told: tuple[str, ...] = ()
    separator: str = ""


def grid_row(line: int, cells: Sequence[str], place_of: Callable[[int], Callable[[], Place]]) -> GridRow:
    return GridRow(line, tuple(clean(cell) for cell in cells), place_of)


def sheet_place(line: int) -> Callable[[int], Callable[[], Place]]:
    return lambda index: partial(_cell, line, index)


def clean(cell: str) -> str:
    """Without blanks around it; blanks that do not break, and typographic dashes, become plain ones."""
    plain = cell if cell.isascii() else _DASHES.sub("-", cell)
    return _BLANKS.sub(" ", plain).strip()


def _line(line: int) -> Place:
    return line, 1


def _cell(line: int, index: int) -> Place:
    return line, index + 1
