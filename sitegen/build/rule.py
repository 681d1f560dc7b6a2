"""The contract of the graph: a rule names its tasks, what each hangs on, and the function that does them."""

from collections.abc import Callable, Iterable, Mapping
from datetime import date
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from msgspec import Raw, Struct

from sitegen.build.stamps import Stamp
from sitegen.build.store import Output
from sitegen.problems import Problem

if TYPE_CHECKING:
    from sitegen.build.graph import Build

Value = TypeVar("Value", bound=Struct)


class Task(Struct, frozen=True):
    """`key` is the digest of all that shapes the result, but for the files that it reads and the code that makes it. `job` gives
    what the work is handed; it is called for stale tasks alone. `seconds` is about how long that takes, by which processes are
    started or not. `shown` names the task in a problem line."""

    name: str
    key: str
    job: Callable[[], Any]
    seconds: float
    shown: str = ""


class Outcome(Struct, Generic[Value], frozen=True, gc=False):
    """What the work of one task gives. `value` is told to later rules; `reads` are paths inside content/, `looked_under` prefixes
    of paths under which files were looked for; `outputs` are files of the site; `uses` names what it keeps in the store."""

    value: Value
    reads: tuple[str, ...] = ()
    looked_under: tuple[str, ...] = ()
    outputs: tuple[Output, ...] = ()
    problems: tuple[Problem, ...] = ()
    uses: tuple[str, ...] = ()


class TaskRecord(Struct, frozen=True, gc=False):
    """The outcome of a task as the manifest remembers it: its value encoded, its reads with the stamps that their files had.
    `code` is the version of the code that did it."""

    code: str
    key: str
    value: Raw
    reads: tuple[tuple[str, Stamp | None], ...] = ()
    looked_under: tuple[str, ...] = ()
    outputs: tuple[Output, ...] = ()
    problems: tuple[Problem, ...] = ()
    uses: tuple[str, ...] = ()


Records = Mapping[str, TaskRecord]


class Rule(Struct, Generic[Value], frozen=True):
    """`work` is 'module:function' below `sitegen.build`; it takes the context and the jobs of several tasks, and gives an Outcome
    for each. `value` is the type of what it tells later rules.

    `tasks` gives every task of the rule, in the order in which the manifest keeps them. `together` finds problems that only all
    tasks of the rule together show. `by_the_day`: an outcome may hang on the day.
    """

    name: str
    value: type[Value]
    work: str
    tasks: "Callable[[Build], Iterable[Task]]"
    doing: str
    stage: str
    counted: str
    counts_pages: bool = False
    together: "Callable[[Build], Iterable[Problem]]" = lambda build: ()
    most_at_once: int = 64
    in_this_process: bool = False
    by_the_day: bool = False
    prewarmed: bool = False

    def due_on(self, record: TaskRecord, day: date, today: date) -> bool:
        """A warning may hang on the day, and a day in the future comes. What held without a problem holds on every later day."""
        return self.by_the_day and day != today and (bool(record.problems) or today < day)

    @property
    def module(self) -> str:
        """Whose imports are the code behind this rule: 'sitegen.build.work.facts'."""
        return self.function.partition(":")[0]

    @property
    def function(self) -> str:
        return f"sitegen.build.{self.work}"
