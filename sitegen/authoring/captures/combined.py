"""Frames made of other frames: stacks, integrations, masters. They show light that is counted already."""

import re
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta
from functools import lru_cache
from math import fsum

from msgspec import Struct

from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.diary.addresses import slug_of

COUNTS_INPUTS = "the header counts its inputs"
SAYS_SO = "its name or kind says so"
SUM_OF_OTHERS = "as long as the sum of others, and begun in their time"
SUM_OF_ALL = "as long as all others together"
REL_TOLERANCE, TOLERANCE_S = 0.01, 1.0
LONGEST_SUB_S = 1800.0
"""Hardly anybody exposes longer; a longer frame that equals a sum is one."""
NEIGHBOURS_WITHIN = timedelta(hours=1)
OVERLAP = timedelta(seconds=2)
_WORDS = re.compile(r"(?:^|[_\-. ])(?:stack|stacked|integrated|integration|combined|master|coadd|coadded)(?=$|[_\-. \d])", re.I)
_KIND_WORDS = re.compile(r"master|stack|integrat|combin|co-?add", re.I)


def combined_by_header(frame: Frame) -> str:
    """The evidence; '' for a frame that says nothing of the kind."""
    record = frame.record
    if (record.inputs or 1) > 1:
        return COUNTS_INPUTS
    if record.kind_words and _says_combined(record.kind_words):
        return SAYS_SO
    may_be = record.is_processed or frame.exposure_s > LONGEST_SUB_S or frame.kind != "light"
    return SAYS_SO if may_be and frame.file is not None and _WORDS.search(frame.file.stem) else ""


@lru_cache(maxsize=256)
def _says_combined(kind_words: str) -> bool:
    return _KIND_WORDS.search(kind_words.partition(" is ")[2]) is not None


def combined_by_sum(frames: Sequence[Frame]) -> dict[int, str]:
    """Evidence by the number of the frame, of light frames of one train."""
    groups: dict[tuple[str, str], list[int]] = {}
    for number, frame in enumerate(frames):
        groups.setdefault(_shown(frame.record), []).append(number)
    evidence: dict[int, str] = {}
    for numbers in groups.values():
        if len(numbers) >= 3:
            evidence |= _in_group([frames[number] for number in numbers], numbers)
    return evidence


def _shown(record: FrameRecord) -> tuple[str, str]:
    """Filter, and target by name or else by pointing. A stack carries over what its first frame says."""
    if record.object:
        return record.filter_words.casefold(), _plain_name(record.object)
    pointing = "" if record.ra_deg is None or record.dec_deg is None else f"{record.ra_deg:.0f} {record.dec_deg:.0f}"
    return record.filter_words.casefold(), pointing


@lru_cache(maxsize=4_096)
def _plain_name(name: str) -> str:
    return slug_of(name)


class _Shorter(Struct, frozen=True):
    """The single frames of a group that are well shorter than what is looked at: what it may be made of."""

    frames: tuple[Frame, ...]
    starts: tuple[datetime, ...]
    total_s: float
    counts: Mapping[float, int]
    sums_by_day_s: tuple[float, ...]
    longest: timedelta


def _in_group(frames: Sequence[Frame], numbers: Sequence[int]) -> dict[int, str]:
    """From the shortest on: what is combined of combined frames is found by the single ones, too."""
    evidence: dict[int, str] = {}
    by_exposure: dict[float, list[int]] = {}
    for place, frame in enumerate(frames):
        by_exposure.setdefault(round(frame.exposure_s, 1), []).append(place)
    single: list[Frame] = []
    by_start = sorted(frames, key=lambda frame: frame.start)
    starts = [frame.start for frame in by_start]
    for exposure_s, places in sorted(by_exposure.items()):
        shorter = _shorter(single, exposure_s)
        for place in places:
            frame = frames[place]
            why = _why_combined(frame, shorter, by_start, starts) if len(shorter.frames) >= 2 else ""
            if why:
                evidence[numbers[place]] = why
            else:
                single.append(frame)
    return evidence


def _shorter(single: Sequence[Frame], exposure_s: float) -> _Shorter:
    frames = sorted((frame for frame in single if frame.exposure_s <= 0.6 * exposure_s), key=lambda frame: frame.start)
    by_day: dict[date, float] = {}
    for frame in frames:
        day = (frame.start - timedelta(hours=12)).date()
        by_day[day] = by_day.get(day, 0.0) + frame.exposure_s
    longest_s = max((frame.exposure_s for frame in frames), default=0.0)
    return _Shorter(
        tuple(frames), tuple(frame.start for frame in frames), fsum(frame.exposure_s for frame in frames),
        Counter(frame.exposure_s for frame in frames), tuple(by_day.values()), timedelta(seconds=longest_s),
    )  # fmt: skip


def _why_combined(frame: Frame, shorter: _Shorter, by_start: Sequence[Frame], starts: Sequence[datetime]) -> str:
    is_all = len(shorter.frames) >= 3 and _equal(frame.exposure_s, shorter.total_s)
    if (is_all or _is_sum_of_alike(frame, shorter)) and _begun_among(frame, shorter):
        return SUM_OF_OTHERS
    if is_all and (frame.record.is_processed or frame.exposure_s > LONGEST_SUB_S or not _has_neighbours(frame, by_start, starts)):
        return SUM_OF_ALL
    return ""


def _equal(exposure_s: float, sum_s: float) -> bool:
    return abs(exposure_s - sum_s) <= max(TOLERANCE_S, REL_TOLERANCE * sum_s)


def _is_sum_of_alike(frame: Frame, shorter: _Shorter) -> bool:
    """So many of one exposure, of which there are at least so many; or all of one night."""
    for exposure_s, count in shorter.counts.items():
        times = round(frame.exposure_s / exposure_s) if exposure_s else 0
        if 2 <= times <= count and _equal(frame.exposure_s, times * exposure_s):
            return True
    return any(_equal(frame.exposure_s, sum_s) for sum_s in shorter.sums_by_day_s)


def _begun_among(frame: Frame, shorter: _Shorter) -> bool:
    """A camera cannot expose two frames at once: what overlaps them, or starts where one starts, is made of them."""
    first = bisect_left(shorter.starts, frame.start - shorter.longest - OVERLAP)
    last = bisect_right(shorter.starts, frame.end + OVERLAP)
    return any(
        abs(frame.start - other.start) <= OVERLAP or (other.start + OVERLAP < frame.end and frame.start + OVERLAP < other.end)
        for other in shorter.frames[first:last]
    )


def _has_neighbours(frame: Frame, by_start: Sequence[Frame], starts: Sequence[datetime]) -> bool:
    """Whether other frames of the filter were taken within the hour before or after: a sub stands among subs."""
    first = bisect_left(starts, frame.start - NEIGHBOURS_WITHIN - timedelta(seconds=LONGEST_SUB_S))
    last = bisect_right(starts, frame.end + NEIGHBOURS_WITHIN)
    around = (other for other in by_start[first:last] if other is not frame)
    return any(other.end >= frame.start - NEIGHBOURS_WITHIN for other in around)
