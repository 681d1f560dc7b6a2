"""A solution while it is fitted: its lens about an optical axis, and what the stars leave open of it."""

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.distortion import Distortion, sorted_terms
from sitegen.stars.solving.lens import LensFit, Term, fit_lens, polynomial, terms_of, uncertainty
from sitegen.stars.solving.matched_stars import MatchedStars
from sitegen.stars.solving.placements import ComplexArray
from sitegen.stars.solving.scene import Scene, as_seen
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray

USUAL_NOISE_PX = 0.2
_LINEAR_PASSES = 2
_AXIS_STEPS = 12
_AXIS_STEP = 0.02
_AXIS_ENOUGH = 1e-7
_LARGEST_AXIS_STEP = 0.2
_AXIS_LIKELY = 0.2
"""Of half the diagonal: how far from the middle a crop puts the axis, one standard deviation (common practice, no source)."""


class Camera(Struct, frozen=True):
    """solution: its reference pixel is the axis; half_px: half the frame's diagonal; noise: of a star along one axis, as a share
    of it; fit: the last one, None before any."""

    solution: Solution
    half_px: float
    diagonal_deg: float
    terms: list[Term]
    noise: float
    fit: LensFit | None = None

    @classmethod
    def of(cls, solution: Solution, scene: Scene) -> "Camera":
        """Before any fit, the axis in the middle."""
        half_px = scene.diagonal_px / 2
        diagonal_deg = 2 * half_px * solution.scale_arcsec_px / 3600
        return cls(solution, half_px, diagonal_deg, terms_of(diagonal_deg), USUAL_NOISE_PX / half_px)

    @property
    def axis_px(self) -> complex:
        """Offset of the axis from the frame's middle."""
        middle = self.solution.centre_px
        return complex(self.solution.reference_x_px - middle[0], self.solution.reference_y_px - middle[1])

    def places(self, u_px: FloatArray, v_px: FloatArray) -> ComplexArray:
        """Offsets from the frame's middle as the lens has them: about the axis, as seen unmirrored, over half the diagonal."""
        return as_seen(u_px + 1j * v_px - self.axis_px, self.solution.mirrored) / self.half_px

    def corner_deviation(self, share: float = 1.0) -> float:
        """The largest standard deviation of a corner's place, a share of half the diagonal; infinite before any fit. share: the
        corners are those of so large a part of the frame, about its middle."""
        if self.fit is None:
            return float("inf")
        across, down = share * self.solution.width_px / 2, share * self.solution.height_px / 2
        corners = self.places(np.array([-across, across, -across, across]), np.array([-down, -down, down, down]))
        return float(uncertainty(self.fit, self.terms, corners).max())


def at_axis(camera: Camera, axis_px: complex) -> Camera:
    """The same camera with its axis at another offset from the middle; its lens is to be fitted anew."""
    solution = camera.solution
    x, y = solution.centre_px[0] + axis_px.real, solution.centre_px[1] + axis_px.imag
    ra, dec = solution.to_sky(x, y)
    moved = replace(solution, reference_ra_deg=float(ra), reference_dec_deg=float(dec), reference_x_px=x, reference_y_px=y)
    return replace(camera, solution=moved)


def fitted(camera: Camera, stars: MatchedStars) -> Camera:
    """Shift, turn, scale and the lens's terms by least squares; the axis and the parity stay."""
    for _ in range(_LINEAR_PASSES):
        solution = camera.solution
        xi, eta = tangent_plane.to_plane(stars.ra_deg, stars.dec_deg, solution.reference_ra_deg, solution.reference_dec_deg)
        unit = complex(solution.cd[0][0], solution.cd[1][0]) * camera.half_px
        places = camera.places(stars.u_px, stars.v_px)
        fit = fit_lens(places, (xi + 1j * eta) / unit, camera.terms, camera.noise, USUAL_NOISE_PX / camera.half_px)
        camera = replace(camera, solution=_with_lens(camera, fit, unit), fit=fit, noise=fit.noise)
    return replace(camera, solution=_with_residuals(camera.solution, stars))


