"""Text of a table -> records that know where each of their cells stands."""

import csv
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import islice
from typing import NamedTuple

from sitegen.reading.capture_logs.log_problems import LogProblems


class Record(NamedTuple):
    """`cells` came from `table[first:last]`, where `table` begins in the file's line number `first_line`."""

    cells: list[str]
    table: Sequence[str]
    first: int
    last: int
    first_line: int
    delimiter: str

    @property
    def line(self) -> int:
        return self.first_line + self.first

    def place(self, index: int) -> Callable[[], tuple[int, int]]:
        """Gives line and column of a cell; of the end of the record where it has no such cell."""
        return partial(_place, self, index)

    def start(self) -> tuple[int, int]:
        """Line and column of the record itself."""
        return self.line, 1


def read_records(lines: Sequence[str], first_line: int, delimiter: str, problems: LogProblems) -> Iterator[Record]:
    """Every row that is neither blank nor a `#` comment; `first_line` is the file's number of the first of `lines`."""
    source = csv.reader((line + "\n" for line in lines), delimiter=delimiter, strict=True, skipinitialspace=True)
    done = 0
    while True:
        try:
            cells = next(source, None)
        except csv.Error as trouble:
            problems.error(*_in_words(str(trouble)), at=Record([], lines, done, done, first_line, delimiter).start)
            return
        if cells is None:
            return
        if any(cells) and not cells[0].startswith("#"):
            yield Record(cells, lines, done, source.line_num, first_line, delimiter)
        done = source.line_num


def _place(record: Record, index: int) -> tuple[int, int]:
    raw = "\n".join(record.table[record.first : record.last])
    start = next(islice(_cell_starts(raw, record.delimiter), index, None), len(raw))
    before = raw[:start]
    return record.line + before.count("\n"), len(before) - before.rfind("\n")


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
        return "a cell is longer than 131072 characters", "is a quotation mark opened here and not closed?"
    return "the quotation marks of this row do not pair", 'write a quotation mark inside a quoted cell twice: ""'
