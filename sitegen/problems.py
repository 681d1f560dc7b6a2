"""What is wrong in an author's file, where, and how to mend it. The one place that words a problem line."""

import difflib
import errno
import os
from collections.abc import Iterable
from pathlib import Path
from typing import Literal

from msgspec import Struct

MORE_MEMORY = "close other programs, or rebuild with --jobs 1"
_REMEDIES = {
    errno.ENOSPC: "free some space and rebuild",
    errno.EDQUOT: "free some space and rebuild",
    errno.EACCES: "make the folder writable, or choose another with --output",
    errno.EPERM: "make the folder writable, or choose another with --output",
    errno.EROFS: "the file system is read-only; choose another folder with --output",
    errno.ENOMEM: MORE_MEMORY,
}

_SHARING_VIOLATION, _LOCK_VIOLATION = 32, 33  # winerror.h

Severity = Literal["error", "warning"]


class Problem(Struct, frozen=True, order=True):
    """One thing to mend. `path` is as the author would type it (from the folder the command ran in);
    `line` and `column` count from 1, and are 1 where a file has no lines (a picture, a FITS header)."""

    path: str
    line: int
    column: int
    wrong: str
    remedy: str = ""
    severity: Severity = "error"

    def __str__(self) -> str:
        remedy = f"; {self.remedy}" if self.remedy else ""
        return one_line(f"{self.path}:{self.line}:{self.column}: {self.severity}: {self.wrong}{remedy}")


class DiaryProblems(Exception):
    """The diary cannot be built; carries every problem found, warnings included."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(map(str, self.problems)))


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Each problem once, by file, line and column."""
    return tuple(sorted(set(problems)))


def errors_in(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(problem for problem in problems if problem.severity == "error")


def did_you_mean(word: str, names: Iterable[str]) -> str | None:
    """The nearest known word, or None where none is near."""
    by_folded = {candidate.casefold(): candidate for candidate in sorted(names)}
    near = difflib.get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[near[0]] if near else None


def hint_for(word: str, names: Iterable[str]) -> str:
    """The remedy for an unknown word: the nearest known one, else the list of them."""
    candidates = sorted(set(names))
    near = did_you_mean(word, candidates)
    if near is not None:
        return f"did you mean '{near}'?"
    if not candidates:
        return "none is defined"
    return "known: " + ", ".join(candidates[:12]) + (", …" if len(candidates) > 12 else "")


def system_problem(trouble: OSError, place: str, roots: Iterable[Path] = ()) -> Problem:
    """What the operating system refused while a site was made; `place` is named where the system names no file. A file is named
    from one of the folders `roots`: the path of the author's machine is not told."""
    words = os.strerror(trouble.errno).lower() if trouble.errno else "an unknown failure"
    remedy = _REMEDIES.get(trouble.errno or 0, "the earlier site is untouched")
    if getattr(trouble, "winerror", None) in (_SHARING_VIOLATION, _LOCK_VIOLATION):
        words, remedy = "another program has the file open", "close that program (a browser, an editor, a scanner), and rebuild"
    file = trouble.filename2 or trouble.filename
    shown = _from_a_root(os.fsdecode(file), roots) if isinstance(file, str | bytes | os.PathLike) else place
    return Problem(shown, 1, 1, f"the site could not be written: {words}", remedy)


def _from_a_root(file: str, roots: Iterable[Path]) -> str:
    """'.sitegen/logs' of a file below one of the folders; its bare name for any other."""
    path = Path(os.path.abspath(file))  # noqa: PTH100 # a link in it is not followed
    for root in (root.absolute() for root in roots):
        if path.is_relative_to(root):
            return path.relative_to(root.parent).as_posix()
    return path.name


def one_line(text: str) -> str:
    """Control characters would let a file's content forge lines in the terminal."""
    return text if text.isprintable() else "".join(letter if letter.isprintable() else "\ufffd" for letter in text)
