"""The filters of a table's rows: the rig's short name of each, and each unknown one told once with the number of its subs."""

from collections.abc import Callable

from msgspec import Struct

from sitegen.diary.rig import Rig
from sitegen.diary.sub import FrameKind
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS, match_filter, needs_filter, width_disagrees
from sitegen.reading.capture_logs.log_problems import LogProblems, Place
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.unknown_filters import unknown_filter


class _Spelling(Struct):
    """`first` is where it stands first; `frames` those that need a filter, `lights` the light frames among them."""

    short: str | None
    first: Callable[[], Place]
    frames: int = 0
    lights: int = 0


class RowFilters:
    """Every row is taken before the first is answered."""

    def __init__(self, request: LogRequest) -> None:
        self.rig, self.default = request.rig, request.filter or ""
        self.spellings: dict[str, _Spelling] = {}

    def take(self, words: str, kind: FrameKind, frames: int, at: Callable[[], Place]) -> None:
        spelling = self.spellings.get(words)
        if spelling is None:
            spelling = self.spellings[words] = _Spelling(self._match(words), at)
        if needs_filter(kind):
            spelling.first = spelling.first if spelling.frames else at
            spelling.frames += frames
            spelling.lights += frames * (kind == "light")

    def short(self, words: str) -> str | None:
        return self.spellings[words].short

    def tell(self, problems: LogProblems) -> None:
        if self.rig is None:
            return
        every = sum(spelling.frames for spelling in self.spellings.values())
        for words, spelling in self.spellings.items():
            if not spelling.frames:
                continue
            if spelling.short is not None:
                self._tell_width(words, spelling, problems)
            elif problems.is_full:
                problems.leave_untold("error")
            else:
                self._tell_unknown(self._said(words, self.rig), spelling, every, self.rig, problems)

    def _match(self, words: str) -> str | None:
        if self.rig is None:
            return words or self.default or None
        said = self._said(words, self.rig)
        return match_filter(said, self.rig) if said else None

    def _said(self, words: str, rig: Rig) -> str:
        """What the log item says where the row says nothing."""
        nothing = words.casefold() in NO_FILTER_WORDS and match_filter(words, rig) is None
        return self.default if nothing else words

    def _tell_width(self, words: str, spelling: _Spelling, problems: LogProblems) -> None:
        if self.rig is not None and (disagreement := width_disagrees(words, spelling.short, self.rig)):
            problems.warn(*disagreement, spelling.first)

    @staticmethod
    def _tell_unknown(said: str, spelling: _Spelling, every: int, rig: Rig, problems: LogProblems) -> None:
        if said:
            wrong, remedy = unknown_filter(said, rig)
            share = f"{spelling.frames} of {every} subs, without which no total would be right"
            problems.error(f"{wrong} ({share})", remedy, spelling.first)
        elif rig.filters and spelling.lights:
            wrong = f"{spelling.lights} of {every} subs name no filter, and the rig '{rig.slug}' has some"
            remedy = f"fill in the column, or write 'filter' in the entry's log item: {', '.join(sorted(rig.filters))}"
            problems.error(wrong, remedy, spelling.first)
