"""Every way two stars of a picture can be two stars of the catalogue, and how many more stars each way explains.

The picture's stars lie as complex numbers (radians) on the stereographic plane about its own middle, at the scale that the diary
gives. Each catalogue star in turn is the anchor, the first star of the pairs: its neighbours, as far as the picture reaches, lie
on the stereographic plane about it. Stereographic, because it keeps shapes: a picture stays similar to its piece of sky, though
the two touching points differ by half a field. What is left over, at most 1 in 1000 of a 10 degree field, is within the
tolerance; as each anchor has a plane of its own, it does not grow with the part of the sky that is searched.

A placement is sky = turn * picture + middle on the anchor's plane: |turn| is the true scale over the given one.
"""

from collections.abc import Iterator
from typing import NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt
from msgspec import Struct
from scipy.spatial import cKDTree

ComplexArray: TypeAlias = npt.NDArray[np.complex128]
IntArray: TypeAlias = npt.NDArray[np.intp]
FloatArray: TypeAlias = npt.NDArray[np.float64]
FloatArray32: TypeAlias = npt.NDArray[np.float32]

_CELLS_IN_TOLERANCE = 3
_CHUNK = 200_000
_SHORTEST_PAIR = 0.12
"""Of the diagonal: from shorter pairs the far corner of the picture cannot be foretold."""


class Placements(Struct, frozen=True):
    """The best of the placements tried, as arrays of one length: index of the anchor, turn and middle, as the module says, and
    the hits of each."""

    anchor: IntArray
    turn: ComplexArray
    middle: ComplexArray
    hits: IntArray
    tried: int


class Limits(Struct, frozen=True):
    """What the diary allows: scale off by scale_share, middle off by middle_rad from the place; the frame's half diagonal
    and the tolerance of a hit, radians."""

    scale_share: float
    middle_rad: float
    half_diagonal_rad: float
    tolerance_rad: float


class Sky(Struct, frozen=True):
    """Catalogue stars as unit vectors (count, 3), and the place that the diary gives."""

    stars: FloatArray
    place: FloatArray

    def plane_about(self, anchor: int, others: FloatArray) -> ComplexArray:
        """Other directions on the stereographic plane about a star: east + i north, radians."""
        pole = self.stars[anchor]
        east = np.array([-pole[1], pole[0], 0.0]) / max(float(np.hypot(pole[0], pole[1])), 1e-12)
        north = np.cross(pole, east)
        return np.asarray(2 * (others @ east + 1j * (others @ north)) / (1 + others @ pole))


def best_placements(picture: ComplexArray, sky: Sky, limits: Limits, count: int) -> Placements:
    """At most count placements within the limits, those with the most hits: catalogue stars that fall on a picture's."""
    pairs, star_map = _Pairs.of(picture, limits), _StarMap.of(picture, limits)
    reach = 2 * limits.half_diagonal_rad * (1 + limits.scale_share)
    near = cKDTree(sky.stars).query_ball_point(sky.stars, 2 * np.sin(min(reach, np.pi) / 2), return_sorted=True)
    best, tried = _Placed(np.empty(0, np.intp), np.empty(0, complex), np.empty(0, complex), np.empty(0, np.intp)), 0
    for anchor, others in enumerate(near):
        placed = _about(anchor, np.asarray(others), pairs, star_map, sky, limits)
        tried += len(placed.hits)
        best = _best(_joined(best, _best(placed, count)), count)
    return Placements(*best, tried)


class _Placed(NamedTuple):
    anchor: IntArray
    turn: ComplexArray
    middle: ComplexArray
    hits: IntArray


def _joined(before: _Placed, placed: _Placed) -> _Placed:
    return _Placed(np.concatenate([before.anchor, placed.anchor]), np.concatenate([before.turn, placed.turn]),
                   np.concatenate([before.middle, placed.middle]), np.concatenate([before.hits, placed.hits]))


def _best(placed: _Placed, count: int) -> _Placed:
    if len(placed.hits) <= count:
        return placed
    order = np.argsort(-placed.hits, kind="stable")[:count]
    return _Placed(placed.anchor[order], placed.turn[order], placed.middle[order], placed.hits[order])


