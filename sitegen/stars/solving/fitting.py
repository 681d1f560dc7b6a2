"""From an accepted pose to the solution: all stars that match, as much of the lens as they can vouch for, what is left open."""

import numpy as np
from msgspec.structs import replace

from sitegen.stars.solving.accepting import accepted
from sitegen.stars.solving.camera import Camera, at_axis, fitted, likeliest_axis
from sitegen.stars.solving.evidence import Evidence
from sitegen.stars.solving.lens import terms_of, terms_of_any_lens
from sitegen.stars.solving.matched_stars import MatchedStars, matched_stars
from sitegen.stars.solving.pose import Pose
from sitegen.stars.solving.scene import Scene
from sitegen.stars.solving.solution import Solution

# Not astropy's fit_wcs_from_points, which iterates where a linear fit is exact, knows neither a prior nor a covariance, and takes
# the middle of the picture for the lens's axis.

_AXIS_FROM_DEG = 10.0
"""Diagonal: in narrower fields no star tells where the lens's axis is, and nothing hangs on it."""

_GROWTH, _STEPS_OUT, _SHARES_TRIED = 1.3, 24, 12
_REACH_PX = 4.0
"""How far off the fit to a part of a wide picture may put a star just beyond it."""

_WITHIN_TOLERANCE = 1.5
_LEAST_REACH_PX = 2.0
_CLIP_NOISE = 3.5
_LEAST_CLIP_PX = 0.7
_CLIP_DECIMALS = 3
_WIDE_PASSES = 3
_CLIPPED_PASSES = 12
_SURE = 4.0
"""Standard deviations of both axes together. Three would hold but for blends, which a normal distribution does not know: of some
170 simulated pictures, 3 were beyond three, by up to a sixth."""

_LIKELY = 2.0
"""The same, for a first guess that clipping will judge."""

_HELD_AT_MOST, _WHILE_GROWING = 1000, 400
"""Stars of a fit."""


def solution_from(pose: Pose, evidence: Evidence, scene: Scene, searched: Scene) -> Solution:
    """The pose of the part searched as the solution of the whole scene."""
    camera = Camera.of(_unrefined(pose, evidence, scene), scene)
    reach_px = max(_WITHIN_TOLERANCE * evidence.tolerance_px, _LEAST_REACH_PX)
    if camera.diagonal_deg > _AXIS_FROM_DEG:
        camera = _grown(camera, scene, searched.diagonal_px / scene.diagonal_px, reach_px)
        reach_px = _REACH_PX
    for _ in range(_WIDE_PASSES):
        camera = _refined(camera, matched_stars(camera.solution, scene, reach_px, _HELD_AT_MOST))
    return _solution_of(_clipped(camera, scene, reach_px))


def _grown(camera: Camera, scene: Scene, share: float, reach_px: float) -> Camera:
    """From the middle to the edges, as far at a time as the stars so far foretell the next ones; then with the lens's axis where
    they put it. Where the edges are not reached, the terms of any lens stay, and their covariance tells of the corners."""
    camera = replace(camera, terms=terms_of_any_lens(camera.diagonal_deg))
    for _ in range(_STEPS_OUT):
        stars = matched_stars(camera.solution, scene, reach_px, _WHILE_GROWING, share)
        camera, reach_px = _refined(camera, stars), _REACH_PX
        if share == 1.0:
            camera = likeliest_axis(replace(camera, terms=terms_of(camera.diagonal_deg, radial_only=True)), stars)
            return at_axis(replace(camera, terms=terms_of(camera.diagonal_deg)), complex(np.rint(camera.axis_px)))
        share = _foretold(camera, share)
    return camera


def _foretold(camera: Camera, share: float) -> float:
    """The middle part of the frame, no smaller than before, whose stars are foretold to within what is reached."""
    larger = np.linspace(share, min(1.0, _GROWTH * share), _SHARES_TRIED)
    sure = [part for part in larger if _LIKELY * camera.corner_deviation(part) * camera.half_px <= _REACH_PX]
    return float(max(sure, default=share))


def _refined(camera: Camera, stars: MatchedStars) -> Camera:
    return fitted(camera, stars) if len(stars) > 1 else camera


def _clipped(camera: Camera, scene: Scene, reach_px: float) -> Camera:
    """Fitted to the stars near it, until a pass changes nothing that a solution tells: then it no longer matters from which of
    the many near placements the fit set out."""
    for _ in range(_CLIPPED_PASSES):
        before = accepted(camera.solution)
        clip_px = max(_LEAST_CLIP_PX, round(_CLIP_NOISE * camera.noise * camera.half_px, _CLIP_DECIMALS))
        camera = _refined(camera, matched_stars(camera.solution, scene, min(clip_px, reach_px), _HELD_AT_MOST))
        if accepted(camera.solution) == before:
            break
    return camera


def _solution_of(camera: Camera) -> Solution:
    """With the error that the farthest corner may have."""
    corner_px = _SURE * camera.corner_deviation() * camera.half_px
    return accepted(replace(camera.solution, corner_arcsec=corner_px * camera.solution.scale_arcsec_px))


def _unrefined(pose: Pose, evidence: Evidence, scene: Scene) -> Solution:
    along_x = pose.to_plane
    along_y = pose.to_plane * (-1j if pose.mirrored else 1j)
    width, height = scene.frame
    cd = ((along_x.real, along_y.real), (along_x.imag, along_y.imag))
    return Solution(width, height, pose.ra_deg, pose.dec_deg, (width - 1) / 2, (height - 1) / 2, cd,
                    matched=evidence.matched, rms_arcsec=None, evidence=evidence)
