"""How many marks a panel holds: no more than the eye can part, and none left out that would be missed.

The rule, for the dots of one night, then for those of all nights in a panel:

1. Up to the limit, every sub is a mark of its own.
2. Beyond it, discarded subs and outliers (further from the night's moving median than three times the spread of its subs) are
   shown wherever they lie: those in one square of a unit are one mark, which covers them all. Where more than their share of the
   limit is left, squares grow to 2, 4, 8 units and so on.
3. Of the other subs, every so manieth is a mark, as many as there is room for.

A moving median is a line of no more points than the limit: each then stands for as many subs in a row, with their median.
"""

from collections.abc import Callable, Iterable, Sequence
from itertools import count, pairwise
from statistics import median
from typing import TypeVar

from msgspec import Struct

from sitegen.charts.svg_writer import Point

MOST_A_NIGHT = 400
MOST_A_PANEL = 1_200
SPREADS = 3.0
GAUSS = 1.4826
"""Standard deviations in a median absolute deviation, for normal errors (Rousseeuw & Croux 1993, J. Am. Stat. Assoc. 88,
1273)."""
Item = TypeVar("Item")


class Marks(Struct, frozen=True):
    """Places of subs by what they are: `plain` and `outliers` were kept."""

    plain: Sequence[Point] = ()
    outliers: Sequence[Point] = ()
    discarded: Sequence[Point] = ()

    @property
    def kept(self) -> tuple[Point, ...]:
        return (*self.plain, *self.outliers)


def thinned(marks: Marks, units: Callable[[Point], Point], most: int) -> Marks:
    """No more than `most` of them; `units` tells where in the panel a mark lies."""
    if len(marks.plain) + len(marks.outliers) + len(marks.discarded) <= most:
        return marks
    outliers, discarded = (merged(points, units, 3 * most // 8) for points in (marks.outliers, marks.discarded))
    return Marks(evenly(marks.plain, most - len(outliers) - len(discarded)), outliers, discarded)


def together(nights: Iterable[Marks]) -> Marks:
    every = tuple(nights)
    plain, outliers, discarded = (
        [point for marks in every for point in getattr(marks, kind)] for kind in ("plain", "outliers", "discarded")
    )
    return Marks(plain, outliers, discarded)


def merged(points: Sequence[Point], units: Callable[[Point], Point], most: int) -> list[Point]:
    """The first of those in each square, whose side doubles from one unit until no more than `most` are left."""
    if len(points) <= most:
        return list(points)
    places = [units(point) for point in points]
    for power in count():
        side = float(2**power)
        first = {(x // side, y // side): point for (x, y), point in zip(reversed(places), reversed(points), strict=True)}
        if len(first) <= most:
            return sorted(first.values())
    raise AssertionError("a square as large as the panel holds every mark")


def evenly(items: Sequence[Item], most: int) -> list[Item]:
    """As many of them, in equal distances from the first on."""
    if len(items) <= most:
        return list(items)
    return [items[place * len(items) // most] for place in range(most)]


def apart(points: Sequence[Point], medians: Sequence[float]) -> Marks:
    """Kept subs as plain ones and outliers. `medians`: the moving median at each. The spread is the median distance from it,
    as a standard deviation."""
    distances = [abs(y - middle) for (_, y), middle in zip(points, medians, strict=True)]
    limit = SPREADS * GAUSS * median(distances) if distances else 0.0
    far = [distance > limit for distance in distances]
    plain = [point for point, is_far in zip(points, far, strict=True) if not is_far]
    return Marks(plain, [point for point, is_far in zip(points, far, strict=True) if is_far])


def shortened(points: Sequence[Point], most: int) -> list[Point]:
    """A line of no more points: stretches of equal numbers, each its middle point's place and the median of its heights."""
    if len(points) <= most:
        return list(points)
    edges = [place * len(points) // most for place in range(most + 1)]
    stretches = [points[start:end] for start, end in pairwise(edges)]
    return [(stretch[len(stretch) // 2][0], median(y for _, y in stretch)) for stretch in stretches]
