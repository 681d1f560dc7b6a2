"""The assembly line: reading, facts, pictures, pages, writing. Top to bottom, each room called in its turn.

The heavy rooms (astropy, matplotlib, pyvips behind them) are imported late, here and nowhere else.
"""

import shutil
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from sitegen import __version__
from sitegen.folders import Folders
from sitegen.keeping.keep import Keep
from sitegen.problems import DiaryProblems, Problem, errors_in, in_order
from sitegen.reading.reader import read_diary
from sitegen.writing.publish import Published, publish


@dataclass(frozen=True, slots=True)
class Report:
    """What a rebuild did."""

    entries: int
    pages: int
    published: Published
    problems: tuple[Problem, ...]
    made: int
    kept: int

    def as_json(self) -> dict[str, Any]:
        return asdict(self)


def rebuild(folders: Folders, today: date, jobs: int | None = None, fresh: bool = False) -> Report:
    """The whole site. Raises DiaryProblems, with the earlier site untouched, where the diary has any error."""
    from sitegen import assembly

    if fresh and folders.keep is not None:
        shutil.rmtree(folders.keep, ignore_errors=True)
    reading = read_diary(folders.content, today, str(folders.content))
    if reading.diary is None:
        raise DiaryProblems(in_order(reading.problems))
    keep = Keep(folders.keep, __version__)
    drawn = assembly.assemble(reading.diary, folders, keep)
    problems = in_order([*reading.problems, *drawn.problems])
    if errors_in(problems):
        raise DiaryProblems(problems)
    published = publish(drawn.artifacts, folders.output, folders.keep)
    return Report(len(reading.diary.entries), drawn.pages, published, problems, keep.made, keep.kept)


def check(folders: Folders, today: date) -> tuple[Problem, ...]:
    """Every problem that a rebuild would meet, errors and warnings; nothing is published."""
    from sitegen import assembly

    reading = read_diary(folders.content, today, str(folders.content))
    if reading.diary is None:
        return in_order(reading.problems)
    found = assembly.problems_of(reading.diary, folders, Keep(folders.keep, __version__))
    return in_order([*reading.problems, *found])
