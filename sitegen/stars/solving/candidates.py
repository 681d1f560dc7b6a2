"""The most promising placements of one search as poses, each clearly different from those before it."""

import numpy as np
import numpy.typing as npt

from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.placements import ComplexArray, Placements, Sky, best_placements
from sitegen.stars.solving.pose import Pose
from sitegen.stars.solving.scene import Scene, StarPlaces
from sitegen.stars.solving.tangent_plane import FloatArray

_ALIKE = 40
"""Placements looked through for each that is followed up: the right one is found from many pairs."""


def candidates(scene: Scene, mirrored: bool, stars: int, in_frame: int, count: int) -> tuple[int, list[Pose]]:
    """Number of placements tried, and at most count poses, those with the most hits first."""
    places = scene.brightest(in_frame)
    sky = Sky(tangent_plane.directions(places.ra_deg, places.dec_deg),
              tangent_plane.directions(scene.prior.ra_deg, scene.prior.dec_deg))
    placements = best_placements(scene.stars_on_plane(stars, mirrored), sky, scene.limits, _ALIKE * count)
    ra, dec, per_pixel = _on_the_sky(placements, places, scene)
    chosen = _distinct(tangent_plane.directions(ra, dec), per_pixel, scene, count)
    return placements.tried, [Pose(float(ra[i]), float(dec[i]), complex(per_pixel[i]), mirrored) for i in chosen]


def _on_the_sky(placements: Placements, places: StarPlaces, scene: Scene) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Middle (degrees) and degrees per pixel of each, the turn of north between anchor and middle taken into account."""
    step = scene.limits.half_diagonal_rad * 0.01
    anchor_ra, anchor_dec = (column[placements.anchor] for column in (places.ra_deg, places.dec_deg))
    ends = [_place(placements.middle + along, anchor_ra, anchor_dec) for along in (0.0, placements.turn * step)]
    xi, eta = tangent_plane.to_plane(*ends[1], *ends[0])
    return *ends[0], (xi + 1j * eta) / step * np.radians(scene.prior.scale_arcsec_px / 3600)


def _place(stereographic: ComplexArray, ra_deg: FloatArray, dec_deg: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Right ascension and declination, degrees, of points of the stereographic planes about other places."""
    gnomonic = stereographic / (1 - np.abs(stereographic) ** 2 / 4) * (180 / np.pi)
    return tangent_plane.to_sky(gnomonic.real, gnomonic.imag, ra_deg, dec_deg)


def _distinct(middles: FloatArray, per_pixel: ComplexArray, scene: Scene, count: int) -> list[int]:
    """Indices; two poses are alike that put no star of the frame farther apart than four tolerances."""
    left: npt.NDArray[np.intp] = np.arange(len(middles))
    chosen: list[int] = []
    while len(left) and len(chosen) < count:
        leader = left[0]
        chosen.append(int(leader))
        apart = np.linalg.norm(middles[left] - middles[leader], axis=1)
        turned = np.radians(np.abs(per_pixel[left] - per_pixel[leader])) * scene.diagonal_px / 2
        left = left[apart + turned > 4 * scene.limits.tolerance_rad]
    return chosen
