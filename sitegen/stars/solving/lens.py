"""What a lens does to a picture, as a sum of terms whose likely sizes are known beforehand, fitted to stars.

The straight place of pixel p (complex offset from the optical axis over half the diagonal, mirroring undone) is
p + sum of c * p**m * conj(p)**n, and lies at a * straight + shift on the plane that touches the sky at the axis. Each c has a
normal distribution about 0 before any star is looked at; shift and a have none. So few stars fix a place and a scale, many fix
the lens, and what they leave open stands in the covariance (linear regression with a Gaussian prior: Bishop 2006, "Pattern
Recognition and Machine Learning", section 3.3). Any zenithal projection (gnomonic, stereographic, equidistant, equal-area:
Calabretta & Greisen 2002, section 5.1) is such a sum in odd powers of the radius.
"""

from math import comb

import numpy as np
import numpy.typing as npt
from msgspec import Struct

from sitegen.stars.solving.placements import ComplexArray
from sitegen.stars.solving.tangent_plane import FloatArray

_RADIAL, _LARGEST_RADIAL, _HIGHER_RADIAL = 1.8e-3, 0.25, 1.5
_OTHERS = {(0, 1): 2.5e-4, (1, 1): 8e-4, (2, 0): 4e-4, (0, 2): 1.5e-4, (3, 0): 1e-4, (1, 2): 1e-4, (0, 3): 1e-4}
"""Standard deviations at the corner, as shares of half the diagonal, of a picture up to 5 degrees: a telescope's or long lens's
0.2 % of radial distortion, its axis out of the middle by a fifth of the frame (which makes the squares), a picture resized to
whole pixels. Common practice, no source."""

_ANY_LENS = {(0, 1): (2, 0.05), (1, 1): (2, 0.3), (2, 0): (2, 0.3), (0, 2): (2, 0.03), (2, 1): (2, 0.35), (3, 0): (4, 0.1),
             (1, 2): (4, 0.1), (0, 3): (4, 0.03), (2, 2): (4, 0.1), (3, 1): (4, 0.1), (4, 0): (4, 0.1), (3, 2): (4, 0.15)}
"""(power, factor) of half the diagonal in radians: how large the term becomes between any two zenithal projections, or with the
axis a third of half the diagonal out of the middle (worked by hand from their series)."""

_LEAST_LENS = 0.002

_NARROW_DEG = 5.0
_FISHEYE_FROM = 0.02
_USUAL_NOISE_PX, _USUAL_NOISE_COUNTS = 0.2, 2.0
"""What a star's place is good to, and how many stars that is worth until there are more."""

_LEAST_DEGREES = 4.0
"""Of freedom; the noise comes from the same stars, so that the covariance is that of Student's distribution."""


class Term(Struct, frozen=True):
    """factor * p**m * conj(p)**n, and the standard deviation of its real coefficient."""

    m: int
    n: int
    factor: complex
    likely: float

    def at(self, p: ComplexArray) -> ComplexArray:
        """Its value where the coefficient is 1."""
        return np.asarray(self.factor * p**self.m * np.conj(p) ** self.n)

    def powers(self) -> list[tuple[int, int, complex]]:
        """The same as a sum of (power of x, power of y, coefficient), p being x + iy."""
        return [(self.m + self.n - down, down, self.factor * sum(
            comb(self.m, k) * comb(self.n, down - k) * 1j**k * (-1j) ** (down - k)
            for k in range(max(0, down - self.n), min(self.m, down) + 1))) for down in range(self.m + self.n + 1)]


