"""The diagnostics on which one author file is read: where it lies, what day it is, and where its problems are put down."""

from collections.abc import Callable
from datetime import date
from typing import Protocol, TypeVar

from msgspec import Struct, field

from sitegen.problems import Problem
from sitegen.reading.content_folder import ContentFolder

Result = TypeVar("Result")
MOST_PROBLEMS = 100


class Placed(Protocol):
    """Anything that stands somewhere in a file, counted from 1."""

    @property
    def line(self) -> int: ...

    @property
    def column(self) -> int: ...


class Place(Struct, frozen=True):
    line: int = 1
    column: int = 1


class TooManyProblems(Exception):
    """There is no sense in looking for more problems in this file."""


class Diagnostics(Struct, frozen=True):
    """`shown` is the file's path as the author would type it.

    A file with more problems than `MOST_PROBLEMS` is not what it is taken for: reading it stops there, so that no file,
    however large, takes long to refuse.
    """

    shown: str
    content: ContentFolder
    today: date
    problems: list[Problem] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    """What every path or pattern begins with that was looked up in content/: where a file comes or goes under one of
    these, the file on this diagnostics must be read again."""

    def error(self, at: Placed, wrong: str, remedy: str = "") -> None:
        self._put_down(Problem(self.shown, at.line, at.column, wrong, remedy))

    def warn(self, at: Placed, wrong: str, remedy: str = "") -> None:
        self._put_down(Problem(self.shown, at.line, at.column, wrong, remedy, "warning"))

    @property
    def clean(self) -> bool:
        """No error so far; warnings do not count."""
        return all(problem.severity == "warning" for problem in self.problems)

    def until_full(self, work: Callable[[], Result]) -> Result | None:
        """What comes of the work; None where it ended because there was no room for another problem."""
        try:
            return work()
        except TooManyProblems:
            return None

    def _put_down(self, problem: Problem) -> None:
        if len(self.problems) < MOST_PROBLEMS:
            self.problems.append(problem)
            return
        if len(self.problems) == MOST_PROBLEMS:
            wrong, remedy = f"this file has more than {MOST_PROBLEMS} problems", "mend those above first"
            self.problems.append(Problem(self.shown, problem.line, problem.column, wrong, remedy))
        raise TooManyProblems
