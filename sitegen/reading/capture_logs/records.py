"""Text of a table -> records that know where each of their cells stands."""

import csv
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from sitegen.reading.capture_logs.log_problems import LogProblems


class Record(NamedTuple):
    """`lines` are the raw lines it came from, the first of them number `line` of the file."""

    cells: list[str]
    line: int
    lines: Sequence[str]
    delimiter: str

    def place(self, index: int) -> tuple[int, int]:
        """Line and column of a cell; of the end of the record where it has no such cell."""
        starts = list(_cell_starts("\n".join(self.lines), self.delimiter))
        if index >= len(starts):
            return self.line + len(self.lines) - 1, len(self.lines[-1]) + 1
        before = "\n".join(self.lines)[: starts[index]]
        return self.line + before.count("\n"), len(before) - before.rfind("\n")


def read_records(lines: Sequence[str], first_line: int, delimiter: str, problems: LogProblems) -> Iterator[Record]:
    """Every row that is neither blank nor a `#` comment; `first_line` is the file's number of the first of `lines`."""
    source = csv.reader((line + "\n" for line in lines), delimiter=delimiter, strict=True, skipinitialspace=True)
    done = 0
    while True:
        try:
            cells = next(source, None)
        except csv.Error as trouble:
            problems.error(*_in_words(str(trouble)), at=(first_line + done, 1))
            return
        if cells is None:
            return
        if any(cells) and not cells[0].startswith("#"):
            yield Record(cells, first_line + done, lines[done : source.line_num], delimiter)
        done = source.line_num


def _cell_starts(raw: str, delimiter: str) -> Iterator[int]:
    """Offset of each cell's first character that is no blank."""
    quoted, waiting = False, True
    for offset, character in enumerate(raw):
        if waiting and character != " ":
            yield offset
            waiting = False
        quoted ^= character == '"'
        if character == delimiter and not quoted and not waiting:
            waiting = True
    if waiting:
        yield len(raw)


def _in_words(trouble: str) -> tuple[str, str]:
    if "unexpected end" in trouble:
        return "a quotation mark is opened here and not closed", "close it, or delete it"
    if "field larger" in trouble:
        return "a cell is longer than 131072 characters", "write one row a line"
    return "the quotation marks of this row do not pair", 'write a quotation mark inside a quoted cell twice: ""'