def terms_of(diagonal_deg: float, radial_only: bool = False) -> list[Term]:
    """The terms of a picture so wide. A lens of a wide field bends more: the third power of the radius in proportion to the
    square of the width, as gnomonic and fisheye lenses differ."""
    wider = max(1.0, diagonal_deg / _NARROW_DEG)
    third = min(_RADIAL * wider**2, _LARGEST_RADIAL)
    radial = [Term(2, 1, 1, third), Term(3, 2, 1, _HIGHER_RADIAL * max(third, 0.01) ** 2)]
    if third > _FISHEYE_FROM:
        radial += [Term(k + 1, k, 1, _HIGHER_RADIAL * third**k) for k in (3, 4)]
    if radial_only:
        return radial
    others = [Term(m, n, factor, likely * wider) for (m, n), likely in _OTHERS.items() for factor in (1, 1j)]
    return [*radial, *others]


def terms_of_any_lens(diagonal_deg: float) -> list[Term]:
    """Terms for a part of a wide picture whose lens is not known yet: a tangent plane about another place than the axis makes
    even powers as well."""
    half = np.radians(diagonal_deg / 2)
    return [Term(m, n, factor, max(float(share * half**power), _LEAST_LENS)) for (m, n), (power, share) in _ANY_LENS.items()
            for factor in (1, 1j)]


class LensFit(Struct, frozen=True):
    """a and shift of the module's sum, relative to what the fit began with, the coefficients of its terms, their covariance
    (real and imaginary part of a, of shift, coefficients), the noise of a star's place along one axis as a share of half the
    diagonal, and what is left of the stars and of the prior."""

    a: complex
    shift: complex
    coefficients: FloatArray
    covariance: FloatArray
    noise: float
    residuals: FloatArray


def fit_lens(p: ComplexArray, straight: ComplexArray, terms: list[Term], noise: float, usual_noise: float) -> LensFit:
    """The most likely terms; noise as found before, with which the prior is weighed against the stars."""
    design = _design(p, terms)
    prior = np.zeros((len(terms), design.shape[1]))
    prior[:, 4:] = np.diag([noise / term.likely for term in terms])
    target = np.concatenate([straight.real, straight.imag])
    whole, wanted = np.vstack([design, prior]), np.concatenate([target, np.zeros(len(terms))])
    # by normal equations: the prior keeps them sound, and of tall matrices numpy's qr waits for threads on a busy machine
    inverse = np.linalg.inv(whole.T @ whole)
    solved = inverse @ (whole.T @ wanted)
    left = wanted - whole @ solved
    stars = left[: len(target)]
    free = max(len(target) - float(np.sum((design @ inverse) * design)), 0.0)
    degrees = free + _USUAL_NOISE_COUNTS
    variance = (float(stars @ stars) + _USUAL_NOISE_COUNTS * usual_noise**2) / degrees
    wider = degrees / (degrees - 2) if degrees > _LEAST_DEGREES else _LEAST_DEGREES / (_LEAST_DEGREES - 2)
    return LensFit(complex(solved[0], solved[1]), complex(solved[2], solved[3]), solved[4:], inverse * variance * wider,
                   float(np.sqrt(variance)), left)


def _design(p: ComplexArray, terms: list[Term]) -> FloatArray:
    ones = np.ones(len(p))
    columns = np.array([p, 1j * p, ones, 1j * ones, *(term.at(p) for term in terms)])
    return np.concatenate([columns.real, columns.imag], axis=1).T


def uncertainty(fit: LensFit, terms: list[Term], p: ComplexArray) -> FloatArray:
    """Standard deviation of the straight places of p, both axes together, as a share of half the diagonal."""
    design = _design(p, terms)
    variance = np.sum((design @ fit.covariance) * design, axis=1)
    return np.asarray(np.sqrt(variance[: len(p)] + variance[len(p):]))


def polynomial(terms: list[Term], coefficients: npt.ArrayLike) -> dict[tuple[int, int], complex]:
    """The sum of the terms by powers of x and y."""
    total: dict[tuple[int, int], complex] = {}
    for term, coefficient in zip(terms, np.asarray(coefficients, dtype=np.float64), strict=True):
        for across, down, factor in term.powers():
            total[across, down] = total.get((across, down), 0j) + float(coefficient) * factor
    return total
