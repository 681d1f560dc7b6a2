"""What an earlier gathering wrote, row by row, with all that its author added since."""

from collections.abc import Callable, Iterable, Mapping
from datetime import UTC, datetime, timedelta
from math import isclose
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.authoring.captures.discards import reason_of
from sitegen.authoring.captures.record import Frame
from sitegen.authoring.log_table import LogTable, Row
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS
from sitegen.reading.capture_logs.filter_words import may_be_one_filter
from sitegen.reading.capture_logs.joining import SAME_START, SHORT_S

FilterName = Callable[[str | None], str | None]
QUARTER_S = 900.0
"""Offsets of all time zones are whole quarters of an hour."""
MOST_SHIFTED_S = 26 * 3600.0
_NOTHING = FrameOrigin()


class KnownRow(Struct, eq=False):
    """`subs` are several where the row stands for a run, which the author wrote: such a row is never changed."""

    row: Row
    subs: tuple[Sub, ...]

    @property
    def sub(self) -> Sub:
        return self.subs[0]

    @property
    def origin(self) -> FrameOrigin:
        return self.sub.origin or _NOTHING

    @property
    def is_run(self) -> bool:
        return len(self.subs) > 1

    @property
    def file(self) -> tuple[str, str] | None:
        """Folder and path below it."""
        return (self.origin.folder, self.origin.file) if self.origin.folder and self.origin.file else None

    @property
    def is_judged_by_author(self) -> bool:
        """Whether kept and reason are not what gathering would have written for what it found."""
        by = self.origin.discarded_by
        return (self.sub.kept, self.sub.reason or "") != (by is None, reason_of(by))


def known_rows(table: LogTable, subs: Iterable[Sub]) -> tuple[KnownRow, ...]:
    """`subs` are those of the table's reading, in the order of its rows."""
    waiting = iter(subs)
    return tuple(KnownRow(row, tuple(next(waiting) for _ in range(row.count))) for row in table.rows)


class Matching(Struct, frozen=True):
    """Rows by the identity of the frame that they tell of: `row_of[id(frame)]`."""

    row_of: Mapping[int, KnownRow]
    unmatched: tuple[KnownRow, ...]


def match_rows(frames: Iterable[Frame], rows: Iterable[KnownRow], filter_name: FilterName) -> Matching:
    """First by file, then by start, exposure and camera; last by the bare time, where the clock was only assumed. Two names of
    one filter are one where `filter_name` says so."""
    rows = tuple(rows)
    if not rows:
        return Matching({}, ())
    index = _Index(rows, filter_name)
    row_of: dict[int, KnownRow] = {}
    steps = (index.by_file, index.by_start, index.by_bare_time)
    waiting = list(frames)
    for step in steps:
        left = []
        for frame in waiting:
            row = step(frame)
            if row is None:
                left.append(frame)
            else:
                row_of[id(frame)] = row
        waiting = left
    return Matching(row_of, tuple(row for row in index.rows if not index.is_taken(row)))


class _Index:
    def __init__(self, rows: Iterable[KnownRow], filter_name: FilterName) -> None:
        self.rows, self.filter_name = tuple(rows), filter_name
        self.taken: dict[int, int] = {}
        self.files: dict[tuple[str, str], KnownRow] = {row.file: row for row in self.rows if row.file is not None}
        self.seconds: dict[int, list[tuple[KnownRow, Sub]]] = {}
        self.bare: dict[datetime, list[KnownRow]] = {}
        for row in self.rows:
            for sub in row.subs:
                self.seconds.setdefault(int(sub.start.timestamp()), []).append((row, sub))
            bare = _bare_time(row)
            if bare is not None:
                self.bare.setdefault(bare, []).append(row)

    def is_taken(self, row: KnownRow) -> bool:
        return self.taken.get(id(row), 0) >= len(row.subs)

    def by_file(self, frame: Frame) -> KnownRow | None:
        if frame.file is None:
            return None
        row = self.files.get((frame.file.folder, frame.file.below))
        return self._take(row) if row is not None and not self.is_taken(row) and self._is_file_of(row, frame) else None

    def by_start(self, frame: Frame) -> KnownRow | None:
        second = int(frame.start.timestamp())
        for near in (second, second - 1, second + 1):
            for row, sub in self.seconds.get(near, ()):
                if not self.is_taken(row) and self._is_frame_of(sub, frame):
                    return self._take(row)
        return None

    def by_bare_time(self, frame: Frame) -> KnownRow | None:
        start = frame.record.start
        if frame.clock is None or start is None:
            return None
        for row in self.bare.get(start.replace(microsecond=0, tzinfo=None), ()):
            if not self.is_taken(row) and self._is_alike(row.sub, frame):
                return self._take(row)
        return None

    def _take(self, row: KnownRow) -> KnownRow:
        self.taken[id(row)] = self.taken.get(id(row), 0) + 1
        return row

    def _is_file_of(self, row: KnownRow, frame: Frame) -> bool:
        """A name may be used again for another frame. A start that the author corrected lies whole quarters of an hour off."""
        if not self._is_alike(row.sub, frame):
            return False
        apart_s = abs((row.sub.start - frame.start).total_seconds())
        if apart_s < SAME_START.total_seconds():
            return True
        off_quarter_s = abs(apart_s - QUARTER_S * round(apart_s / QUARTER_S))
        return apart_s <= MOST_SHIFTED_S and off_quarter_s < SAME_START.total_seconds()

    def _is_frame_of(self, sub: Sub, frame: Frame) -> bool:
        apart = abs(sub.start - frame.start)
        whole_second = not (sub.start.microsecond and frame.start.microsecond) and sub.start.second == frame.start.second
        if apart >= SAME_START and not (whole_second and apart < timedelta(seconds=1)):
            return False
        return (frame.exposure_s >= SHORT_S or sub.start == frame.start) and self._is_alike(sub, frame)

    def _is_alike(self, sub: Sub, frame: Frame) -> bool:
        """The same exposure, kind and camera, a filter that does not contradict."""
        origin = sub.origin or _NOTHING
        if sub.kind != frame.kind or not isclose(sub.exposure_s, frame.exposure_s, rel_tol=1e-3, abs_tol=1e-3):
            return False
        if origin.camera_id and frame.record.camera_id:
            return origin.camera_id == frame.record.camera_id
        return self._filters_agree(sub, origin, frame)

    def _filters_agree(self, sub: Sub, origin: FrameOrigin, frame: Frame) -> bool:
        words = frame.record.filter_words
        if words.casefold() in NO_FILTER_WORDS or sub.filter is None:
            return True
        if words == origin.filter_told or self.filter_name(words) == self.filter_name(sub.filter):
            return True
        return may_be_one_filter(words, sub.filter)


def _bare_time(row: KnownRow) -> datetime | None:
    """What the frame's own clock showed, to the second, where that clock was only assumed. A log of the version before says
    nothing of clocks, and had read bare times as UTC."""
    if row.is_run or (row.sub.clock is None and row.origin.file is not None):
        return None
    zone = ZoneInfo(row.sub.clock) if row.sub.clock not in (None, "UTC") else UTC
    return row.sub.start.astimezone(zone).replace(tzinfo=None, microsecond=0)
