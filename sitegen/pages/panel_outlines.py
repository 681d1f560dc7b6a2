"""The panels of a mosaic laid over a solved picture: outline and name of each, in pixels of the picture."""

from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from msgspec import Struct

from sitegen.facts.mosaic_field import edge_of
from sitegen.facts.views import MosaicView, PanelView
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray

STEPS = 8
"""A side in so many straight pieces: far from the middle it is bent."""
NAMED_AT = ((0.0, 0.46), (0.0, -0.46), (0.0, 0.0))
"""Right and up of the panel's middle, in sides: under its upper edge, over its lower one, else in the middle."""


class PanelOutline(Struct, frozen=True):
    """`points` as SVG's polygon takes them; the name stands at a share of width and height, None where no place for it is in the
    picture. `is_turned`: somebody tells how the camera was turned."""

    name: str
    points: str
    at: tuple[float, float] | None
    is_turned: bool


def panel_outlines(mosaic: MosaicView | None, solution: Solution) -> tuple[PanelOutline, ...]:
    """Those that reach into the picture."""
    return tuple(_outlines(mosaic, solution)) if mosaic is not None else ()


def _outlines(mosaic: MosaicView, solution: Solution) -> Iterator[PanelOutline]:
    for panel in mosaic.panels:
        edge = _pixels(panel, _side_points(), solution)
        if edge is None or not _touches(edge, solution):
            continue
        points = " ".join(f"{round(x, 1) + 0.0:.1f},{round(y, 1) + 0.0:.1f}" for x, y in edge)
        yield PanelOutline(panel.name, points, _named_at(panel, solution), panel.rotation_deg is not None)


def _side_points() -> FloatArray:
    corners = np.array([(1, -1), (1, 1), (-1, 1), (-1, -1), (1, -1)]) / 2.0
    shares = np.linspace(0.0, 1.0, STEPS, endpoint=False)[:, None]
    return np.concatenate([start + shares * (end - start) for start, end in pairwise(corners)])


def _pixels(panel: PanelView, points: FloatArray, solution: Solution) -> FloatArray | None:
    """From the outer edge of the picture, as drawings count them."""
    sky = edge_of(panel, points)
    if sky is None:
        return None
    pixels = np.column_stack(solution.to_pixel(*sky)) + 0.5
    return pixels if np.isfinite(pixels).all() else None


def _touches(edge: FloatArray, solution: Solution) -> bool:
    low, high = edge.min(axis=0), edge.max(axis=0)
    return bool((high > 0).all() and low[0] < solution.width_px and low[1] < solution.height_px)


def _named_at(panel: PanelView, solution: Solution) -> tuple[float, float] | None:
    places = _pixels(panel, np.array(NAMED_AT), solution)
    for x, y in places.tolist() if places is not None else ():
        across, down = x / solution.width_px, y / solution.height_px
        if 0.03 < across < 0.97 and 0.04 < down < 0.96:
            return round(across, 5), round(down, 5)
    return None
