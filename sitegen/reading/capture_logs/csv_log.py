"""Capture logs as comma-separated tables; those that carry an ECSV head are read as ECSV."""

from sitegen.reading.capture_logs.ecsv_log import is_ecsv, read_ecsv_text
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.records import read_records
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.capture_logs.table import read_rows
from sitegen.reading.capture_logs.table_text import read_table_text

_OTHER_SEPARATORS = {";": "';'", "\t": "tabs", "|": "'|'"}


def read_csv(request: LogRequest) -> LogReading:
    problems = LogProblems(request.shown_path)
    text = read_table_text(request.path, problems)
    if text is None:
        return LogReading(problems=problems.all())
    if is_ecsv(text):
        return read_ecsv_text(text, request, problems)
    lines = text.split("\n")
    if _has_other_separator(lines, problems):
        return LogReading(problems=problems.all())
    return read_rows(read_records(lines, 1, ",", problems), request, problems)


def _has_other_separator(lines: list[str], problems: LogProblems) -> bool:
    first_row = next(((number, line) for number, line in enumerate(lines, start=1) if line.strip() and line[0] != "#"), None)
    if first_row is None:
        return False
    number, heading = first_row
    separator = max(_OTHER_SEPARATORS, key=heading.count)
    if heading.count(separator) <= heading.count(","):
        return False
    wrong = f"the columns are separated by {_OTHER_SEPARATORS[separator]}"
    problems.error(wrong, "save the table with commas, and numbers with points", lambda: (number, heading.index(separator) + 1))
    return True


READER = Reader("comma-separated table", (".csv",), read_csv)
