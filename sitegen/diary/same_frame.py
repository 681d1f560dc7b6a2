"""When two records of different entries tell of one and the same frame, and which entries may tell of the same frames at all.

The logs of one entry are joined elsewhere (`reading.capture_logs.joining`). Here a differing filter, target or verdict does not
make two frames: it is a contradiction about one.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime, timedelta
from math import isclose

from sitegen.diary.sub import Sub

SAME_START = timedelta(seconds=0.5)
# Logs round exposures, to a thousandth of a second at worst.
EXPOSURE_SHARE, EXPOSURE_S = 1e-3, 5e-4
STRETCH_GAP_MIN = 60
_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)

Stretch = tuple[int, int]
"""The first and the last start in a run of frames, in whole minutes since 1970, UTC."""
CameraStretches = tuple[tuple[str, tuple[Stretch, ...]], ...]
"""By the name of a rig and by the serial number of a camera: when it exposed."""


def is_same_frame(sub: Sub, other: Sub) -> bool:
    """Same camera, same exposure, starts less than half a second apart. The camera is the same by its serial number, else by its
    rig; two different serial numbers are two cameras, whatever their rig is called."""
    return abs(sub.start - other.start) < SAME_START and _same_camera(sub, other) and _same_exposure(sub, other)


def _same_camera(sub: Sub, other: Sub) -> bool:
    first, second = _camera_id(sub), _camera_id(other)
    return first == second if first and second else sub.rig == other.rig


def _camera_id(sub: Sub) -> str | None:
    return sub.origin.camera_id if sub.origin else None


def _same_exposure(sub: Sub, other: Sub) -> bool:
    return isclose(sub.exposure_s, other.exposure_s, rel_tol=EXPOSURE_SHARE, abs_tol=EXPOSURE_S)


def same_frames(ones: Sequence[Sub], others: Sequence[Sub]) -> list[tuple[int, int]]:
    """Places (in `ones`, in `others`) of the records that tell of the same frame; both in time order, each record in one pair at
    most. A camera may begin several short frames within half a second: equal starts go together, then the first with the first;
    where a clock was off by some such frames, the first with the first from the beginning, as that leaves fewer alone."""
    first, second = _within(ones, others), _within(others, ones)
    pairs, left, right = _equal_starts(ones, others, first, second)
    if not left or not right:
        return sorted(pairs)
    pairs += _in_order(ones, others, left, right)
    return max(sorted(pairs), sorted(_in_order(ones, others, first, second)), key=len)


def _within(subs: Sequence[Sub], span: Sequence[Sub]) -> range:
    """Places of the subs that begin between the first and the last of `span`, half a second more on both sides."""
    if not span:
        return range(0)
    low = bisect_left(subs, span[0].start - SAME_START, key=_start)
    return range(low, bisect_right(subs, span[-1].start + SAME_START, key=_start))


def _start(sub: Sub) -> datetime:
    return sub.start


def _equal_starts(
    ones: Sequence[Sub], others: Sequence[Sub], first: Iterable[int], second: Iterable[int]
) -> tuple[list[tuple[int, int]], list[int], list[int]]:
    """Pairs, and the places on both sides that are left."""
    waiting: dict[datetime, list[int]] = {}
    for place in second:
        waiting.setdefault(others[place].start, []).append(place)
    pairs, left = [], []
    for place in first:
        partners = waiting.get(ones[place].start, [])
        partner = next((number for number in partners if is_same_frame(ones[place], others[number])), None)
        if partner is None:
            left.append(place)
        else:
            partners.remove(partner)
            pairs.append((place, partner))
    return pairs, left, sorted(place for places in waiting.values() for place in places)


def _in_order(
    ones: Sequence[Sub], others: Sequence[Sub], left: Sequence[int], right: Sequence[int]
) -> Iterator[tuple[int, int]]:
    """Each with the earliest free one that fits. `near` never holds more than begins within a second."""
    near: list[int] = []
    coming = 0
    for place in left:
        start = ones[place].start
        while coming < len(right) and others[right[coming]].start < start + SAME_START:
            near.append(right[coming])
            coming += 1
        near = [number for number in near if others[number].start > start - SAME_START]
        partner = next((number for number in near if is_same_frame(ones[place], others[number])), None)
        if partner is not None:
            near.remove(partner)
            yield place, partner


def camera_stretches(lights: Iterable[Sub]) -> CameraStretches:
    """When each camera exposed; `lights` in time order."""
    stretches: dict[str, list[Stretch]] = {}
    for sub in lights:
        minute = (sub.start - _EPOCH) // timedelta(minutes=1)
        for camera in _cameras(sub):
            runs = stretches.setdefault(camera, [])
            if runs and minute - runs[-1][1] <= STRETCH_GAP_MIN:
                runs[-1] = runs[-1][0], minute
            else:
                runs.append((minute, minute))
    return tuple((camera, tuple(runs)) for camera, runs in sorted(stretches.items()))


def _cameras(sub: Sub) -> tuple[str, ...]:
    camera_id = _camera_id(sub)
    return (f"rig {sub.rig}", f"camera {camera_id}") if camera_id else (f"rig {sub.rig}",)


def exposing_together(entries: Iterable[tuple[str, CameraStretches]]) -> dict[str, set[str]]:
    """For each entry (by slug), the others with frames of the same camera from the same hours: only those may tell of its frames.
    Entries without any are left out."""
    by_camera: dict[str, list[tuple[int, int, str]]] = {}
    for slug, cameras in entries:
        for camera, stretches in cameras:
            by_camera.setdefault(camera, []).extend((first, last, slug) for first, last in stretches)
    together: dict[str, set[str]] = {}
    for rows in by_camera.values():
        for entry, other in _overlapping(sorted(rows)):
            together.setdefault(entry, set()).add(other)
            together.setdefault(other, set()).add(entry)
    return together


def _overlapping(rows: Sequence[tuple[int, int, str]]) -> Iterator[tuple[str, str]]:
    """Pairs of slugs whose stretches touch; a frame's start may fall into two neighbouring minutes."""
    open_rows: list[tuple[int, str]] = []
    for first, last, slug in rows:
        open_rows = [row for row in open_rows if row[0] >= first - 1]
        yield from ((slug, other) for _, other in open_rows if other != slug)
        open_rows.append((last, slug))
