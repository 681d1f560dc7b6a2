"""A defocused star as a model: a disc with a soft edge, a round shadow inside it, unequal brightness, a flat sky.

    I = sky + bright(x, y) · edge(R - |r - disc|, w) · (1 - depth · edge(s - |r - shadow|, w'))

edge(d, w) = 1/(1 + exp(-d/w)); |r|² = (1 + q)·x² + 2·p·x·y + (1 - q)·y², disc and shadow made oval alike by astigmatism; bright
is a polynomial about the disc's middle, so that neither a lopsided brightness nor diffraction rings pull at the centres.
Both centres are free, which is the point. What does not follow (spider vanes, a star beside the disc) is found in the residual
and loses its weight. Levenberg-Marquardt, in units of the disc's radius and brightness.
"""

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray
from scipy import ndimage

from sitegen.stars.ring_pattern import EDGES, STRENGTH, TENT_PX, tents
from sitegen.stars.shapes import Floats

# Not scipy's least_squares: its MINPACK gives the same offsets to a thousandth of a pixel (42 random discs), and takes 0.3 to 0.5
# seconds a disc where the normal equations below take 0.2.

NAMES = (
    *("disc_x", "disc_y", "disc_r", "disc_w", "shadow_x", "shadow_y", "shadow_r", "shadow_w", "depth", "sky", "q", "p"),
    *("b_1", "b_u", "b_v", "b_uu", "b_uv", "b_vv", "b_urr", "b_vrr", "b_r4", "b_r6", "b_r8", "b_r10"),
)
DX, DY, DR, DW, SX, SY, SR, SW, DEPTH, SKY, Q, P, BRIGHT = range(13)
STEPS, ROUNDS = 40, 3  # damped steps in each round of weighing strays down
STRAY, STRAY_SHARE = 4.0, 0.05  # a residual of so many sigma plus so much of the disc's brightness has half the weight
VANE_DEPTH = 0.08  # of the brightness
SECTORS = 8  # of the disc, left out one after another
DONE = 1e-8  # of the radius: where the fit set out from, and how a processor sums, no longer shows


class RingFit(Struct, frozen=True):
    """`values` and `covariance` of the terms in NAMES, lengths in the patch's pixels; `brightness` of the lit ring (median) and
    `residual` (robust sigma of a pixel), counts. From the disc's middle to the shadow's, in pixels: `without` (sectors, 2), as
    the light outside each sector has it, and `with_rings` (2,), as it is once rings of light are allowed for."""

    values: Floats
    covariance: Floats
    brightness: float
    residual: float
    without: Floats
    with_rings: Floats


class Patch(Struct, frozen=True):
    """The square to be fitted, (h, w) counts over the sky; `used`: its pixels near the disc; `unit_px`, `unit_counts`: rough
    radius and brightness, which bring the terms to order one."""

    counts: Floats
    used: NDArray[np.bool_]
    unit_px: float
    unit_counts: float


def fit_ring(patch: Patch, first: Floats) -> RingFit:
    """Best terms from a first guess in the same order as NAMES (pixels, counts)."""
    units = _units(patch)
    pixels, terms, sigma = _fitted(patch, first / units)
    covariance = np.linalg.pinv(pixels.equations(terms)[0]) * sigma**2
    lit = undisturbed(pixels.x, pixels.y, terms)
    brightness = float(np.median(pixels.counts[lit])) if lit.any() else 0.0
    return RingFit(
        values=terms * units,
        covariance=covariance * np.outer(units, units),
        brightness=brightness * patch.unit_counts,
        residual=sigma * patch.unit_counts,
        without=_without_sectors(pixels, terms) * patch.unit_px,
        with_rings=_offset(_with_rings(pixels, terms, sigma, 1 / patch.unit_px)) * patch.unit_px,
    )


