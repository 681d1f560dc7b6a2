"""Diaries as text: a sentence, then each file under '=== PATH', then '=== problems' and the lines expected, word for word.

A broken diary holds only what differs from `sound.diary`. Besides '=== PATH' there are
'=== PATH is gone', '=== PATH is a folder', '=== PATH links to TARGET', and '=== PATH in bytes' (escapes as in Python).
"""

import re
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).parent
BROKEN = sorted((HERE / "broken").glob("*.diary"))
_HEADING = re.compile(r"^=== (?P<path>.+?)(?: (?P<how>is gone|is a folder|links to|in bytes)(?: (?P<to>\S+))?)?$", re.MULTILINE)


@dataclass(frozen=True)
class DiaryText:
    promise: str
    parts: tuple[tuple[str, str | None, str | None, str], ...]
    problems: tuple[str, ...]


def read_diary_text(path: Path) -> DiaryText:
    text = path.read_text(encoding="utf-8")
    found = list(_HEADING.finditer(text))
    ends = [heading.start() for heading in found[1:]] + [len(text)]
    parts = [(h["path"], h["how"], h["to"], _content(text[h.end() : end])) for h, end in zip(found, ends, strict=True)]
    problems = next(content for path, _, _, content in parts if path == "problems")
    promise = text[: found[0].start()].strip()
    return DiaryText(promise, tuple(part for part in parts if part[0] != "problems"), tuple(problems.splitlines()))


def lay_out(diary: DiaryText, content: Path) -> None:
    """Write the sound diary with this one's files over it."""
    for path, how, to, text in (*read_diary_text(HERE / "sound.diary").parts, *diary.parts):
        file = content / path
        file.parent.mkdir(parents=True, exist_ok=True)
        if file.is_symlink() or file.is_file():
            file.unlink()
        if how == "links to":
            file.symlink_to(to or "")
        elif how == "is a folder":
            file.mkdir()
        elif how == "in bytes":
            file.write_bytes(text.rstrip("\n").encode("ascii").decode("unicode_escape").encode("latin-1"))
        elif how is None:
            file.write_text(text, encoding="utf-8", newline="")


def _content(text: str) -> str:
    """Without the line end of the heading and the empty line before the next."""
    return text.removeprefix("\n").rstrip("\n") + "\n"
