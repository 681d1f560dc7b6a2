"""A gathered log as text that is changed in place: cells, rows and columns; every other character stays as its author left it."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from sitegen.authoring.log_cells import quoted_cell, spans_of
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.records import Record, read_records

_BYTE_ORDER_MARK = "\ufeff"
_COMMAS = re.compile(r"#\s*delimiter:\s*['\"]?,")


class Row(Struct):
    """One row of the table: its own text without the line end, and where in it each cell stands. `count` frames in a row;
    `end` is what stands before the line feed."""

    text: str
    spans: list[tuple[int, int]]
    count: int = 1
    end: str = ""


class LogTable(Struct):
    """`head` are the lines before the heading line; `pieces` the rows and, between them as text, whatever else stands there.
    `columns` holds the index of each heading. `end` is what this table has before a line feed: nothing, or a carriage return.
    `ends_open` where the last line has no end."""

    head: list[str]
    heading: str
    pieces: list[Row | str]
    columns: dict[str, int]
    delimiter: str
    end: str
    ends_open: bool

    @property
    def rows(self) -> list[Row]:
        return [piece for piece in self.pieces if isinstance(piece, Row)]


def parse_table(text: str) -> LogTable:
    """Of an ECSV that was read without an error."""
    lines = text.split("\n")
    ends_open = lines[-1] != ""
    if not ends_open:
        lines.pop()
    size = next(number for number, line in enumerate(lines) if line.strip() and not line.lstrip(_BYTE_ORDER_MARK).startswith("#"))
    delimiter = "," if any(_COMMAS.match(line) for line in lines[:size]) else " "
    records = list(read_records([line.rstrip("\r") for line in lines[size:]], size + 1, delimiter, LogProblems("")))
    columns = {cell.strip().casefold(): index for index, cell in reversed(list(enumerate(records[0].cells)))}
    end = "\r" if lines[size].endswith("\r") else ""
    table = LogTable(lines[:size], lines[size].rstrip("\r"), [], columns, delimiter, end, ends_open)
    _add_rows(table, records[1:], lines, size)
    return table


def _add_rows(table: LogTable, records: Sequence[Record], lines: list[str], size: int) -> None:
    done = size + 1
    counts = table.columns.get("count")
    for record in records:
        first, last = size + record.first, size + record.last
        table.pieces += lines[done:first]
        raw = "\n".join(lines[first:last])
        text = raw.rstrip("\r")
        cell = record.cells[counts].strip() if counts is not None and counts < len(record.cells) else ""
        table.pieces.append(Row(text, spans_of(text, table.delimiter), int(float(cell)) if cell else 1, raw[len(text) :]))
        done = last
    table.pieces += lines[done:]



def set_cells(table: LogTable, row: Row, cells: Mapping[str, str]) -> None:
    """Every column has to be there."""
    for index, value in sorted(((table.columns[name], value) for name, value in cells.items()), reverse=True):
        start, end = row.spans[index]
        cell = row.text[start:end]
        lead = len(cell) - len(cell.lstrip()) if cell.strip() else 0
        trail = len(cell) - len(cell.rstrip()) if cell.strip() else 0
        kept_after = cell[len(cell) - trail :] if trail else ""
        row.text = f"{row.text[:start]}{cell[:lead]}{quoted_cell(value, table.delimiter)}{kept_after}{row.text[end:]}"
    row.spans = spans_of(row.text, table.delimiter)


def add_columns(table: LogTable, columns: Sequence[tuple[str, str, str]]) -> None:
    """(name, ECSV type, unit), behind those there are; their cells are empty."""
    if not columns:
        return
    end = _end_of_columns(table.head)
    table.head[end:end] = [f"{column_line(*column)}{table.end}" for column in columns]
    headings = len(spans_of(table.heading, table.delimiter))
    width = max([headings, *(len(row.spans) for row in table.rows)])
    for index, (name, _, _) in enumerate(columns):
        table.columns[name] = width + index
    table.heading += table.delimiter * (width - headings) + "".join(f"{table.delimiter}{name}" for name, _, _ in columns)
    empty = f"{table.delimiter}{quoted_cell('', table.delimiter)}"
    for row in table.rows:
        row.text += empty * (width - len(row.spans) + len(columns))
        row.spans = spans_of(row.text, table.delimiter)


def column_line(name: str, kind: str, unit: str) -> str:
    return f"# - {{name: {name}, {f'unit: {unit}, ' if unit else ''}datatype: {kind}}}"


def _end_of_columns(head: Sequence[str]) -> int:
    """Behind the last line of the list of columns."""
    columns = (number for number, line in enumerate(head) if line.startswith("# - ") and "datatype" in line)
    return max(columns, default=len(head) - 1) + 1


def new_rows(table: LogTable, texts: Mapping[str, Sequence[str]]) -> Iterator[Row]:
    """Rows to be put in, of which `texts` has each column's; where their cells stand is of no interest."""
    count = max(map(len, texts.values()), default=0)
    names = [name for name, _ in sorted(table.columns.items(), key=lambda column: column[1])]
    columns = (_quoted(texts.get(name, [""] * count), table.delimiter) for name in names)
    return (Row(table.delimiter.join(cells), [], end=table.end) for cells in zip(*columns, strict=True))


def _quoted(texts: Sequence[str], delimiter: str) -> list[str]:
    """Each text is quoted once: most rows have it from the row before, and often all."""
    quoted = {text: quoted_cell(text, delimiter) for text in set(texts)}
    return [quoted[text] for text in texts] if len(quoted) != 1 else [*quoted.values()] * len(texts)


def insert_rows(table: LogTable, new: Iterable[tuple[datetime, Row]], starts: Sequence[datetime]) -> None:
    """Each before the first row that starts later; `starts` are those of the rows there are, of a run the first."""
    waiting = sorted(new, key=lambda pair: pair[0], reverse=True)
    pieces: list[Row | str] = []
    place = 0
    for piece in table.pieces:
        if isinstance(piece, Row):
            while waiting and waiting[-1][0] < starts[place]:
                pieces.append(waiting.pop()[1])
            place += 1
        pieces.append(piece)
    while pieces and isinstance(pieces[-1], str) and not pieces[-1].strip() and waiting:
        pieces.pop()
    table.pieces = [*pieces, *(row for _, row in reversed(waiting))]


def remove_rows(table: LogTable, rows: Iterable[Row]) -> None:
    gone = set(map(id, rows))
    table.pieces = [piece for piece in table.pieces if id(piece) not in gone]


def table_text(table: LogTable) -> str:
    pieces = (f"{piece.text}{piece.end}" if isinstance(piece, Row) else piece for piece in table.pieces)
    return "\n".join([*table.head, f"{table.heading}{table.end}", *pieces]) + ("" if table.ends_open else "\n")


def new_table(columns: Sequence[tuple[str, str, str]], mark: str) -> LogTable:
    """ECSV 1.0 (Astropy Proposal for Enhancement 6), without a row."""
    head = ["# %ECSV 1.0", "# ---", "# datatype:", *(column_line(*column) for column in columns), mark,
            "# delimiter: ','", "# schema: astropy-2.0"]  # fmt: skip
    names = [name for name, _, _ in columns]
    return LogTable(head, ",".join(names), [], {name: index for index, name in enumerate(names)}, ",", "", False)