def _fitted(patch: Patch, terms: Floats) -> tuple["_Pixels", Floats, float]:
    """The pixels as weighted in the last round, the terms, and the robust sigma of a pixel."""
    rows, columns = (np.nonzero(patch.used)[axis] / patch.unit_px for axis in (0, 1))
    counts = patch.counts[patch.used] / patch.unit_counts
    pixels = _Pixels(columns, rows, counts, np.ones(len(rows)), np.zeros((0, len(rows))), 0.0)
    for _ in range(ROUNDS):
        terms = _converge(pixels, terms)
        left = pixels.counts - ring_model(columns, rows, terms)[0]
        sigma = max(1.4826 * float(np.median(np.abs(left))), 1e-9)
        trust = 1 / (1 + (left / (STRAY * sigma + STRAY_SHARE)) ** 2)
        pixels = replace(pixels, weights=trust * ~on_vanes(columns, rows, left, terms, 1 / patch.unit_px))
    return pixels, terms, sigma


def _offset(terms: Floats) -> Floats:
    """From the disc's middle to the shadow's."""
    return np.array([terms[SX] - terms[DX], terms[SY] - terms[DY]])


def _with_rings(pixels: "_Pixels", terms: Floats, sigma: float, pixel: float) -> Floats:
    """The terms once rings are allowed for, and behind them the rings' strengths."""
    rings = _rings(pixels.x, pixels.y, terms, pixel)
    return _converge(
        replace(pixels, rings=rings, prior=(sigma / STRENGTH) ** 2), np.concatenate([terms, np.zeros(len(rings))])
    )


def _rings(x: Floats, y: Floats, terms: Floats, pixel: float) -> Floats:
    """Rings of brightness 1 about the disc's middle, where no shadow falls, and about the shadow's, on the disc: (rings,
    pixels)."""
    from_disc = oval_distance(x - terms[DX], y - terms[DY], terms)
    from_shadow = oval_distance(x - terms[SX], y - terms[SY], terms)
    disc, lit = _edge(terms[DR] - from_disc, terms[DW]), 1 - _edge(terms[SR] - from_shadow, terms[SW])
    offset = np.hypot(terms[SX] - terms[DX], terms[SY] - terms[DY])
    inner, outer = max(0.0, terms[SR] - offset - EDGES * terms[SW]), terms[DR] + EDGES * terms[DW]
    about_disc = tents(from_disc, TENT_PX * pixel, inner, outer)
    about_shadow = tents(from_shadow, TENT_PX * pixel, max(0.0, terms[SR] - EDGES * terms[SW]), terms[DR] + offset)
    return np.concatenate([about_disc * lit, about_shadow * disc])


def _without_sectors(pixels: "_Pixels", terms: Floats) -> Floats:
    """From the disc's middle to the shadow's as the light outside each sector has it: (sectors, 2)."""
    turns = np.arctan2(pixels.y - terms[DY], pixels.x - terms[DX]) / (2 * np.pi)
    sectors = (turns % 1 * SECTORS).astype(int) % SECTORS
    others = (replace(pixels, weights=pixels.weights * (sectors != sector)) for sector in range(SECTORS))
    return np.array([_offset(_converge(other, terms)) for other in others])


def on_vanes(x: Floats, y: Floats, left: Floats, terms: Floats, pixel: float) -> NDArray[np.bool_]:
    """Pixels on straight dark rays, as the arms that hold a secondary mirror cast: over their whole length, edges included.

    The rays meet in the shadow's middle where the arms move with the mirror, in the disc's where they do not: the point whose
    rays are darkest is taken. `pixel`: a pixel's side in the unit of x and y.
    """
    best, darkest = np.zeros(len(x), bool), 0.0
    for share in (0.0, 0.5, 1.0):
        dx, dy = (place - terms[d] - share * (terms[s] - terms[d]) for place, d, s in ((x, DX, SX), (y, DY, SY)))
        angles, darkness = _dark_rays(dx, dy, left, undisturbed(x, y, terms), _directions(terms, pixel))
        if darkness > darkest:
            best, darkest = _along(dx, dy, angles, pixel + 2 * terms[DW]), darkness
    return best


def _along(dx: Floats, dy: Floats, angles: Floats, half_width: float) -> NDArray[np.bool_]:
    """Pixels on rays from the origin at these angles."""
    cos, sin = np.cos(angles)[:, None], np.sin(angles)[:, None]
    return np.asarray(((np.abs(cos * dy - sin * dx) < half_width) & (cos * dx + sin * dy > 0)).any(axis=0))


