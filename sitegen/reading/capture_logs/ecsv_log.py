"""Capture logs as ECSV (Astropy Proposal for Enhancement 6): a head in YAML behind `#`, then a table."""

from functools import partial

import yaml
from msgspec import Struct, field

from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.records import read_records
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.capture_logs.table import read_rows
from sitegen.reading.capture_logs.table_text import read_table_text
from sitegen.reading.yaml_text import FAST_LOADER

_FIRST_WORDS = "# %ECSV "
_LARGEST_HEAD = 100_000
SEPARATORS = (" ", ",")


class _Head(Struct):
    """`units` by column name; `lines` of the file it takes."""

    lines: int
    delimiter: str = " "
    units: dict[str, str] = field(default_factory=dict)


def is_ecsv(text: str) -> bool:
    return text.startswith(_FIRST_WORDS)


def read_ecsv(request: LogRequest) -> LogReading:
    problems = LogProblems(request.shown_path)
    text = read_table_text(request.path, problems)
    if text is None:
        return LogReading(problems=problems.all())
    if not is_ecsv(text):
        problems.error("does not begin as ECSV does", "let its first line be '# %ECSV 1.0', or call it .csv")
        return LogReading(problems=problems.all())
    return read_ecsv_text(text, request, problems)


def read_ecsv_text(text: str, request: LogRequest, problems: LogProblems) -> LogReading:
    lines = text.split("\n")
    head = _read_head(lines, problems)
    if head is None:
        return LogReading(problems=problems.all())
    records = read_records(lines[head.lines :], head.lines + 1, head.delimiter, problems)
    return read_rows(records, request, problems, head.units)


def _read_head(lines: list[str], problems: LogProblems) -> _Head | None:
    size = next((number for number, line in enumerate(lines) if not line.startswith("#")), len(lines))
    yaml_text = "\n".join(line[2:] for line in lines[1:size])
    if len(yaml_text) > _LARGEST_HEAD:
        problems.error("the head is longer than 100,000 characters", "leave out what is no column", partial(_place, None))
        return None
    try:
        root = yaml.compose(yaml_text, FAST_LOADER)
    except (yaml.YAMLError, ValueError, OverflowError, RecursionError) as trouble:
        mark = getattr(trouble, "problem_mark", None)
        problems.error("the head is not YAML", "let the program that wrote it write it again", partial(_place, mark))
        return None
    return _head_of(root, size, problems)


def _place(mark: yaml.Mark | None) -> tuple[int, int]:
    """In the file: below the first line, behind `# `."""
    return (mark.line + 2, mark.column + 3) if mark is not None else (2, 1)


def _head_of(root: yaml.Node | None, size: int, problems: LogProblems) -> _Head | None:
    head, top = _Head(size), _mapping(root)
    delimiter = getattr(top.get("delimiter"), "value", " ")
    if delimiter not in SEPARATORS:
        at = partial(_place, top["delimiter"].start_mark)
        problems.error(f"the delimiter is '{delimiter}'", "ECSV knows the comma and the blank", at)
        return None
    head.delimiter = delimiter
    columns = top.get("datatype")
    for column in columns.value if isinstance(columns, yaml.SequenceNode) else ():
        attributes = {key: node.value for key, node in _mapping(column).items() if isinstance(node, yaml.ScalarNode)}
        if "unit" in attributes:
            head.units[attributes.get("name", "")] = attributes["unit"]
    return head


def _mapping(node: yaml.Node | None) -> dict[str, yaml.Node]:
    if not isinstance(node, yaml.MappingNode):
        return {}
    return {key.value: value for key, value in node.value if isinstance(key, yaml.ScalarNode)}


READER = Reader("ECSV table", (".ecsv",), read_ecsv)
