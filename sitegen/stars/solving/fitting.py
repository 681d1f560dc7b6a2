"""From an accepted pose to the solution: all stars that match, and as much of the lens as they can vouch for."""

import numpy as np
from msgspec import Struct

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.accepting import accepted
from sitegen.stars.solving.distortion import Distortion, sorted_terms
from sitegen.stars.solving.evidence import Evidence
from sitegen.stars.solving.pose import Lookup, Pose
from sitegen.stars.solving.scene import Scene
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray

# Not astropy's fit_wcs_from_points, which iterates where a linear fit is exact: a cubic through 100 stars takes it 160 ms (0.6 ms
# here), and leaves 0.01 px of a lens that is a cubic. One picture needs up to 45 such fits.

_ORDERS = ((1, 10), (2, 30), (3, 50))
"""(polynomial order, stars at least) beyond shift, turn and scale."""

_WORTH_IT = 10.0
"""By how much the Bayesian information criterion has to fall (Kass & Raftery 1995, JASA 90, 773: very strong)."""

_GATHERED_WITHIN = 0.003
"""Of the diagonal: wide passes first, so that a fit to the middle reaches for the corners step by step. Only where so many
stars hold the fit that one met by chance cannot carry it away, and clipping will find it."""

_ENOUGH_TO_REACH_OUT = 20

_WIDE_PASSES = 3
_CLIP_RMS = 3.0
_LEAST_CLIP_PX = 1.0
_CLIPPED_PASSES = 12
_CLIP_DECIMALS = 3
_MOST_SHEAR = 0.02


class _Stars(Struct, frozen=True):
    """Matched stars: pixel offsets from the frame's middle, and places, arrays of one length."""

    u_px: FloatArray
    v_px: FloatArray
    ra_deg: FloatArray
    dec_deg: FloatArray

    def __len__(self) -> int:
        return len(self.u_px)


def solution_from(pose: Pose, evidence: Evidence, scene: Scene) -> Solution:
    """The pose as a solution, refined on every star it matches, with distortion where the stars demand it."""
    solution = _unrefined(pose, evidence, scene)
    wide = 1.5 * evidence.tolerance_px
    if evidence.matched >= _ENOUGH_TO_REACH_OUT:
        wide = max(wide, _GATHERED_WITHIN * scene.diagonal_px)
    for _ in range(_WIDE_PASSES):
        solution = _refined(solution, _matched(solution, scene, wide))
    return accepted(_clipped(solution, scene, wide))


def _clipped(solution: Solution, scene: Scene, wide_px: float) -> Solution:
    """Fitted to the stars near it, until a pass changes nothing that a solution tells: then it no longer matters from which of
    the many near placements the fit set out."""
    for _ in range(_CLIPPED_PASSES):
        before = accepted(solution)
        clip = round(_CLIP_RMS * (solution.rms_arcsec or 0.0) / solution.scale_arcsec_px, _CLIP_DECIMALS)
        solution = _refined(solution, _matched(solution, scene, min(max(_LEAST_CLIP_PX, clip), wide_px)))
        if accepted(solution) == before:
            break
    return solution


def _unrefined(pose: Pose, evidence: Evidence, scene: Scene) -> Solution:
    along_x = pose.to_plane
    along_y = pose.to_plane * (-1j if pose.mirrored else 1j)
    width, height = scene.frame
    cd = ((along_x.real, along_y.real), (along_x.imag, along_y.imag))
    return Solution(width, height, pose.ra_deg, pose.dec_deg, (width - 1) / 2, (height - 1) / 2, cd,
                    matched=evidence.matched, rms_arcsec=None, evidence=evidence)


def _matched(solution: Solution, scene: Scene, tolerance_px: float) -> _Stars:
    """Stars on which the solution lays a catalogue star, one to one."""
    lookup = Lookup(scene, mirrored=False)
    places = scene.catalogue
    x, y = solution.to_pixel(places.ra_deg, places.dec_deg)
    offset = (x - solution.centre_px[0]) + 1j * (y - solution.centre_px[1])
    width, height = scene.frame
    inside = np.flatnonzero((np.abs(offset.real) <= width / 2) & (np.abs(offset.imag) <= height / 2))
    near = lookup.beside(inside, offset[inside], max(solution.matched, 40, 3 * len(inside)))
    catalogue, star = near.matches(tolerance_px)
    positions = scene.stars[star]
    return _Stars(positions.real, positions.imag, places.ra_deg[catalogue], places.dec_deg[catalogue])


def _refined(solution: Solution, stars: _Stars) -> Solution:
    """The richest of the fits that the stars are worth."""
    best = _similar(solution, stars)
    for order, stars_at_least in _ORDERS:
        if len(stars) < stars_at_least:
            break
        richer = _polynomial(solution, stars, order)
        if _criterion(richer, stars) < _criterion(best, stars) - _WORTH_IT and not _sheared(richer):
            best = richer
    return best


