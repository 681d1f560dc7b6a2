"""Where the problems of one log are put down: each once, and a mistake that runs through the whole log in one line."""

from dataclasses import dataclass, field

from sitegen.problems import Problem, Severity

MOST_PROBLEMS = 200


class Doubt(Exception):
    """A text cannot be understood. `wrong` continues the sentence 'NAME is TEXT, …'; `remedy` says what to write instead."""

    def __init__(self, wrong: str, remedy: str = "") -> None:
        super().__init__(wrong)
        self.wrong = wrong
        self.remedy = remedy


@dataclass(slots=True)
class _Repeated:
    problem: Problem
    more: int = 0


@dataclass(slots=True)
class LogProblems:
    """`shown_path` is the log as problem lines show it."""

    shown_path: str
    _single: list[Problem] = field(default_factory=list)
    _repeated: dict[str, _Repeated] = field(default_factory=dict)

    def error(self, wrong: str, remedy: str = "", at: tuple[int, int] = (1, 1)) -> None:
        self._single.append(Problem(self.shown_path, *at, wrong, remedy))

    def warn(self, wrong: str, remedy: str = "", at: tuple[int, int] = (1, 1)) -> None:
        self._single.append(Problem(self.shown_path, *at, wrong, remedy, "warning"))

    def in_entry(self, place: tuple[str, int, int], wrong: str, remedy: str = "") -> None:
        """An error in what the entry says about the log."""
        self._single.append(Problem(*place, wrong, remedy))

    def alike(self, severity: Severity, wrong: str, remedy: str, at: tuple[int, int]) -> None:
        """A problem of which only the first place is shown, with the number of those that follow."""
        known = self._repeated.get(wrong)
        if known is None:
            self._repeated[wrong] = _Repeated(Problem(self.shown_path, *at, wrong, remedy, severity))
        else:
            known.more += 1

    def all(self) -> tuple[Problem, ...]:
        if not (self._single or self._repeated):
            return ()
        found = self._single + [_counted(each) for each in self._repeated.values()]
        if len(found) <= MOST_PROBLEMS:
            return tuple(found)
        rest = f"{len(found) - MOST_PROBLEMS} more problems like these follow"
        found.sort(key=lambda problem: (problem.severity, problem))
        return (*found[:MOST_PROBLEMS], Problem(self.shown_path, 1, 1, rest, "mend the first ones and check again"))


def _counted(each: _Repeated) -> Problem:
    first = each.problem
    if not each.more:
        return first
    rows = "1 more row" if each.more == 1 else f"{each.more} more rows"
    return Problem(first.path, first.line, first.column, f"{first.wrong} (so in {rows})", first.remedy, first.severity)


def system_reason(trouble: OSError) -> str:
    """Why a file cannot be read, without the path of the author's machine."""
    return f"cannot be read: {trouble.strerror or 'the system refuses'}"
