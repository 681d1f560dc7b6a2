"""Rows of one table that tell of the same frame: it counts once, and the author hears of it."""

from collections.abc import Callable
from datetime import datetime

from msgspec import Struct, field

from sitegen.diary.sub import Sub
from sitegen.problems import errors_in
from sitegen.reading.capture_logs.joining import SHORT_S
from sitegen.reading.capture_logs.log_problems import LogProblems, Place

MOST_NAMED = 5
_Frame = tuple[datetime, float, str | None, str]
_Rows = list[Callable[[], Place]]


class RepeatedRows(Struct):
    """Exposures shorter than `SHORT_S` are left out: a camera begins several within the second that a log gives."""

    _rows: dict[_Frame, _Rows] = field(default_factory=dict)

    def see(self, sub: Sub, at: Callable[[], Place]) -> None:
        if sub.exposure_s >= SHORT_S:
            self._rows.setdefault((sub.start, sub.exposure_s, sub.filter, sub.kind), []).append(at)

    def tell(self, problems: LogProblems) -> None:
        """One warning, at the second row of the first such frame; none beside errors, which leave it open what a row is."""
        repeated = [places for places in self._rows.values() if len(places) > 1]
        if not repeated or errors_in(problems.all()):
            return
        more = f" (and so with {len(repeated) - 1} more)" if len(repeated) > 1 else ""
        lines = [place()[0] for place in repeated[0][: MOST_NAMED + 1]]
        named = [str(line) for line in lines[:MOST_NAMED]]
        others = len(repeated[0]) - MOST_NAMED
        last = f"{others} more" if others > 0 else named.pop()
        wrong = f"rows {', '.join(named)} and {last} are the same frame{more}: counted once"
        problems.warn(wrong, "delete all but one, or write the starts with their seconds", repeated[0][1])
