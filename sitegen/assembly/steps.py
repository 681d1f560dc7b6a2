"""The heavy tasks of the line, handed in by who may import late: each loads its libraries when it is first called."""

from collections.abc import Callable
from typing import Any

from msgspec import Struct

from sitegen.assembly.crew import Task
from sitegen.assembly.records import DrawnPages, FactsOfEntry, ReadEntry
from sitegen.problems import Problem

Progress = Callable[[str, int, int], None]
"""Called with what is being done, how many of it are done, and of how many."""


def unwatched(doing: str, done: int, total: int) -> None:
    """Nobody waits for it."""


class Steps(Struct, frozen=True):
    """Named after what they do; see `entry_reading`, `entry_facts`, `entry_drawing`, `entry_texts`, `lists`."""

    read: Task[Any, ReadEntry]
    facts: Task[Any, FactsOfEntry]
    draw: Task[Any, DrawnPages]
    nights: Task[Any, DrawnPages]
    lists: Task[Any, DrawnPages]
    texts: Task[Any, bool]
    feeds: Task[Any, DrawnPages]
    mistakes: Callable[..., list[Problem]]
    picture_work: Callable[..., Any]
    measure: Callable[..., Any]
    list_names: Callable[[], tuple[str, ...]]
    progress: Progress = unwatched
