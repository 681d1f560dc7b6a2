"""The desk on which one author file is read: where it lies, what day it is, and where its problems are put down."""

from dataclasses import dataclass, field
from datetime import date
from typing import Protocol

from sitegen.problems import Problem
from sitegen.reading.content_folder import ContentFolder


class Placed(Protocol):
    """Anything that stands somewhere in a file, counted from 1."""

    @property
    def line(self) -> int: ...

    @property
    def column(self) -> int: ...


@dataclass(frozen=True, slots=True)
class Place:
    line: int = 1
    column: int = 1


@dataclass(frozen=True, slots=True)
class Desk:
    """`shown` is the file's path as the author would type it."""

    shown: str
    content: ContentFolder
    today: date
    problems: list[Problem] = field(default_factory=list)

    def error(self, at: Placed, wrong: str, remedy: str = "") -> None:
        self.problems.append(Problem(self.shown, at.line, at.column, wrong, remedy))

    def warn(self, at: Placed, wrong: str, remedy: str = "") -> None:
        self.problems.append(Problem(self.shown, at.line, at.column, wrong, remedy, "warning"))

    @property
    def clean(self) -> bool:
        """No error so far; warnings do not count."""
        return all(problem.severity == "warning" for problem in self.problems)
