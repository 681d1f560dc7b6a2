"""Pose: a picture laid on the sky by shift, turn and one scale; found roughly, drawn tight, and weighed.

The picture's pixel p (complex offset from the frame's middle, mirroring undone) lies at the plane point
z = to_plane * p in degrees (xi + i eta), on the plane that touches the sky at the pose's place.
"""

import numpy as np
from msgspec import Struct
from scipy.spatial import cKDTree

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.evidence import Evidence, false_alarms_log10, is_in_order
from sitegen.stars.solving.placements import ComplexArray, IntArray
from sitegen.stars.solving.scene import Scene, as_seen
from sitegen.stars.solving.tangent_plane import FloatArray

_TIGHTENING = (0.006, 0.004, 0.0025, 0.0015, 0.001)
"""Of the diagonal: tolerances of the successive fits."""

_COMPARED = (8, 12, 18, 27, 40, 60, 90, 135)
_TOLERANCES = (0.5, 1.0, 2.5, 5.0, 10.0, 20.0)
_LEAST_TOLERANCE, _LEAST_TOLERANCE_PX = 0.00025, 0.4
"""Of the diagonal, and pixels: a star's place is good to 0.1 px, and the other tolerances are multiples of this one."""

_NEIGHBOURHOOD = 0.05
_SPENT = 2
"""Two stars make a pose, so they are no evidence for it."""


class Pose(Struct, frozen=True):
    """Place of the frame's middle (ICRS degrees), degrees per pixel as a complex factor, and the parity."""

    ra_deg: float
    dec_deg: float
    to_plane: complex
    mirrored: bool


class Neighbours(Struct, frozen=True):
    """Catalogue stars in the frame (index, brightest first, and predicted pixel offset) and, for each, its
    nearest compared star and the distance in pixels."""

    catalogue: IntArray
    predicted: ComplexArray
    star: IntArray
    distance_px: FloatArray

    def matches(self, tolerance_px: float) -> tuple[IntArray, IntArray]:
        """(catalogue, star) indices within the tolerance, each star once, with the closest catalogue star."""
        near = np.flatnonzero(self.distance_px <= tolerance_px)
        near = near[np.argsort(self.distance_px[near], kind="stable")]
        _, first = np.unique(self.star[near], return_index=True)
        kept = near[np.sort(first)]
        return self.catalogue[kept], self.star[kept]


class Lookup:
    """A scene's stars, mirroring undone, in search trees: all of them, or the brightest few."""

    def __init__(self, scene: Scene, mirrored: bool) -> None:
        self.stars = as_seen(scene.stars, mirrored)
        self.scene = scene
        self._trees: dict[int, cKDTree] = {}

    def tree(self, count: int) -> cKDTree:
        """Search tree over the brightest stars."""
        count = min(count, len(self.stars))
        if count not in self._trees:
            self._trees[count] = cKDTree(columns(self.stars[:count]))
        return self._trees[count]

    def predicted(self, pose: Pose) -> tuple[IntArray, ComplexArray]:
        """Catalogue stars that fall into the frame: index, brightest first, and pixel offset."""
        places = self.scene.catalogue
        xi, eta = tangent_plane.to_plane(places.ra_deg, places.dec_deg, pose.ra_deg, pose.dec_deg)
        offset = (xi + 1j * eta) / pose.to_plane
        width, height = self.scene.frame
        inside = np.flatnonzero((np.abs(offset.real) <= width / 2) & (np.abs(offset.imag) <= height / 2))
        return inside, offset[inside]

    def neighbours(self, pose: Pose, compared: int, foretold: int) -> Neighbours:
        """The brightest catalogue stars in the frame beside the brightest stars of the picture."""
        catalogue, predicted = self.predicted(pose)
        return self.beside(catalogue[:foretold], predicted[:foretold], compared)

    def beside(self, catalogue: IntArray, predicted: ComplexArray, compared: int) -> Neighbours:
        """The nearest of the brightest stars to each predicted place."""
        distance, star = self.tree(compared).query(columns(predicted))
        return Neighbours(catalogue, predicted, np.asarray(star, dtype=np.intp), np.asarray(distance))


