"""The stars of a picture on which a solution lays a catalogue star."""

import numpy as np
import numpy.typing as npt
from msgspec import Struct
from scipy.spatial import cKDTree

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving.pose import Neighbours, columns
from sitegen.stars.solving.scene import Scene
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray

_PICTURE_FOR_EACH = 3
_PICTURE_AT_LEAST = 40
_LENS_ROOM = 1.15


class MatchedStars(Struct, frozen=True):
    """Pixel offsets from the frame's middle, and places, arrays of one length."""

    u_px: FloatArray
    v_px: FloatArray
    ra_deg: FloatArray
    dec_deg: FloatArray

    def __len__(self) -> int:
        return len(self.u_px)


def matched_stars(solution: Solution, scene: Scene, tolerance_px: float, most: int, share: float = 1.0) -> MatchedStars:
    """One to one, in the middle share of the frame, of its so many brightest catalogue stars."""
    places = scene.catalogue
    half_width, half_height = (share * side / 2 for side in scene.frame)
    around = np.flatnonzero(_around(solution, scene, float(np.hypot(half_width, half_height))))[: 3 * most]
    x, y = solution.to_pixel(places.ra_deg[around], places.dec_deg[around])
    offset = (x - solution.centre_px[0]) + 1j * (y - solution.centre_px[1])
    in_part = np.flatnonzero((np.abs(offset.real) <= half_width) & (np.abs(offset.imag) <= half_height))[:most]
    inside, offset = around[in_part], offset[in_part]
    seen = np.flatnonzero((np.abs(scene.stars.real) <= half_width) & (np.abs(scene.stars.imag) <= half_height))
    seen = seen[: max(_PICTURE_AT_LEAST, solution.matched, _PICTURE_FOR_EACH * len(inside))]
    if len(seen) == 0:
        return MatchedStars(*np.empty((4, 0)))
    distance, star = cKDTree(columns(scene.stars[seen])).query(columns(offset))
    near = Neighbours(inside, offset, seen[np.asarray(star, dtype=np.intp)], np.asarray(distance))
    catalogue, stars = near.matches(tolerance_px)
    positions = scene.stars[stars]
    return MatchedStars(positions.real, positions.imag, places.ra_deg[catalogue], places.dec_deg[catalogue])


def _around(solution: Solution, scene: Scene, radius_px: float) -> npt.NDArray[np.bool_]:
    """Which catalogue stars can lie within so many pixels of the middle, whatever the lens: at its edges a pixel shows less sky
    than in the middle, or a little more."""
    radius_deg = _LENS_ROOM * radius_px * solution.scale_arcsec_px / 3600
    middle = solution.ra_deg, solution.dec_deg
    apart: npt.NDArray[np.bool_] = separation_deg(scene.catalogue.ra_deg, scene.catalogue.dec_deg, *middle) <= radius_deg
    return apart
