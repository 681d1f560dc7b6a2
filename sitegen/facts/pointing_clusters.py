"""Places on the sky -> clusters: frames that were dithered around one place lie together, panels of a mosaic apart."""

from collections.abc import Iterable, Iterator, Sequence

import numpy as np
import numpy.typing as npt

Place = tuple[float, float]
Vectors = npt.NDArray[np.float64]

TOGETHER = 0.2
"""Of the field's shorter side: dither, drift and another night's pointing stay inside, common practice, no source."""
PARTED = 0.5
"""Of the shorter side: panels overlap by less than half, common practice, no source."""
LEAST_FRAMES = 3
"""A frame or two that point elsewhere are rather a slip than a panel."""
MOST_CELLS = 2_000
"""So many places are no mosaic, and would take long to compare."""


def vectors_of(places: Sequence[Place]) -> Vectors:
    """Unit vectors, one row a place."""
    ra, dec = np.radians(np.array(places, float).reshape(-1, 2)).T
    return np.column_stack([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])


def middle_of(places: Sequence[Place]) -> Place:
    """The median in each axis of space: a few strays do not move it."""
    x, y, z = np.median(vectors_of(places), axis=0)
    return float(np.degrees(np.arctan2(y, x))) % 360.0, float(np.degrees(np.arctan2(z, np.hypot(x, y))))


def apart_deg(place: Place, other: Place) -> float:
    first, second = vectors_of([place, other])
    return float(np.degrees(2 * np.arcsin(min(1.0, float(np.linalg.norm(first - second)) / 2))))


def clusters_of(places: Sequence[Place], shorter_deg: float) -> list[list[int]]:
    """Places by their number, in the order in which the clusters begin; those of fewer than three are left out."""
    vectors = vectors_of(places)
    cells = _cells(vectors, shorter_deg)
    if len(cells) > MOST_CELLS:
        return []
    middles = np.array([vectors[numbers].mean(axis=0) for numbers in cells])
    groups = [[number for cell in linked for number in cells[cell]] for linked in _linked(middles, TOGETHER * shorter_deg)]
    merged = _merged(groups, vectors, PARTED * shorter_deg)
    return sorted((sorted(group) for group in merged if len(group) >= LEAST_FRAMES), key=lambda group: group[0])


def _cells(vectors: Vectors, shorter_deg: float) -> list[list[int]]:
    """Thousands of dithered frames are few places."""
    step = _chord(TOGETHER * shorter_deg) / 2
    cells: dict[tuple[int, ...], list[int]] = {}
    for number, key in enumerate(np.round(vectors / step).astype(int).tolist()):
        cells.setdefault(tuple(key), []).append(number)
    return list(cells.values())


def _chord(angle_deg: float) -> float:
    return float(2 * np.sin(np.radians(angle_deg) / 2))


def _linked(middles: Vectors, reach_deg: float) -> Iterator[list[int]]:
    """Those that hang together, no gap wider than the reach."""
    left = set(range(len(middles)))
    while left:
        waiting, group = [left.pop()], []
        while waiting:
            cell = waiting.pop()
            group.append(cell)
            near = [other for other in left if np.linalg.norm(middles[other] - middles[cell]) <= _chord(reach_deg)]
            left.difference_update(near)
            waiting += near
        yield group


def _merged(groups: Iterable[list[int]], vectors: Vectors, parted_deg: float) -> list[list[int]]:
    """The two nearest become one, until all are parted."""
    merged = sorted((sorted(group) for group in groups), key=lambda group: group[0])
    while len(merged) > 1:
        middles = np.array([vectors[group].mean(axis=0) for group in merged])
        apart = np.linalg.norm(middles[:, None] - middles[None, :], axis=2) + 9.0 * np.eye(len(merged))
        first, second = sorted(divmod(int(apart.argmin()), len(merged)))
        if apart[first, second] >= _chord(parted_deg):
            break
        merged[first] = sorted(merged[first] + merged.pop(second))
    return merged