def undisturbed(x: Floats, y: Floats, terms: Floats) -> NDArray[np.bool_]:
    """The lit ring away from both edges, where a residual is no edge's doing."""
    from_shadow = oval_distance(x - terms[SX], y - terms[SY], terms)
    from_middle = oval_distance(x - terms[DX], y - terms[DY], terms)
    return np.asarray((from_shadow > 1.15 * terms[SR] + 2 * terms[SW]) & (from_middle < 0.92 * terms[DR] - 2 * terms[DW]))


def _directions(terms: Floats, pixel: float) -> int:
    """How many, for steps of about a pixel halfway between shadow and rim."""
    return int(max(24, np.rint(np.pi * (terms[DR] + terms[SR]) / pixel)))


def _dark_rays(dx: Floats, dy: Floats, left: Floats, clear: NDArray[np.bool_], bins: int) -> tuple[Floats, float]:
    """Directions (radians) whose median residual is dark, and how dark they are together; none if too many to be arms."""
    number = ((np.arctan2(dy[clear], dx[clear]) / (2 * np.pi)) % 1 * bins).astype(int) % bins
    medians = _medians(left[clear], number, bins)
    depth = -(np.roll(medians, 1) + medians + np.roll(medians, -1)) / 3
    dark = np.flatnonzero(depth > VANE_DEPTH)
    if len(dark) > bins / 3:
        return np.zeros(0), 0.0
    return (dark + 0.5) * 2 * np.pi / bins, float((depth[dark] ** 2).sum())


def _medians(values: Floats, number: NDArray[np.int_], bins: int) -> Floats:
    """Median of the values in each bin; 0 for an empty one."""
    if not len(values):
        return np.zeros(bins)
    medians: Floats = np.asarray(ndimage.median(values, number, np.arange(bins)), float)
    return np.where(np.isnan(medians), 0.0, medians)


def _units(patch: Patch) -> Floats:
    brightness = patch.unit_counts / patch.unit_px ** np.array([0, 1, 1, 2, 2, 2, 3, 3, 4, 6, 8, 10])
    return np.concatenate([[patch.unit_px] * 8, [1.0, patch.unit_counts, 1.0, 1.0], brightness])


def ring_model(x: Floats, y: Floats, terms: Floats) -> tuple[Floats, Floats]:
    """Values (pixels,) and derivatives (24, pixels)."""
    disc, d_disc, oval_disc = _soft_disc(x - terms[DX], y - terms[DY], terms[DR], terms[DW], terms)
    shadow, d_shadow, oval_shadow = _soft_disc(x - terms[SX], y - terms[SY], terms[SR], terms[SW], terms)
    powers, by_u, by_v = _brightness(x - terms[DX], y - terms[DY])
    bright, lit = terms[BRIGHT:] @ powers, 1 - terms[DEPTH] * shadow
    jacobian = np.empty((len(NAMES), len(x)))
    jacobian[DX:SX] = bright * lit * d_disc
    jacobian[DX] -= (terms[BRIGHT:] @ by_u) * disc * lit
    jacobian[DY] -= (terms[BRIGHT:] @ by_v) * disc * lit
    jacobian[SX:DEPTH] = -terms[DEPTH] * bright * disc * d_shadow
    jacobian[DEPTH], jacobian[SKY] = -bright * disc * shadow, 1
    jacobian[Q : P + 1] = bright * (lit * oval_disc - terms[DEPTH] * disc * oval_shadow)
    jacobian[BRIGHT:] = powers * disc * lit
    return terms[SKY] + bright * disc * lit, jacobian


def _brightness(u: Floats, v: Floats) -> tuple[Floats, Floats, Floats]:
    """The terms 1, u, v, u², uv, v², u·r², v·r², r⁴, r⁶, r⁸, r¹⁰ and their derivatives by u and by v, each (12, pixels)."""
    unit, none, square = np.ones_like(u), np.zeros_like(u), u * u + v * v
    r4, r6, r8 = square * square, square * square * square, (square * square) ** 2
    slopes = (4 * square, 6 * r4, 8 * r6, 10 * r8)
    powers = np.array([unit, u, v, u * u, u * v, v * v, u * square, v * square, r4, r6, r8, r8 * square])
    by_u = np.array([none, unit, none, 2 * u, v, none, square + 2 * u * u, 2 * u * v, *(slope * u for slope in slopes)])
    by_v = np.array([none, none, unit, none, u, 2 * v, 2 * u * v, square + 2 * v * v, *(slope * v for slope in slopes)])
    return powers, by_u, by_v


