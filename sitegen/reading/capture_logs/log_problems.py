"""Where the problems of one log are put down: each once, and a mistake that runs through the whole log in one line."""

from collections.abc import Callable, Iterator

from msgspec import Struct, field

from sitegen.problems import Problem, Severity

MOST_PROBLEMS = 200
Place = tuple[int, int]


class ValueProblem(Exception):
    """A text cannot be understood. `wrong` continues the sentence 'NAME is TEXT, …'; `remedy` says what to write instead."""

    def __init__(self, wrong: str, remedy: str = "") -> None:
        super().__init__(wrong)
        self.wrong = wrong
        self.remedy = remedy


def top_of_file() -> Place:
    """Where a problem stands in a file that has no lines."""
    return 1, 1


class _Repeated(Struct):
    problem: Problem
    more: int = 0


class LogProblems(Struct):
    """`shown_path` is the log as problem lines show it. A place is worked out only for a problem that is shown: a log of nothing
    but nonsense must not take minutes to refuse."""

    shown_path: str
    _single: list[Problem] = field(default_factory=list)
    _repeated: dict[str, _Repeated] = field(default_factory=dict)
    _errors_untold: int = 0
    _warnings_untold: int = 0

    def error(self, wrong: str, remedy: str = "", at: Callable[[], Place] = top_of_file) -> None:
        self._put("error", wrong, remedy, at)

    def warn(self, wrong: str, remedy: str = "", at: Callable[[], Place] = top_of_file) -> None:
        self._put("warning", wrong, remedy, at)

    def in_entry(self, place: tuple[str, int, int], wrong: str, remedy: str = "") -> None:
        """An error in what the entry says about the log."""
        self._single.append(Problem(*place, wrong, remedy))

    def alike(self, severity: Severity, wrong: str, remedy: str, at: Callable[[], Place]) -> None:
        """A problem of which only the first place is shown, with the number of those that follow."""
        repeated = self._repeated.get(wrong)
        if repeated is not None:
            repeated.more += 1
        elif self.is_full:
            self.leave_untold(severity)
        else:
            self._repeated[wrong] = _Repeated(Problem(self.shown_path, *at(), wrong, remedy, severity))

    @property
    def is_full(self) -> bool:
        return len(self._single) + len(self._repeated) >= MOST_PROBLEMS

    def all(self) -> tuple[Problem, ...]:
        if not (self._single or self._repeated):
            return ()
        return (*self._single, *(_counted(repeated) for repeated in self._repeated.values()), *self._untold())

    def _put(self, severity: Severity, wrong: str, remedy: str, at: Callable[[], Place]) -> None:
        if self.is_full:
            self.leave_untold(severity)
        else:
            self._single.append(Problem(self.shown_path, *at(), wrong, remedy, severity))

    def leave_untold(self, severity: Severity) -> None:
        """Counted, but not told: there are enough."""
        self._errors_untold += severity == "error"
        self._warnings_untold += severity == "warning"

    def _untold(self) -> Iterator[Problem]:
        """Errors and warnings apart, so that a log with warnings alone stays without an error."""
        counts: tuple[tuple[Severity, int], ...] = (("error", self._errors_untold), ("warning", self._warnings_untold))
        for severity, count in counts:
            if count:
                wrong = f"{count} more {severity}s like these follow"
                yield Problem(self.shown_path, 1, 1, wrong, "mend the first ones and check again", severity)


def _counted(repeated: _Repeated) -> Problem:
    first = repeated.problem
    if not repeated.more:
        return first
    rows = "1 more row" if repeated.more == 1 else f"{repeated.more} more rows"
    return Problem(first.path, first.line, first.column, f"{first.wrong} (so in {rows})", first.remedy, first.severity)


def system_reason(trouble: OSError) -> str:
    """Why a file cannot be read, without the path of the author's machine."""
    return f"cannot be read: {trouble.strerror or 'the system refuses'}"
