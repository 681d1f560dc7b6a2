"""The grid of right ascension and declination over a solved picture, and where north and east are in it."""

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, floor, isfinite
from typing import Literal, TypeAlias

import numpy as np
from msgspec import Struct

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray

Point: TypeAlias = tuple[float, float]
Axis: TypeAlias = Literal["ra", "dec"]

_STEPS = (1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1200, 1800, 3600, 7200, 10800, 21600)
"""Seconds of time for right ascension; the same, and more, in seconds of arc for declination."""

_DEC_STEPS = (*_STEPS, 18000, 36000, 54000, 108000)
_SAMPLES = 257
_RA_UNITS = ("h", "m", "s")
_DEC_UNITS = ("°", "′", "″")


class GridLine(Struct, frozen=True):
    """A line of equal right ascension or declination (value_deg), in the parts of it that cross the frame.

    label is exact ("14h 03m", "+54° 20′"). points: picture pixels, cut at the frame's outer edges, which are at
    -0.5 and at size - 0.5. label_at is where the line enters the frame, the lowest or leftmost such place.
    """

    axis: Axis
    value_deg: float
    label: str
    parts: tuple[tuple[Point, ...], ...]
    label_at: Point


class Compass(Struct, frozen=True):
    """Unit vectors towards celestial north and east at a place in the picture; x to the right, y down."""

    at: Point
    north: Point
    east: Point


def grid_lines(solution: Solution, lines_at_most: int = 6) -> tuple[GridLine, ...]:
    """Grid lines at the smallest round steps that give at most so many of each axis over the frame's extent, by value."""
    (ra_low, ra_high), (dec_low, dec_high) = sky_extent(solution)
    lines = [_line(solution, "ra", seconds / 240, _ra_label(seconds, step), (dec_low, dec_high))
             for step, seconds in _multiples(ra_low * 240, ra_high * 240, _STEPS, lines_at_most)]
    lines += [_line(solution, "dec", seconds / 3600, _dec_label(seconds, step), (ra_low, ra_high))
              for step, seconds in _multiples(dec_low * 3600, dec_high * 3600, _DEC_STEPS, lines_at_most)]
    return tuple(line for line in lines if line is not None)


def sky_extent(solution: Solution) -> tuple[tuple[float, float], tuple[float, float]]:
    """((ra low, ra high), (dec low, dec high)) of the frame, degrees; ra may pass 0 or 360 to be one piece, and is all
    of 360 degrees where a pole is in the frame."""
    across = np.linspace(-0.5, solution.width_px - 0.5, 33)
    down = np.linspace(-0.5, solution.height_px - 0.5, 33)
    ra, dec = solution.to_sky(*np.meshgrid(across, down))
    middle = solution.ra_deg
    turn = (ra - middle + 180) % 360 - 180
    low, high = float(dec.min()), float(dec.max())
    poles = [pole for pole in (-90.0, 90.0) if _in_frame(solution, *solution.to_pixel(middle, pole))]
    if poles:
        return (0.0, 360.0 - 1e-9), (min([low, *poles]), max([high, *poles]))
    return (middle + float(turn.min()), middle + float(turn.max())), (low, high)


def _in_frame(solution: Solution, x_px: FloatArray, y_px: FloatArray) -> bool:
    """Whether one place is in the frame; not where it is not in front of the camera at all."""
    return bool((x_px >= -0.5) & (x_px <= solution.width_px - 0.5) & (y_px >= -0.5) & (y_px <= solution.height_px - 0.5))


def _multiples(low: float, high: float, steps: Sequence[int], at_most: int) -> list[tuple[int, int]]:
    """(step, multiple of it) for every multiple in [low, high], with the smallest step that keeps them few."""
    for step in steps:
        first, last = ceil(low / step), floor(high / step)
        if last - first + 1 <= at_most:
            break
    return [(step, step * count) for count in range(first, last + 1)]


def _ra_label(seconds: int, step: int) -> str:
    return _sexagesimal(seconds % 86400, step, _RA_UNITS, 2)


def _dec_label(seconds: int, step: int) -> str:
    return ("−" if seconds < 0 else "+") + _sexagesimal(abs(seconds), step, _DEC_UNITS, 2)