def _about(anchor: int, others: IntArray, pairs: "_Pairs", star_map: "_StarMap", sky: Sky, limits: Limits) -> _Placed:
    """The placements whose first star is the anchor."""
    directions = np.vstack([sky.place, sky.stars[others[others != anchor]]])
    flat = sky.plane_about(anchor, directions)
    place, neighbours = flat[0], flat[1:]
    neighbours = neighbours[np.argsort(np.abs(neighbours), kind="stable")]
    pair, end = _equal_lengths(pairs.length, np.abs(neighbours), limits.scale_share)
    turn = neighbours[end] / pairs.arrow[pair]
    middle = -turn * pairs.start[pair]
    near = np.abs(middle - place) <= 2 * np.tan(limits.middle_rad / 2) * np.abs(1 + np.conj(place) * middle / 4)
    turn, middle = turn[near], middle[near]
    return _Placed(np.full(len(turn), anchor, dtype=np.intp), turn, middle, 1 + _hits(turn, middle, neighbours, star_map))


class _Pairs(Struct, frozen=True):
    """Start, span and length of every pair of stars of the picture that is long enough."""

    start: ComplexArray
    arrow: ComplexArray
    length: FloatArray

    @classmethod
    def of(cls, picture: ComplexArray, limits: Limits) -> "_Pairs":
        start, end = np.triu_indices(len(picture), k=1)
        arrow = picture[end] - picture[start]
        long_enough = np.abs(arrow) >= _SHORTEST_PAIR * 2 * limits.half_diagonal_rad
        return cls(picture[start][long_enough], arrow[long_enough], np.abs(arrow[long_enough]))


def _equal_lengths(lengths: FloatArray, sorted_lengths: FloatArray, share: float) -> tuple[IntArray, IntArray]:
    """Index pairs (into lengths, into sorted_lengths) of lengths that agree within a share."""
    low = np.searchsorted(sorted_lengths, lengths * (1 - share), side="left")
    high = np.searchsorted(sorted_lengths, lengths * (1 + share), side="right")
    count = high - low
    arrows = np.repeat(np.arange(len(lengths)), count)
    before = np.repeat(np.cumsum(count) - count, count)
    return arrows, np.arange(len(arrows)) - before + np.repeat(low, count)


class _StarMap(Struct, frozen=True):
    """A raster of the picture, row after row: true within the tolerance of a star. Its edge stands for all beyond."""

    near_star: npt.NDArray[np.bool_]
    cell_rad: float
    half: int

    @classmethod
    def of(cls, picture: ComplexArray, limits: Limits) -> "_StarMap":
        cell = limits.tolerance_rad / _CELLS_IN_TOLERANCE
        half = int(np.ceil(limits.half_diagonal_rad / cell)) + _CELLS_IN_TOLERANCE + 2
        near_star = np.zeros((2 * half + 1, 2 * half + 1), dtype=bool)
        column, row = (np.rint(part / cell).astype(np.intp) + half for part in (picture.real, picture.imag))
        for across, down in _disc():
            near_star[np.clip(row + down, 0, 2 * half), np.clip(column + across, 0, 2 * half)] = True
        near_star[[0, -1], :] = near_star[:, [0, -1]] = False
        return cls(near_star.ravel(), cell, half)

    def at(self, right: FloatArray32, down: FloatArray32) -> npt.NDArray[np.bool_]:
        """Whether a star is near places given in cells from the middle; the arrays are used up."""
        for part in (right, down):
            np.clip(part, -self.half, self.half, out=part)
            part += self.half + 0.5
        row = down.astype(np.int32)
        row *= 2 * self.half + 1
        row += right.astype(np.int32)
        return self.near_star.take(row)


def _disc() -> Iterator[tuple[int, int]]:
    steps = range(-_CELLS_IN_TOLERANCE, _CELLS_IN_TOLERANCE + 1)
    return ((across, down) for across in steps for down in steps
            if across**2 + down**2 <= (_CELLS_IN_TOLERANCE + 0.5) ** 2)


def _hits(turn: ComplexArray, middle: ComplexArray, catalogue: ComplexArray, stars: _StarMap) -> IntArray:
    """How many catalogue stars each placement lays on a star of the picture. In single precision, by parts: this is
    nine tenths of all the work."""
    factor = (1 / (turn * stars.cell_rad)).astype(np.complex64)
    shift = (middle / (turn * stars.cell_rad)).astype(np.complex64)
    sky = catalogue.astype(np.complex64)
    hits = np.zeros(len(turn), dtype=np.intp)
    step = max(1, _CHUNK // max(1, len(sky)))
    for first in range(0, len(turn), step):
        part = slice(first, first + step)
        right = np.outer(factor.real[part], sky.real) - np.outer(factor.imag[part], sky.imag) - shift.real[part, None]
        down = np.outer(factor.real[part], sky.imag) + np.outer(factor.imag[part], sky.real) - shift.imag[part, None]
        hits[part] = np.count_nonzero(stars.at(right, down), axis=1)
    return hits