def _sheared(solution: Solution) -> bool:
    """Whether the pixels came out as no camera makes them: not square."""
    longer, shorter = np.linalg.svd(np.array(solution.cd), compute_uv=False)
    return bool(longer / shorter > 1 + _MOST_SHEAR)


def _criterion(solution: Solution, stars: _Stars) -> float:
    """Bayesian information criterion of equal, unknown errors in both axes."""
    values = 2 * len(stars)
    return float(values * 2 * np.log(solution.rms_arcsec or 1e-9) + _parameters(solution) * np.log(values))


def _parameters(solution: Solution) -> int:
    (a, b), (c, d) = solution.cd
    if solution.distortion is not None:
        return 6 + len(solution.distortion.a) + len(solution.distortion.b)
    square = np.isclose(abs(a), abs(d), rtol=1e-9) and np.isclose(abs(b), abs(c), rtol=1e-9)
    return 4 if square else 6


def _similar(solution: Solution, stars: _Stars) -> Solution:
    """Shift, turn and scale by least squares; the parity stays."""
    for _ in range(2):
        xi, eta = _plane(solution, stars)
        plane, pixel = xi + 1j * eta, stars.u_px + 1j * stars.v_px * (-1 if solution.mirrored else 1)
        centred = pixel - pixel.mean()
        factor = complex(np.vdot(centred, plane - plane.mean()) / np.vdot(centred, centred).real)
        shift = complex(plane.mean() - factor * pixel.mean())
        down = factor * (-1j if solution.mirrored else 1j)
        cd = ((factor.real, down.real), (factor.imag, down.imag))
        solution = _moved(solution, (shift.real, shift.imag), cd, None)
    return _with_residuals(solution, stars)


def _polynomial(solution: Solution, stars: _Stars, order: int) -> Solution:
    """All terms u**p v**q up to the order by least squares: the linear ones are cd, the others SIP over cd."""
    powers = [(p, total - p) for total in range(order + 1) for p in range(total, -1, -1)]
    for _ in range(2):
        xi, eta = _plane(solution, stars)
        unit = float(np.max(np.abs([stars.u_px, stars.v_px])))
        design = np.column_stack([(stars.u_px / unit) ** p * (stars.v_px / unit) ** q for p, q in powers])
        weights = np.linalg.lstsq(design, np.column_stack([xi, eta]), rcond=None)[0]
        weights = weights / np.array([[unit ** (p + q)] for p, q in powers])
        linear = weights[1:3].T
        bent = np.linalg.solve(linear, weights[3:].T)
        cd = ((float(linear[0, 0]), float(linear[0, 1])), (float(linear[1, 0]), float(linear[1, 1])))
        solution = _moved(solution, (float(weights[0, 0]), float(weights[0, 1])), cd, _distortion(powers[3:], bent, stars))
    return _with_residuals(solution, stars)


def _distortion(powers: list[tuple[int, int]], bent: FloatArray, stars: _Stars) -> Distortion | None:
    if not powers:
        return None
    a, b = (sorted_terms({power: float(value) for power, value in zip(powers, row, strict=True)}) for row in bent)
    trusted = (float(stars.u_px.min()), float(stars.u_px.max()), float(stars.v_px.min()), float(stars.v_px.max()))
    return Distortion(a, b, trusted)


def _plane(solution: Solution, stars: _Stars) -> tuple[FloatArray, FloatArray]:
    return tangent_plane.to_plane(stars.ra_deg, stars.dec_deg, solution.reference_ra_deg, solution.reference_dec_deg)


def _moved(solution: Solution, shift_deg: tuple[float, float], cd: tuple[tuple[float, float], tuple[float, float]],
           distortion: Distortion | None) -> Solution:
    """With the plane touching where the fit put the frame's middle."""
    ra, dec = tangent_plane.to_sky(*shift_deg, solution.reference_ra_deg, solution.reference_dec_deg)
    return Solution(solution.width_px, solution.height_px, float(ra), float(dec), *solution.centre_px, cd, distortion,
                    solution.matched, solution.rms_arcsec, solution.evidence)


def _with_residuals(solution: Solution, stars: _Stars) -> Solution:
    ra, dec = solution.to_sky(stars.u_px + solution.centre_px[0], stars.v_px + solution.centre_px[1])
    apart = separation_deg(ra, dec, stars.ra_deg, stars.dec_deg)
    rms = 3600 * float(np.sqrt(np.mean(np.square(apart))))
    return Solution(solution.width_px, solution.height_px, solution.reference_ra_deg, solution.reference_dec_deg,
                    *solution.centre_px, solution.cd, solution.distortion, len(stars), rms, solution.evidence)
