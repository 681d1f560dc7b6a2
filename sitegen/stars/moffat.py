"""A Moffat profile fitted to many cut-outs at once: Levenberg-Marquardt, one step for all stars together.

Moffat (1969, A&A 3, 455): I = sky + peak · (1 + k·q)^(-beta), q = wxx·dx² + 2·wxy·dx·dy + wyy·dy². With k = 2^(1/beta) - 1 the
ellipse q = 1 is the half-maximum contour, so that size and beta hardly pull at each other. What is fitted is t = 1/beta; t → 0 is
a Gaussian.
Second moments, the usual short cut, overstate the FWHM of such a profile by a fifth to two fifths and depend on the threshold.

The profile is taken at pixel centres: the FWHM found is that of the star as recorded, its pixel included.
"""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.stars.shapes import Floats, axes_of, vector_of

# Not scipy's least_squares, which fits one star after another: 128 of them take it 0.43 s, and 2.3 s with weights for strays;
# here they take 0.11 s.

PEAK, SKY, X, Y, WXX, WXY, WYY, T = range(8)
STEEPEST, WIDEST = 0.03, 0.75  # bounds of t = 1/beta
STEPS = (5, 5)  # with all pixels alike, then with strays (neighbours, hot pixels) weighted down
LEAST_GAIN = 1e-9  # of a star's sum of squares: what gains less is decided by how a processor sums
STARS_AT_ONCE = 128  # their derivatives, in double precision, fill no more memory than 150 MB


class MoffatFits(Struct, frozen=True):
    """One value a star, each of shape (n,). x, y relative to the cut-out's middle; fwhm_px = sqrt(major × minor)."""

    x: Floats
    y: Floats
    peak: Floats
    beta: Floats
    fwhm_px: Floats
    e1: Floats
    e2: Floats
    residual: Floats  # rms of what the profile leaves, as a share of the peak


def fit_moffats(cutouts: NDArray[np.float32], weights: NDArray[np.float32], noise: float, first_fwhm: Floats) -> MoffatFits:
    """Fit every cut-out (n, h, w) with its weights (n, h, w; 0 leaves a pixel out). `noise`: 1 sigma of a pixel.

    In double precision: in single, the last figures that are published would be those of one processor alone.
    """
    starts = range(0, max(len(cutouts), 1), STARS_AT_ONCE)
    chunks = [slice(start, start + STARS_AT_ONCE) for start in starts]
    parts = [_fitted(cutouts[chunk], weights[chunk], first_fwhm[chunk], noise) for chunk in chunks]
    return MoffatFits(*(np.concatenate([getattr(part, name) for part in parts]) for name in MoffatFits.__struct_fields__))


