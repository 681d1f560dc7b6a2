"""Every way two stars of a picture can be two stars of the catalogue, and how many more stars each way explains.

Both star lists lie as complex numbers (radians) on stereographic planes: the picture's about its own
middle, at the scale that the diary gives; the catalogue's about the place the diary gives. Stereographic,
because it keeps shapes: a picture stays similar to its piece of sky, though the two touching points
differ by half a field. What is left over, at most 1 in 1000 of a 10 degree field, is within the tolerance.

A placement is sky = turn * picture + middle: |turn| is the true scale over the given one.
"""

from collections.abc import Iterator
from typing import TypeAlias

import numpy as np
import numpy.typing as npt
from msgspec import Struct

ComplexArray: TypeAlias = npt.NDArray[np.complex128]
IntArray: TypeAlias = npt.NDArray[np.intp]
FloatArray32: TypeAlias = npt.NDArray[np.float32]

_CELLS_IN_TOLERANCE = 3
_CHUNK = 200_000
_SHORTEST_PAIR = 0.12
"""Of the diagonal: from shorter pairs the far corner of the picture cannot be foretold."""


class Placements(Struct, frozen=True):
    """Placements as arrays of one length: turn and middle, as the module says, and the hits of each."""

    turn: ComplexArray
    middle: ComplexArray
    hits: IntArray

    def __len__(self) -> int:
        return len(self.turn)


class Limits(Struct, frozen=True):
    """What the diary allows: scale off by scale_share, middle off by middle_rad; the frame's half diagonal
    and the tolerance of a hit, radians."""

    scale_share: float
    middle_rad: float
    half_diagonal_rad: float
    tolerance_rad: float


def all_placements(picture: ComplexArray, catalogue: ComplexArray, limits: Limits) -> Placements:
    """Placements within the limits, each with its hits: catalogue stars that fall on a star of the picture."""
    turn, middle = _from_pairs(picture, catalogue, limits)
    return Placements(turn, middle, _hits(turn, middle, catalogue, _StarMap.of(picture, limits)))


def _from_pairs(picture: ComplexArray, catalogue: ComplexArray,
                limits: Limits) -> tuple[ComplexArray, ComplexArray]:
    start, arrow = _arrows(picture)
    long_enough = np.abs(arrow) >= _SHORTEST_PAIR * 2 * limits.half_diagonal_rad
    start, arrow = start[long_enough], arrow[long_enough]
    sky_start, sky_arrow = _arrows(catalogue, both_ways=True)
    by_length = np.argsort(np.abs(sky_arrow), kind="stable")
    sky_start, sky_arrow = sky_start[by_length], sky_arrow[by_length]
    pair, sky_pair = _equal_lengths(np.abs(arrow), np.abs(sky_arrow), limits.scale_share)
    turn = sky_arrow[sky_pair] / arrow[pair]
    middle = sky_start[sky_pair] - turn * start[pair]
    near = np.abs(middle) <= limits.middle_rad
    return turn[near], middle[near]


def _arrows(stars: ComplexArray, both_ways: bool = False) -> tuple[ComplexArray, ComplexArray]:
    """Start and span of every pair of different stars."""
    start, end = np.triu_indices(len(stars), k=1)
    if both_ways:
        start, end = np.concatenate([start, end]), np.concatenate([end, start])
    return stars[start], stars[end] - stars[start]


def _equal_lengths(lengths: npt.NDArray[np.float64], sorted_lengths: npt.NDArray[np.float64],
                   share: float) -> tuple[IntArray, IntArray]:
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


def most_promising(placements: Placements, limits: Limits, count: int) -> IntArray:
    """Indices of at most count placements with the most hits, each clearly different from those before it."""
    best = np.argsort(-placements.hits, kind="stable")[: 40 * count]
    chosen: list[int] = []
    while len(best) and len(chosen) < count:
        leader = best[0]
        chosen.append(int(leader))
        best = best[_difference(placements, leader, best, limits) > 4 * limits.tolerance_rad]
    return np.array(chosen, dtype=np.intp)


def _difference(placements: Placements, leader: int, others: IntArray, limits: Limits) -> npt.NDArray[np.float64]:
    """How far two placements can put one star apart, radians."""
    apart = np.abs(placements.middle[others] - placements.middle[leader])
    turned = np.abs(placements.turn[others] - placements.turn[leader])
    return np.asarray(apart + turned * limits.half_diagonal_rad)
