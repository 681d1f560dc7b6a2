"""Which frames are there already."""

from bisect import bisect_left, insort
from collections.abc import Callable, Iterable
from datetime import datetime, timedelta

from msgspec.structs import replace

from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.joining import SHORT_S, TRUNCATED_START, is_same_frame

FilterName = Callable[[str | None], str | None]


class KnownFrames:
    """By start, exposure, filter and kind. Two names of one filter are one where `filter_name` says so."""

    def __init__(self, subs: Iterable[Sub], filter_name: FilterName = lambda name: name) -> None:
        self.filter_name = filter_name
        self.subs: list[Sub] = sorted(map(self._compared, subs), key=_start)

    def take(self, sub: Sub) -> bool:
        """True, and remembered, for a frame that was not there."""
        compared = self._compared(sub)
        first = bisect_left(self.subs, compared.start - TRUNCATED_START, key=_start)
        last = bisect_left(self.subs, compared.start + TRUNCATED_START + timedelta(milliseconds=1), lo=first, key=_start)
        if any(_same(compared, known) for known in self.subs[first:last]):
            return False
        insort(self.subs, compared, key=_start)
        return True

    def _compared(self, sub: Sub) -> Sub:
        return replace(sub, rig="", filter=self.filter_name(sub.filter))


def _same(one: Sub, other: Sub) -> bool:
    """Of the shortest frames a camera begins several within half a second: those must begin together."""
    return is_same_frame(one, other) and (one.exposure_s >= SHORT_S or one.start == other.start)


def _start(sub: Sub) -> datetime:
    return sub.start