def _fitted(cutouts: NDArray[np.float32], weights: NDArray[np.float32], first_fwhm: Floats, noise: float) -> MoffatFits:
    count, height, width = cutouts.shape
    dx, dy = np.meshgrid(np.arange(width, dtype=np.float64) - width // 2, np.arange(height, dtype=np.float64) - height // 2)
    data, trusted = (values.reshape(count, -1).astype(np.float64) for values in (cutouts, weights))
    frame = _Frame(data, trusted, dx.ravel(), dy.ravel())
    p = _converge(frame, _first_guess(frame, first_fwhm), STEPS[0])
    frame = _Frame(frame.data, frame.weights * _trust(frame, p, noise), frame.dx, frame.dy)
    p = _converge(frame, p, STEPS[1])
    return _read(frame, p)


class _Frame(Struct, frozen=True):
    data: Floats  # (n, pixels)
    weights: Floats  # (n, pixels)
    dx: Floats  # (pixels,)
    dy: Floats  # (pixels,)

    def of(self, stars: NDArray[np.intp]) -> "_Frame":
        return _Frame(self.data[stars], self.weights[stars], self.dx, self.dy)


def _first_guess(frame: _Frame, fwhm: Floats) -> Floats:
    p = np.zeros((len(frame.data), 8))
    used = np.where(frame.weights > 0, frame.data, -np.inf)
    p[:, PEAK] = used[:, np.hypot(frame.dx, frame.dy) < 2].max(axis=1)
    p[:, WXX] = p[:, WYY] = (2 / fwhm) ** 2
    p[:, T] = 0.3
    return p


def _model(frame: _Frame, p: Floats) -> tuple[Floats, Floats]:
    """Values (n, pixels) and derivatives (n, 8, pixels)."""
    peak, sky, x, y, wxx, wxy, wyy, t = (p[:, [i]] for i in range(8))
    dx, dy = frame.dx - x, frame.dy - y
    power = np.exp2(t)
    k = power - 1
    qx, qy = wxx * dx + wxy * dy, wxy * dx + wyy * dy
    q = qx * dx + qy * dy
    base = 1 + k * q
    log = np.log(base)
    shape = np.exp(-log / t)
    slope = -(peak * k / t) * shape / base  # d I / d q
    jacobian = np.empty((len(p), 8, frame.dx.size))
    jacobian[:, PEAK], jacobian[:, SKY] = shape, 1
    jacobian[:, X], jacobian[:, Y] = -2 * slope * qx, -2 * slope * qy
    jacobian[:, WXX], jacobian[:, WXY], jacobian[:, WYY] = slope * dx * dx, 2 * slope * dx * dy, slope * dy * dy
    jacobian[:, T] = peak * shape * log / t**2 + slope * q * (power * np.log(2) / k)
    return sky + peak * shape, jacobian


def _normal_equations(frame: _Frame, p: Floats) -> tuple[Floats, Floats, Floats]:
    values, jacobian = _model(frame, p)
    left = frame.data - values
    weighted = jacobian * frame.weights[:, None, :]
    gradient: Floats = np.asarray(weighted @ left[:, :, None])[:, :, 0]
    cost: Floats = (frame.weights * left**2).sum(axis=1)
    return np.asarray(weighted @ jacobian.transpose(0, 2, 1)), gradient, cost


def _converge(frame: _Frame, p: Floats, steps: int) -> Floats:
    """At most `steps` damped Gauss-Newton steps, each star keeping a step only where it lowers its own sum of squares."""
    damping = np.full(len(p), 1e-2)
    normal, gradient, cost = _normal_equations(frame, p)
    for _ in range(steps):
        trial = p + _step(normal, gradient, damping)
        trial[:, T] = trial[:, T].clip(STEEPEST, WIDEST)
        sane = _sane(frame, trial)
        trial[~sane] = p[~sane]
        new = _normal_equations(frame, trial)
        better = sane & (new[2] < cost * (1 - LEAST_GAIN))
        p = np.where(better[:, None], trial, p)
        normal[better], gradient[better], cost[better] = new[0][better], new[1][better], new[2][better]
        damping = np.where(better, damping / 8, damping * 8).clip(1e-7, 1e6)
    return p


def _step(normal: Floats, gradient: Floats, damping: Floats) -> Floats:
    scale = np.sqrt(np.maximum(np.einsum("nii->ni", normal), 1e-20))
    scaled = normal / (scale[:, :, None] * scale[:, None, :])
    scaled += (damping[:, None, None] + 1e-9) * np.eye(8)
    return np.asarray(np.linalg.solve(scaled, (gradient / scale)[:, :, None])[:, :, 0] / scale)


def _sane(frame: _Frame, p: Floats) -> NDArray[np.bool_]:
    reach = frame.dx.max()
    inside = (np.abs(p[:, X]) < reach / 2) & (np.abs(p[:, Y]) < reach / 2)
    size = p[:, WXX] * p[:, WYY] - p[:, WXY] ** 2  # > 0 only for an ellipse; (2 / fwhm)^4
    ellipse = (p[:, WXX] > 0) & (p[:, WYY] > 0) & (size > (1 / reach) ** 4) & (size < 2.0**8)
    return np.asarray(inside & ellipse & (p[:, PEAK] > 0))


def _trust(frame: _Frame, p: Floats, noise: float) -> Floats:
    """Cauchy-like weights: near 1 for a residual explained by noise or by a profile that is not quite a Moffat."""
    values, _ = _model(frame, p)
    expected = noise**2 + (0.05 * (values - p[:, [SKY]])) ** 2
    return (1 / (1 + ((frame.data - values) ** 2 / (16 * expected)) ** 2))


def _read(frame: _Frame, p: Floats) -> MoffatFits:
    a, b, angle = axes_of(p[:, WXX], p[:, WXY], p[:, WYY])
    e1, e2 = vector_of(a, b, angle)
    values, _ = _model(frame, p)
    mean_square = (frame.weights * (frame.data - values) ** 2).sum(axis=1) / frame.weights.sum(axis=1)
    return MoffatFits(p[:, X], p[:, Y], p[:, PEAK], 1 / p[:, T], 2 * np.sqrt(a * b), e1, e2, np.sqrt(mean_square) / p[:, PEAK])
