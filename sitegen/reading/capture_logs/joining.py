"""The logs of one entry -> its subs in time order, each frame once."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import timedelta
from math import isclose

from msgspec import Struct
from msgspec.structs import replace

from sitegen.diary.sub import Sub
from sitegen.problems import Problem
from sitegen.reading.capture_logs.request import LogReading

SAME_START = timedelta(seconds=0.5)
TRUNCATED_START = timedelta(seconds=1)
# Logs give whole seconds: a frame may seem to begin before the last has ended.
OVERLAP_TOLERANCE = timedelta(seconds=1.5)
# A camera may begin several of its shortest frames within half a second.
SHORT_S = 1.0
MOST_ALIKE = 3
_TELLING = ("filter", "reason", "binning", "gain", "sensor_c", "fwhm_arcsec", "elongation", "guiding_rms_arcsec", "stars",
            "panel", "note")  # fmt: skip


def join_logs(
    readings: Iterable[LogReading], shown: Callable[[str], str] = str
) -> tuple[tuple[Sub, ...], tuple[Problem, ...]]:
    """Subs in time order, and all problems: those of the readings, warnings that many files share drawn together, and overlaps.

    A frame listed twice is counted once: it is discarded if either log discards it, and keeps what either knows.
    `shown` turns a sub's source into the path that problem lines show.
    """
    readings = tuple(readings)
    subs = each_once(sub for reading in readings for sub in reading.subs)
    problems = _drawn_together(problem for reading in readings for problem in reading.problems)
    return subs, (*problems, *overlaps(subs, shown))


class _Counted(Struct):
    sub: Sub
    sources: set[str]


def each_once(subs: Iterable[Sub]) -> tuple[Sub, ...]:
    """In time order."""
    counted: list[_Counted] = []
    recent: dict[str, list[_Counted]] = {}
    for sub in sorted(subs, key=lambda sub: sub.start):
        near = recent.setdefault(sub.rig, [])
        near[:] = [near_sub for near_sub in near if sub.start - near_sub.sub.start < TRUNCATED_START]
        known_sub = next((near_sub for near_sub in near if _is_listed_again(sub, near_sub)), None)
        if known_sub is None:
            known_sub = _Counted(sub, set())
            near.append(known_sub)
            counted.append(known_sub)
        else:
            known_sub.sub = _merged(known_sub.sub, sub)
        known_sub.sources.add(sub.source)
    return tuple(near_sub.sub for near_sub in counted)


def _is_listed_again(sub: Sub, counted_sub: _Counted) -> bool:
    return (sub.exposure_s >= SHORT_S or sub.source not in counted_sub.sources) and is_same_frame(sub, counted_sub.sub)


def is_same_frame(sub: Sub, other: Sub) -> bool:
    """Same rig, kind and exposure, a filter that does not contradict, starts within half a second (or the same second, where a
    log gives whole seconds)."""
    apart = abs(sub.start - other.start)
    whole_seconds = not (sub.start.microsecond and other.start.microsecond)
    near = apart < SAME_START or (whole_seconds and apart < TRUNCATED_START and sub.start.second == other.start.second)
    if not near or (sub.rig, sub.kind) != (other.rig, other.kind):
        return False
    same_filter = sub.filter == other.filter or None in (sub.filter, other.filter)
    return same_filter and isclose(sub.exposure_s, other.exposure_s, rel_tol=1e-3, abs_tol=1e-3)


def _merged(first: Sub, again: Sub) -> Sub:
    if first == again:
        return first
    learnt = {name: getattr(again, name) for name in _TELLING if getattr(first, name) is None}
    return replace(first, kept=first.kept and again.kept, **learnt)


def overlaps(subs: Iterable[Sub], shown: Callable[[str], str] = str) -> tuple[Problem, ...]:
    """A warning for each two logs in which one rig exposes two frames at once; the same frame in two entries is none."""
    pairs_of: dict[tuple[str, str, str], list[tuple[Sub, Sub]]] = {}
    for earlier, later in _overlapping(sorted(subs, key=lambda sub: (sub.rig, sub.start))):
        pairs_of.setdefault((later.rig, earlier.source, later.source), []).append((earlier, later))
    return tuple(_overlap_problem(pairs, shown) for pairs in pairs_of.values())


def _overlapping(in_order: Sequence[Sub]) -> Iterator[tuple[Sub, Sub]]:
    """Each sub beside the one of its rig that was still exposing when it began."""
    last: Sub | None = None
    for sub in in_order:
        if last is None or last.rig != sub.rig:
            last = sub
            continue
        if sub.start < last.end - OVERLAP_TOLERANCE and not is_same_frame(last, sub):
            yield last, sub
        if sub.end > last.end:
            last = sub


def _overlap_problem(pairs: Sequence[tuple[Sub, Sub]], shown: Callable[[str], str]) -> Problem:
    earlier, later = pairs[0]
    more = f", and {len(pairs) - 1} more so" if len(pairs) > 1 else ""
    where = "" if earlier.source == later.source else f" of {shown(earlier.source)}"
    wrong = (
        f"the frame of {later.start:%Y-%m-%d %H:%M:%S} UTC overlaps that of {earlier.start:%H:%M:%S}{where}, "
        f"both by the rig '{later.rig}'{more}"
    )
    return Problem(shown(later.source), 1, 1, wrong, "is one in local time, or of another rig?", "warning")


def _drawn_together(problems: Iterable[Problem]) -> Iterator[Problem]:
    """Of a warning that more than a few files share, the first, with the number of the others."""
    alike: dict[tuple[str, str, int, int], list[Problem]] = {}
    for problem in dict.fromkeys(problems):
        alike.setdefault((problem.wrong, problem.severity, problem.line, problem.column), []).append(problem)
    for group in alike.values():
        if len(group) <= MOST_ALIKE or group[0].severity == "error":
            yield from group
        else:
            first = min(group)
            yield replace(first, wrong=f"{first.wrong} (so in {len(group) - 1} more files)")
