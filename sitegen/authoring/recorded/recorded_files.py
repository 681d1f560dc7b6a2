"""Files that are no frames -> what they say of frames: canonical tables by their strict readers, others by example, text logs by
pattern."""

from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct, field

from sitegen.authoring.recorded.asked_columns import AskedColumns
from sitegen.authoring.recorded.doubts import AskedFor
from sitegen.authoring.recorded.line_patterns import LinePattern, line_patterns
from sitegen.authoring.recorded.plain_table import read_any_text
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.recorded.spreadsheet import SPREADSHEETS
from sitegen.authoring.recorded.table_by_example import RecordedReading, read_table_by_example
from sitegen.authoring.recorded.text_log import LinesRead, read_lines, subs_of_lines
from sitegen.problems import DiaryProblems, errors_in
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.registry import is_log, read_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.nodes import quoted

TABLES = (".csv", ".tsv", ".tab", *SPREADSHEETS)
_CANONICAL = ("'start'", "'exposure_s'")
HOW_TO_TELL_LINES = "say what a line looks like, as in --lines '{start:%H:%M:%S} … {exposure_s} s … {filter}'"


class RecordedRequest(Struct, frozen=True):
    """What the author said of tables and lines, and what was said before. Tables below `strict_below` are read as the diary's
    own."""

    columns: AskedColumns = field(default_factory=dict)
    patterns: tuple[LinePattern, ...] = ()
    memory: ShapeMemory = field(default_factory=lambda: ShapeMemory(None))
    strict_below: Path | None = None


def read_recorded(request: LogRequest, recorded: RecordedRequest) -> RecordedReading:
    """Never raises for what a file can hold."""
    suffix = request.path.suffix.casefold()
    if suffix == ".ecsv" or _is_inside(request.path, recorded.strict_below):
        return _strictly(read_log(request))
    if suffix == ".csv" and not recorded.columns:
        strict = read_log(request)
        if strict.subs and not errors_in(strict.problems):
            return _strictly(strict)
        by_example = read_table_by_example(request, recorded.columns, recorded.memory)
        return _strictly(strict) if errors_in(by_example.problems) and _looks_canonical(strict) else by_example
    if suffix in TABLES:
        return read_table_by_example(request, recorded.columns, recorded.memory)
    return _text_log_or_table(request, recorded)


def _is_inside(path: Path, root: Path | None) -> bool:
    return root is not None and path.resolve().is_relative_to(root)


def _strictly(reading: LogReading) -> RecordedReading:
    return RecordedReading(reading.subs, reading.problems)


def _looks_canonical(strict: LogReading) -> bool:
    """Whether its headings are the diary's own: then only cells are wrong, and the strict words about them are the plainer
    ones."""
    words = [problem.wrong for problem in strict.problems]
    if any("no column" in word for word in words):
        return False
    return bool(strict.subs) or any(word.startswith(_CANONICAL) for word in words)


def _text_log_or_table(request: LogRequest, recorded: RecordedRequest) -> RecordedReading:
    if recorded.patterns:
        reading = read_text_log(request, recorded.patterns, recorded)
        if reading.subs and not errors_in(reading.problems):
            recorded.memory.remember_lines(tuple(pattern.text for pattern in recorded.patterns))
        return reading
    for texts in recorded.memory.lines:
        patterns = _usable(texts)
        reading = read_text_log(request, patterns, recorded) if patterns else RecordedReading()
        if reading.subs:
            remarks = f"its lines are read as before, by {' and '.join(map(quoted, texts))}"
            return RecordedReading(reading.subs, reading.problems, (remarks, *reading.told))
    reading = read_table_by_example(request, recorded.columns, recorded.memory)
    if reading.subs or not is_text_log_name(request.path):
        return reading
    problems = LogProblems(request.shown_path)
    problems.error("is read as a text log, and no pattern says how", HOW_TO_TELL_LINES)
    return RecordedReading((), problems.all()) if _has_no_heading(reading) else reading


def is_text_log_name(path: Path) -> bool:
    return path.suffix.casefold() in (".log", ".txt", "") or not is_log(path.name)


def _has_no_heading(reading: RecordedReading) -> bool:
    return any("no separator" in problem.wrong or "heading" in problem.wrong for problem in reading.problems)


def _usable(texts: Sequence[str]) -> tuple[LinePattern, ...]:
    try:
        return line_patterns(texts)
    except DiaryProblems:
        return ()


def read_text_log(request: LogRequest, patterns: Sequence[LinePattern], recorded: RecordedRequest) -> RecordedReading:
    problems = LogProblems(request.shown_path)
    text_told = read_any_text(request.path, problems)
    if text_told is None:
        return RecordedReading((), problems.all())
    text, remarks = text_told
    read = read_lines(text, patterns, problems)
    if not read.frames:
        _say_no_match(text, read, problems)
        return RecordedReading((), problems.all(), remarks)
    said = recorded.columns["dates"].heading if "dates" in recorded.columns else ""
    first_line = next((line for line in text.split("\n") if line.strip()), "")
    try:
        subs, about = subs_of_lines(read, first_line[:200], request, said, problems)
    except AskedFor as open_question:
        problems.error(open_question.wrong, open_question.remedy)
        return RecordedReading((), problems.all(), remarks)
    if not subs and not problems.all():
        problems.warn("tells of no whole frame", "do its patterns tell the exposure, or the end?")
    return RecordedReading(subs, problems.all(), (*remarks, *about))


def _say_no_match(text: str, read: LinesRead, problems: LogProblems) -> None:
    if errors_in(problems.all()):
        return
    number, line = next(((number, line) for number, line in enumerate(text.split("\n"), start=1) if line.strip()), (1, ""))
    problems.error(f"no line matches a pattern with {{start}} or {{end}}; the first is {quoted(line[:80])}", HOW_TO_TELL_LINES,
                   lambda: (number, 1))  # fmt: skip