def columns(places: ComplexArray) -> FloatArray:
    """x and y (count, 2)."""
    return np.column_stack([places.real, places.imag])


def tightened(pose: Pose, lookup: Lookup, compared: int, foretold: int) -> Pose:
    """The pose fitted to its own matches, again and again with a smaller tolerance; as it was where too few match."""
    for share in _TIGHTENING:
        near = lookup.neighbours(pose, compared, foretold)
        catalogue, star = near.matches(share * lookup.scene.diagonal_px)
        if len(star) < _SPENT + 1:
            return pose
        pose = _fitted(pose, lookup, catalogue, star)
    return pose


def _fitted(pose: Pose, lookup: Lookup, catalogue: IntArray, star: IntArray) -> Pose:
    """Least squares for z = to_plane * p + shift, then the plane moved to touch where the middle came to lie."""
    places = lookup.scene.catalogue
    xi, eta = tangent_plane.to_plane(places.ra_deg[catalogue], places.dec_deg[catalogue], pose.ra_deg, pose.dec_deg)
    plane, pixel = xi + 1j * eta, lookup.stars[star]
    centred = pixel - pixel.mean()
    to_plane = complex(np.vdot(centred, plane - plane.mean()) / np.vdot(centred, centred).real)
    shift = complex(plane.mean() - to_plane * pixel.mean())
    ra, dec = tangent_plane.to_sky(shift.real, shift.imag, pose.ra_deg, pose.dec_deg)
    return Pose(float(ra), float(dec), to_plane, pose.mirrored)


def allowed(pose: Pose, scene: Scene) -> bool:
    """Whether the pose is still within what the diary allows."""
    prior = scene.prior
    scale = abs(pose.to_plane) * 3600 / prior.scale_arcsec_px
    apart = separation_deg(pose.ra_deg, pose.dec_deg, prior.ra_deg, prior.dec_deg)
    return abs(scale - 1) <= prior.scale_tolerance and bool(apart <= prior.middle_tolerance_deg(*scene.frame) * 1.02)


def weighed(pose: Pose, lookup: Lookup, placements_tried: int) -> Evidence:
    """The strongest evidence for a pose over several depths and tolerances, all of which count as tries."""
    catalogue, predicted = lookup.predicted(pose)
    least = max(_LEAST_TOLERANCE_PX, _LEAST_TOLERANCE * lookup.scene.diagonal_px)
    depths = sorted({min(depth, len(lookup.stars)) for depth in _COMPARED})
    tries = placements_tried * len(depths) * len(_TOLERANCES)
    every = []
    for depth in depths:
        near = lookup.beside(catalogue[:depth], predicted[:depth], depth)
        crowding = _crowding_px2(near, lookup, depth)
        every += [_evidence(near, crowding, depth, least * tolerance, tries) for tolerance in _TOLERANCES]
    return min(every, key=lambda evidence: evidence.false_alarms_log10)


def _evidence(near: Neighbours, crowding_px2: FloatArray, depth: int, tolerance_px: float, tries: int) -> Evidence:
    catalogue, star = near.matches(tolerance_px)
    matched = len(star)
    unspent = max(len(near.predicted) - _SPENT, 0) / max(len(near.predicted), 1)
    by_chance = float(np.sum(-np.expm1(-crowding_px2 * np.pi * tolerance_px**2)) * unspent)
    return Evidence(matched, len(near.predicted), depth, tolerance_px, by_chance,
                    false_alarms_log10(tries, matched, by_chance, _SPENT, is_in_order(star[np.argsort(catalogue)].tolist())))


def _crowding_px2(near: Neighbours, lookup: Lookup, depth: int) -> FloatArray:
    """Stars a square pixel around each predicted place: as nearby, its own match not counted, and never less
    than over the whole frame, so that a cluster on a cluster is no surprise."""
    width, height = lookup.scene.frame
    radius = _NEIGHBOURHOOD * lookup.scene.diagonal_px
    nearby = lookup.tree(depth).query_ball_point(columns(near.predicted), radius, return_length=True)
    return np.maximum((np.asarray(nearby) - 1) / (np.pi * radius**2), depth / (width * height))
