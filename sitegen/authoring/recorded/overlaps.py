"""Rows of tables that tell of the same hours as frame files: a table that gives minutes would count each exposure twice."""

from bisect import bisect_left
from collections.abc import Iterable
from datetime import datetime

from sitegen.authoring.captures.record import Frame
from sitegen.problems import Problem
from sitegen.reading.capture_logs.joining import OVERLAP_TOLERANCE, SAME_START


def overlap_warning(counted: Iterable[Frame], taken_in: Iterable[Frame], shown: str) -> tuple[Problem, ...]:
    """Of light frames that count: a rig exposes one at a time. `taken_in` are those that the log has already."""
    frames = tuple(counted)
    files = sorted((frame.start, frame.end) for frame in (*frames, *taken_in) if _has_file(frame))
    rows = [frame for frame in frames if frame.listed is not None and not _has_file(frame)]
    doubtful = [frame for frame in rows if _is_exposing(frame, files)]
    if not doubtful:
        return ()
    first = min(frame.start for frame in doubtful)
    exposures = "1 exposure" if len(doubtful) == 1 else f"{len(doubtful)} exposures"
    wrong = f"{exposures} of tables or text logs overlap those of frame files, the first at {first:%Y-%m-%d %H:%M} UTC"
    remedy = "are they the same? take the log back with --undo, and gather one of the two"
    return (Problem(shown, 1, 1, wrong, remedy, "warning"),)


def _has_file(frame: Frame) -> bool:
    origin = frame.listed.origin if frame.listed is not None else None
    return frame.file is not None or (origin is not None and origin.file is not None)


def _is_exposing(row: Frame, files: list[tuple[datetime, datetime]]) -> bool:
    """Whether the file begun last before the row's end was still exposing when the row began, unless it is the same exposure."""
    place = bisect_left(files, (row.end - OVERLAP_TOLERANCE, row.end)) - 1
    if place < 0 or abs(files[place][0] - row.start) < SAME_START:
        return False
    return files[place][1] - OVERLAP_TOLERANCE > row.start
