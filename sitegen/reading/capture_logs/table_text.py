"""Bytes of a table -> its text, or the reason why not."""

from functools import partial
from pathlib import Path

from sitegen.reading.capture_logs.log_problems import LogProblems, system_reason

LARGEST_BYTES = 16_000_000
LONGEST_LINE = 100_000
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_UTF_8_MARK = b"\xef\xbb\xbf"
SAVE_AS_UTF_8 = "save it as UTF-8"


def read_table_text(path: Path, problems: LogProblems) -> str | None:
    """The text with `\\n` line ends and without a byte-order mark; None after an error."""
    raw = bytes_of(path, problems, "split the log, a file a season")
    text = None if raw is None else _decoded(raw, problems)
    if text is None:
        return None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return text if _is_printable(text, problems) and _has_short_lines(text, problems) else None


def bytes_of(path: Path, problems: LogProblems, cure: str) -> bytes | None:
    """`cure` for a file that is too large; None after an error."""
    try:
        with path.open("rb") as file:
            raw = file.read(LARGEST_BYTES + 1)
    except OSError as trouble:
        problems.error(system_reason(trouble))
        return None
    if len(raw) > LARGEST_BYTES:
        problems.error(f"is larger than {LARGEST_BYTES // 1_000_000} MB", cure)
        return None
    return raw


def _decoded(raw: bytes, problems: LogProblems) -> str | None:
    if raw.startswith(_UTF_16):
        problems.error("is UTF-16 text", SAVE_AS_UTF_8)
        return None
    if raw.startswith(_UTF_8_MARK):
        problems.warn("begins with a byte-order mark", "save it as UTF-8 without one")
        raw = raw[len(_UTF_8_MARK) :]
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as trouble:
        before = raw[: trouble.start].decode("utf-8")
        byte = raw[trouble.start]
        problems.error(f"is not UTF-8 text (byte 0x{byte:02X})", SAVE_AS_UTF_8, partial(_place, before, len(before)))
        return None


def _is_printable(text: str, problems: LogProblems) -> bool:
    nul = text.find("\0")
    if nul >= 0:
        wrong = "a NUL byte stands here: the file is damaged, or no text"
        problems.error(wrong, "export the log again", partial(_place, text, nul))
    return nul < 0


def _has_short_lines(text: str, problems: LogProblems) -> bool:
    for number, line in enumerate(text.split("\n"), start=1):
        if len(line) > LONGEST_LINE:
            problems.error(f"the line is {len(line)} characters long", "write one row a line", partial(_line, number))
            return False
    return True


def _line(number: int) -> tuple[int, int]:
    return number, 1


def _place(text: str, index: int) -> tuple[int, int]:
    """Line and column of a character."""
    return text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index)
