"""Bytes of a table as text -> its rows: encoding and separator are told by the whole file."""

import csv
from collections.abc import Sequence
from pathlib import Path
from statistics import mode

from sitegen.authoring.recorded.grid import Grid, grid_row
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.records import read_records
from sitegen.reading.capture_logs.table_text import LONGEST_LINE, bytes_of

SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "upright strokes"}
_MARKS = ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be"))
_PROBED = 200
_ANOTHER = "open it in its program, and save it as UTF-8 text"


def read_plain_table(path: Path, problems: LogProblems) -> Grid | None:
    """None after an error."""
    text_told = read_any_text(path, problems)
    if text_told is None:
        return None
    text, remarks = text_told
    lines = text.split("\n")
    separator = separator_of(lines)
    if separator == "":
        problems.error("no separator parts its lines into cells", "save it with commas, semicolons or tabs; of a text log, "
                       "say what a line looks like with --lines")  # fmt: skip
        return None
    if separator != ",":
        remarks = (*remarks, f"cells are parted by {SEPARATORS[separator]}")
    records = read_records(lines, 1, separator, problems)
    rows = tuple(grid_row(record.line, record.cells, record.place) for record in records)
    return Grid(rows, remarks, separator)


def read_any_text(path: Path, problems: LogProblems) -> tuple[str, tuple[str, ...]] | None:
    """The text with `\\n` line ends, and what was told of its encoding; None after an error."""
    raw = bytes_of(path, problems, "split it, a file a season")
    if raw is None:
        return None
    text, remarks = _decoded(raw)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if "\0" in text:
        line = text.count("\n", 0, text.find("\0")) + 1
        problems.error("holds NUL bytes: it is damaged, or no text", _ANOTHER, lambda: (line, 1))
        return None
    too_long = next((number for number, line in enumerate(text.split("\n"), start=1) if len(line) > LONGEST_LINE), None)
    if too_long is not None:
        problems.error(f"the line is longer than {LONGEST_LINE} characters", "write one row a line", lambda: (too_long, 1))
        return None
    return text, remarks


def _decoded(raw: bytes) -> tuple[str, tuple[str, ...]]:
    for mark, encoding in _MARKS:
        if raw.startswith(mark):
            return raw[len(mark) :].decode(encoding, "replace"), (f"its byte-order mark says {encoding.upper()}",)
    try:
        return raw.decode("utf-8"), ()
    except UnicodeDecodeError:
        return raw.decode("cp1252", "replace"), ("it is no UTF-8, and was read as Windows-1252",)


def separator_of(lines: Sequence[str]) -> str:
    """The one by which most lines have the same number of cells, more than one; of equals the one with more cells. '' for
    none."""
    probed = [line for line in lines if line.strip() and not line.startswith("#")][:_PROBED]
    best = max(SEPARATORS, key=lambda separator: _agreement(probed, separator), default="")
    return best if probed and _agreement(probed, best)[0] > 0 else ""


def _agreement(lines: Sequence[str], separator: str) -> tuple[float, int]:
    """A comma inside numbers parts few lines alike: '18.04.2026;300,0;Ha' has as many as it has decimals."""
    try:
        counts = [len(cells) for cells in csv.reader(lines, delimiter=separator)]
    except csv.Error:
        counts = [line.count(separator) + 1 for line in lines]
    several = [count for count in counts if count > 1]
    if not several:
        return 0.0, 0
    usual = mode(several)
    return sum(count == usual for count in several) / len(lines) * (1.0 if separator != "," else 0.9), usual