def oval_distance(u: Floats, v: Floats, terms: Floats) -> Floats:
    """|r| of the model; a little more than 0 in the middle."""
    return np.asarray(np.sqrt((1 + terms[Q]) * u * u + 2 * terms[P] * u * v + (1 - terms[Q]) * v * v + 1e-12))


def _soft_disc(u: Floats, v: Floats, radius: float, soft: float, terms: Floats) -> tuple[Floats, Floats, Floats]:
    """1 inside, 0 outside; its derivatives by centre x, centre y, radius, softness; those by q and p."""
    distance = oval_distance(u, v, terms)
    depth = ((radius - distance) / soft).clip(-40, 40)
    value = _edge(radius - distance, soft)
    slope = value * (1 - value) / soft
    across, up = (1 + terms[Q]) * u + terms[P] * v, (1 - terms[Q]) * v + terms[P] * u
    per_length = slope / distance
    own = np.array([per_length * across, per_length * up, slope, -slope * depth])
    return value, own, np.array([-per_length * (u * u - v * v) / 2, -per_length * u * v])


def _edge(inside: Floats, soft: float) -> Floats:
    """1 far inside of an edge, 0 far outside."""
    return np.asarray(1 / (1 + np.exp(-(inside / soft).clip(-40, 40))))


class _Pixels(Struct, frozen=True):
    """`rings` (rings, pixels) are what the terms behind those of NAMES count; `prior` holds these near nought."""

    x: Floats
    y: Floats
    counts: Floats
    weights: Floats
    rings: Floats
    prior: float

    def equations(self, terms: Floats) -> tuple[Floats, Floats, float]:
        """Normal matrix, gradient and sum of squares."""
        strengths = terms[len(NAMES) :]
        values, jacobian = ring_model(self.x, self.y, terms[: len(NAMES)])
        left = self.counts - values - strengths @ self.rings
        jacobian = np.concatenate([jacobian, self.rings])
        weighted = jacobian * self.weights
        held = np.concatenate([np.zeros(len(NAMES)), np.full(len(strengths), self.prior)])
        cost = (self.weights * left) @ left + self.prior * (strengths @ strengths)
        return weighted @ jacobian.T + np.diag(held), weighted @ left - held * terms, float(cost)


def _converge(pixels: _Pixels, terms: Floats) -> Floats:
    normal, gradient, cost = pixels.equations(terms)
    damping = 1e-3
    for _ in range(STEPS):
        scale = np.sqrt(np.diag(normal)) + 1e-12
        scaled = normal / np.outer(scale, scale) + (damping + 1e-10) * np.eye(len(terms))
        step = np.linalg.solve(scaled, gradient / scale) / scale
        new = pixels.equations(terms + step) if _sane(terms + step) else (normal, gradient, np.inf)
        if new[2] > cost:
            damping *= 10
            continue
        terms, damping = terms + step, damping / 10
        normal, gradient, cost = new
        if np.abs(step[DX:DEPTH]).max() < DONE:
            break
    return terms


def _sane(terms: Floats) -> bool:
    """A shadow inside a disc, edges neither razor-sharp nor wider than the disc; lengths in units of the rough radius."""
    inside = np.hypot(terms[SX] - terms[DX], terms[SY] - terms[DY]) + 0.5 * terms[SR] < terms[DR]
    soft = 1e-3 < terms[DW] < 0.5 and 1e-3 < terms[SW] < 0.5
    oval = np.hypot(terms[Q], terms[P]) < 0.5
    return bool(inside and soft and oval and 0.3 < terms[DR] < 3 and 0.02 < terms[SR] < terms[DR] and 0 < terms[DEPTH] < 3)