def likeliest_axis(camera: Camera, stars: MatchedStars) -> Camera:
    """Fitted, with the axis where the stars are explained best (Gauss and Newton's steps, derivatives by differences)."""
    best = fitted(camera, stars)
    for _ in range(_AXIS_STEPS):
        slopes = np.column_stack([_slope(best, stars, along) for along in (1, 1j)])
        move = complex(*np.linalg.lstsq(slopes, -_left(best), rcond=None)[0])
        move *= min(1.0, _LARGEST_AXIS_STEP / max(abs(move), 1e-12))
        tried = fitted(at_axis(best, best.axis_px + move * best.half_px), stars)
        if not np.linalg.norm(_left(tried)) < np.linalg.norm(_left(best)):
            break
        best = tried
        if abs(move) < _AXIS_ENOUGH:
            break
    return best


def _slope(camera: Camera, stars: MatchedStars, along: complex) -> FloatArray:
    """What the fit leaves, by the axis's place along one direction."""
    step = _AXIS_STEP * along * camera.half_px
    ahead, behind = (_left(fitted(at_axis(camera, camera.axis_px + way * step), stars)) for way in (1, -1))
    return np.asarray((ahead - behind) / (2 * _AXIS_STEP))


def _left(camera: Camera) -> FloatArray:
    """What the fit leaves, the prior of the axis included."""
    assert camera.fit is not None
    axis = camera.axis_px / camera.half_px * USUAL_NOISE_PX / camera.half_px / _AXIS_LIKELY
    return np.append(camera.fit.residuals, [axis.real, axis.imag])


def _with_lens(camera: Camera, fit: LensFit, unit: complex) -> Solution:
    """The fit as tangent plane, matrix and SIP terms (distortion.py)."""
    solution, half_px = camera.solution, camera.half_px
    down = -1 if solution.mirrored else 1
    by_power = {(p, q): value / fit.a * down**q / half_px ** (p + q)
                for (p, q), value in polynomial(camera.terms, fit.coefficients).items()}
    along = unit * fit.a
    linear = [along * (1 / half_px + by_power.pop((1, 0), 0j)), along * (1j * down / half_px + by_power.pop((0, 1), 0j))]
    matrix = np.array([[part.real for part in linear], [part.imag for part in linear]])
    bent = {power: np.linalg.solve(matrix, [(along * value).real, (along * value).imag]) for power, value in by_power.items()}
    shift = unit * fit.shift
    ra, dec = tangent_plane.to_sky(shift.real, shift.imag, solution.reference_ra_deg, solution.reference_dec_deg)
    return replace(solution, reference_ra_deg=float(ra), reference_dec_deg=float(dec),
                   cd=((float(matrix[0, 0]), float(matrix[0, 1])), (float(matrix[1, 0]), float(matrix[1, 1]))),
                   distortion=_distortion(solution, bent))


def _distortion(solution: Solution, bent: dict[tuple[int, int], FloatArray]) -> Distortion | None:
    """Trusted over the whole frame: what the prior says, it says of all of it."""
    if not bent:
        return None
    a, b = (sorted_terms({power: float(value[axis]) for power, value in bent.items()}) for axis in (0, 1))
    left, top = -0.5 - solution.reference_x_px, -0.5 - solution.reference_y_px
    return Distortion(a, b, (left, left + solution.width_px, top, top + solution.height_px))


def _with_residuals(solution: Solution, stars: MatchedStars) -> Solution:
    ra, dec = solution.to_sky(stars.u_px + solution.centre_px[0], stars.v_px + solution.centre_px[1])
    apart = separation_deg(ra, dec, stars.ra_deg, stars.dec_deg)
    return replace(solution, matched=len(stars), rms_arcsec=3600 * float(np.sqrt(np.mean(np.square(apart)))))