def _sexagesimal(seconds: int, step: int, units: tuple[str, str, str], digits: int) -> str:
    """Down to the unit that the step needs."""
    shown = 1 if step % 3600 == 0 else 2 if step % 60 == 0 else 3
    values = (seconds // 3600, seconds // 60 % 60, seconds % 60)
    return " ".join(f"{value:0{digits}d}{unit}" for value, unit in list(zip(values, units, strict=True))[:shown])


def _line(solution: Solution, axis: Axis, value_deg: float, label: str, along: tuple[float, float]) -> GridLine | None:
    """None for a line that only just misses the frame."""
    margin = 0.02 * (along[1] - along[0])
    run = np.linspace(along[0] - margin, along[1] + margin, _SAMPLES)
    run = np.clip(run, -90, 90) if axis == "ra" else run
    steady = np.full(_SAMPLES, value_deg)
    x, y = solution.to_pixel(steady, run) if axis == "ra" else solution.to_pixel(run, steady)
    parts = tuple(_cut(solution, x, y))
    if not parts:
        return None
    ends = [end for part in parts for end in (part[0], part[-1])]
    at = max(ends, key=lambda end: end[1]) if axis == "ra" else min(ends)
    return GridLine(axis, value_deg % 360 if axis == "ra" else value_deg, label, parts, at)


def _cut(solution: Solution, x_px: FloatArray, y_px: FloatArray) -> list[tuple[Point, ...]]:
    """The pieces of a polyline inside the frame, their ends on its edges."""
    pieces: list[list[Point]] = []
    places = [(float(x), float(y)) for x, y in zip(x_px, y_px, strict=True)]
    for start, end in pairwise(places):
        kept = _clipped(start, end, solution.width_px, solution.height_px)
        if kept is None:
            continue
        if pieces and pieces[-1][-1] == kept[0]:
            pieces[-1].append(kept[1])
        else:
            pieces.append(list(kept))
    return [tuple(piece) for piece in pieces]


def _clipped(start: Point, end: Point, width_px: int, height_px: int) -> tuple[Point, Point] | None:
    """The part of a straight piece inside the frame (Liang & Barsky 1984, ACM TOG 3, 1); None outside or undefined."""
    across, down = end[0] - start[0], end[1] - start[1]
    if not isfinite(across + down):
        return None
    first, last = 0.0, 1.0
    for step, room in ((-across, start[0] + 0.5), (across, width_px - 0.5 - start[0]),
                       (-down, start[1] + 0.5), (down, height_px - 0.5 - start[1])):
        if step == 0 and room < 0:
            return None
        if step < 0:
            first = max(first, room / step)
        elif step > 0:
            last = min(last, room / step)
    if not first < last:
        return None
    return ((start if first == 0.0 else (start[0] + first * across, start[1] + first * down)),
            (end if last == 1.0 else (start[0] + last * across, start[1] + last * down)))


def compass(solution: Solution, x_px: float | None = None, y_px: float | None = None) -> Compass:
    """North and east at a place, the middle of the frame by default."""
    middle = solution.centre_px
    at = (middle[0] if x_px is None else x_px, middle[1] if y_px is None else y_px)
    ra, dec = (float(value) for value in solution.to_sky(*at))
    step = solution.scale_arcsec_px / 3600
    north = solution.to_pixel(ra, min(dec + step, 90.0))
    east = solution.to_pixel(ra + step / max(np.cos(np.radians(dec)), 1e-6), dec)
    return Compass(at, _unit(at, north), _unit(at, east))


def _unit(at: Point, towards: tuple[FloatArray, FloatArray]) -> Point:
    dx, dy = float(towards[0]) - at[0], float(towards[1]) - at[1]
    length = float(np.hypot(dx, dy))
    return dx / length, dy / length


def scale_bar_px(solution: Solution, length_arcmin: float) -> float:
    """Length in picture pixels of an angle laid across the middle of the frame."""
    x, y = solution.centre_px
    half = length_arcmin * 30 / solution.scale_arcsec_px
    ra, dec = solution.to_sky([x - half, x + half], [y, y])
    measured = float(separation_deg(ra[1], dec[1], ra[0], dec[0])) * 60
    return 2 * half * length_arcmin / measured
