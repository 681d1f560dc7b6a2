"""solve: the place of a picture on the sky from its stars, what the diary knows, and a catalogue; or no answer."""

from collections.abc import Iterator

import numpy as np
import numpy.typing as npt
from msgspec import Struct
from msgspec.structs import replace

from sitegen.stars.solving.candidates import candidates
from sitegen.stars.solving.detection import DetectedStars
from sitegen.stars.solving.evidence import MATCHES_AT_LEAST, Evidence
from sitegen.stars.solving.fitting import solution_from
from sitegen.stars.solving.pose import Lookup, Pose, allowed, tightened, weighed
from sitegen.stars.solving.scene import Scene, SolvePrior, scene_of
from sitegen.stars.solving.solution import NotSolved, Solution

_DEPTHS = ((8, 8), (20, 16), (30, 22), (45, 22))
"""(brightest stars of the picture, catalogue stars expected in the frame) of the successive searches. The first is
small because every placement tried is held against what it finds: five stars are enough for it, not for the last."""

_FOLLOWED_UP = 12
_LEAST_STARS = MATCHES_AT_LEAST
_LARGEST_DIAGONAL_DEG = 90.0
"""One tangent plane ends at 90 degrees from the lens's axis, and its scale doubles at 45."""


class _Finding(Struct, frozen=True):
    pose: Pose
    evidence: Evidence


def solve(detected: DetectedStars, width_px: int, height_px: int, catalogue_ra_deg: npt.ArrayLike,
          catalogue_dec_deg: npt.ArrayLike, catalogue_magnitude: npt.ArrayLike,
          prior: SolvePrior) -> Solution | NotSolved:
    """Where the picture points, or why that cannot be said; never a guess (evidence.py says what is asked for).

    The catalogue (ICRS degrees, any order) has to reach prior.search_radius_deg(width_px, height_px) around
    the prior's place; more does no harm. Deterministic.
    """
    columns = (catalogue_ra_deg, catalogue_dec_deg, catalogue_magnitude)
    scene = scene_of(detected, (width_px, height_px), columns, prior)
    hopeless = _hopeless(scene)
    if hopeless is not None:
        return hopeless
    searched = scene.part_searched()
    best: _Finding | None = None
    for finding in _findings(searched):
        if finding.evidence.convinces:
            return solution_from(finding.pose, finding.evidence, scene, searched)
        if best is None or finding.evidence.false_alarms_log10 < best.evidence.false_alarms_log10:
            best = finding
    return NotSolved(_refusal(best))


def _hopeless(scene: Scene) -> NotSolved | None:
    if len(scene.stars) < _LEAST_STARS:
        return NotSolved(f"only {len(scene.stars)} stars found in the picture; {_LEAST_STARS} are needed")
    if len(scene.catalogue) < _LEAST_STARS:
        return NotSolved(f"the catalogue has only {len(scene.catalogue)} stars near the target; {_LEAST_STARS} are needed")
    return too_wide(*scene.frame, scene.prior)


def too_wide(width_px: int, height_px: int, prior: SolvePrior) -> NotSolved | None:
    """The refusal of a field that no solution would fit, which can be had before any star is looked for."""
    diagonal_deg = float(np.hypot(width_px, height_px)) * prior.scale_arcsec_px / 3600
    if diagonal_deg <= _LARGEST_DIAGONAL_DEG:
        return None
    return NotSolved(f"the field is {diagonal_deg:.0f} degrees from corner to corner; up to "
                     f"{_LARGEST_DIAGONAL_DEG:.0f} are solved")


def _refusal(best: _Finding | None) -> str:
    if best is None:
        return "no two stars of the picture are as far apart as two of the catalogue, at the scale of the rig"
    seen = best.evidence
    return (f"the best placement matches {seen.matched} of {seen.predicted} catalogue stars, the mirrored sky "
            f"{seen.control_matched}: chance cannot be ruled out")


def _findings(scene: Scene) -> Iterator[_Finding]:
    """The better parity of each search, with the other one's success as its control."""
    tried = 0
    lookups = [Lookup(scene, mirrored) for mirrored in (False, True)]
    for stars, in_frame in _DEPTHS:
        searches = [_search(lookup, mirrored, stars, in_frame, tried) for mirrored, lookup in enumerate(lookups)]
        tried += sum(placements for placements, _ in searches)
        ranked = sorted((finding for _, finding in searches if finding is not None),
                        key=lambda finding: finding.evidence.false_alarms_log10)
        if ranked:
            yield _controlled(ranked[0], ranked[1] if len(ranked) > 1 else None)


def _controlled(winner: _Finding, control: _Finding | None) -> _Finding:
    if control is None:
        return winner
    return replace(winner, evidence=replace(winner.evidence, control_matched=control.evidence.matched,
                                            control_false_alarms_log10=control.evidence.false_alarms_log10))


def _search(lookup: Lookup, mirrored: bool | int, stars: int, in_frame: int, tried: int) -> tuple[int, _Finding | None]:
    """Number of placements with one parity, and the one with the best evidence."""
    placements, poses = candidates(lookup.scene, bool(mirrored), stars, in_frame, _FOLLOWED_UP)
    findings = []
    for pose in (tightened(pose, lookup, 2 * stars, 2 * in_frame) for pose in poses):
        if allowed(pose, lookup.scene):
            findings.append(_Finding(pose, weighed(pose, lookup, tried + 2 * placements)))
    return placements, min(findings, key=lambda finding: finding.evidence.false_alarms_log10, default=None)
