"""Size and shape of the stars over the field as a few physical terms, fitted to the zones by linear least squares.

Independent blurs add in their second moments, so the model is one of squared widths. With axes a, b (FWHM) at angle t those are
T = (a² + b²)/2 and S = (a² − b²)/2 · (cos 2t, sin 2t). A star's image is the seeing's disc widened by

* defocus z(u, v) = z0 + g·(u, v) + c·r²: focus error, tilt, curved field (or wrong corrector distance). Its blur is round and
  grows as z², hence T has the terms 1, u, v, u², uv, v²: linear ones where one side is worse, an isotropic square where all
  edges are worse, an anisotropic one where two opposite sides are (a tilt through focus);
* astigmatism and coma of a wrong corrector distance, which stretch stars along (+) or across (−) the radius as r²;
* a drift of the image during the exposure, the same everywhere: a constant S.

u, v are offsets from the frame's centre over half its DIAGONAL (r = 1 in the corners). Everything is in units of the zones'
median FWHM², covariances too. Moments add exactly; that FWHM² follows them is an approximation, good while the profile keeps its
kind. The choice of terms is ours, from the field dependence of the third-order aberrations (textbook optics; no single source).
"""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.stars.records import StarSurvey, Zone
from sitegen.stars.shapes import Floats

FEWEST_ZONES = 9  # of 15: under it six terms of size cannot be told apart
FLOORS = (0.006, 0.004)  # systematic error of a zone's FWHM (share) and of a shape component, added to the scatter


class FieldTerms(Struct, frozen=True):
    """`size`: of T in 1, u, v, u², uv, v²; `shape`: of S, two constants and radial·r². Covariances beside them.

    `reach`: half width and half height of the frame in units of half its diagonal.
    """

    size: Floats
    size_covariance: Floats
    shape: Floats
    shape_covariance: Floats
    reach: tuple[float, float]


def fit_field(survey: StarSurvey) -> FieldTerms | None:
    """The terms, None where too few zones were measured or where they lie so that the terms cannot be told apart."""
    zones = [zone for zone in survey.zones if zone.fwhm_px is not None]
    if len(zones) < FEWEST_ZONES:
        return None
    u, v, reach = places(survey, zones)
    moments = _moments(zones)
    size = _least_squares(size_design(u, v), moments.t, moments.t_error)
    shape = _least_squares(shape_design(u, v), np.append(moments.s1, moments.s2), np.tile(moments.s_error, 2))
    return None if size is None or shape is None else FieldTerms(*size, *shape, reach)


def places(survey: StarSurvey, zones: list[Zone]) -> tuple[Floats, Floats, tuple[float, float]]:
    """u and v of the zones' centres, and of the frame's own edge."""
    half = np.hypot(survey.width_px, survey.height_px) / 2
    u = np.array([zone.x - (survey.width_px - 1) / 2 for zone in zones]) / half
    v = np.array([zone.y - (survey.height_px - 1) / 2 for zone in zones]) / half
    return u, v, (survey.width_px / 2 / half, survey.height_px / 2 / half)


class _Moments(Struct, frozen=True):
    t: Floats
    t_error: Floats
    s1: Floats
    s2: Floats
    s_error: Floats


def _moments(zones: list[Zone]) -> _Moments:
    fwhm, elongation, stars, scatter, scatter_e = (
        np.array([getattr(zone, name) or 0.0 for zone in zones], float)
        for name in ("fwhm_px", "elongation", "stars", "scatter_px", "scatter_e")
    )
    angle = np.radians([zone.angle_deg or 0.0 for zone in zones])
    square = (fwhm / np.median(fwhm)) ** 2
    t, s = square * (elongation + 1 / elongation) / 2, square * (elongation - 1 / elongation) / 2
    of_median = 1.2533 / np.sqrt(stars)  # standard error of a median over that of the values, Gaussian
    share, e_error = np.hypot(of_median * scatter / fwhm, FLOORS[0]), np.hypot(of_median * scatter_e, FLOORS[1])
    return _Moments(t, 2 * t * share, s * np.cos(2 * angle), s * np.sin(2 * angle), 2 * square * e_error)


def size_design(u: Floats, v: Floats) -> Floats:
    return np.column_stack([np.ones_like(u), u, v, u * u, u * v, v * v])


def shape_design(u: Floats, v: Floats) -> Floats:
    """r²·(cos 2φ, sin 2φ) is (u² − v², 2uv)."""
    ones, none = np.ones_like(u), np.zeros_like(u)
    return np.column_stack([np.append(ones, none), np.append(none, ones), np.append(u * u - v * v, 2 * u * v)])


def _least_squares(design: Floats, values: Floats, errors: Floats) -> tuple[Floats, Floats] | None:
    """Solution and covariance, the latter widened where the zones scatter more than their errors say."""
    weighted, wanted = design / errors[:, None], values / errors
    normal: NDArray[np.float64] = weighted.T @ weighted
    if np.linalg.cond(normal) > 1e8:
        return None
    covariance = np.linalg.inv(normal)
    terms = covariance @ (weighted.T @ wanted)
    spread = ((weighted @ terms - wanted) ** 2).sum() / (len(values) - len(terms))
    return terms, covariance * max(1.0, spread)
