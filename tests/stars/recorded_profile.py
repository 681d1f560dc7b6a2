"""What a star's profile measures once pixels have recorded it: worked out on a fine grid, without the code that is judged.

The optical profile is averaged over a square of one pixel about each point (a convolution with the pixel); what stands above half
of its top is an area, whose size is that of a circle of the FWHM, and whose second moments are those of an ellipse of the
elongation.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np
from scipy import ndimage

FINE = 40  # points along a pixel: the area is then good to 0.1 %


@dataclass
class Recorded:
    fwhm: float
    elongation: float


@cache
def recorded(fwhm, elongation=1.0, angle_deg=0.0, beta=4.0):
    """Of a Moffat star with these before the pixels; FWHM = sqrt(major × minor), px."""
    reach = int(np.ceil(2 * fwhm * np.sqrt(elongation) + 1)) * FINE
    along = np.arange(-reach, reach + 1) / FINE
    light = moffat(along, along[:, None], fwhm, elongation, np.radians(angle_deg), beta)
    pixel = np.ones(FINE + 1)
    pixel[[0, -1]] = 0.5
    for axis in (0, 1):
        light = ndimage.convolve1d(light, pixel / FINE, axis=axis)
    rows, columns = np.nonzero(light > light.max() / 2)
    minor, major = np.linalg.eigvalsh(np.cov(along[columns], along[rows]))
    return Recorded(float(2 * np.sqrt(len(rows) / np.pi) / FINE), float(np.sqrt(major / minor)))


def moffat(dx, dy, fwhm, elongation, angle, beta):
    """Of peak 1 (Moffat 1969, A&A 3, 455); fwhm = sqrt(major × minor), the angle in radians from +x to +y."""
    along, across = dx * np.cos(angle) + dy * np.sin(angle), dy * np.cos(angle) - dx * np.sin(angle)
    squares = along**2 / elongation + across**2 * elongation
    return (1 + (2 ** (1 / beta) - 1) * squares * (2 / fwhm) ** 2) ** -beta


def pixels_of(size, x, y, fwhm, elongation=1.0, angle_deg=0.0, beta=4.0, fine=16):
    """A cut-out of `size` pixels a side, each the mean of fine × fine points, of a star at x, y from its middle; peak 1."""
    along = (np.arange(size * fine) + 0.5) / fine - 0.5 - size // 2
    light = moffat(along - x, along[:, None] - y, fwhm, elongation, np.radians(angle_deg), beta)
    return light.reshape(size, fine, size, fine).mean(axis=(1, 3))


def narrow_frame(fwhm, elongation, angle_deg, beta, seed=1, stars=300, width=900, height=600):
    """Stars over a flat sky of 500 counts with noise, in 16 bits, recorded by pixels."""
    rng = np.random.default_rng(seed)
    light = np.full((height, width), 500.0)
    reach = int(np.ceil(5 * fwhm)) + 2
    for x, y, bright in rng.uniform((reach + 1, reach + 1, 0), (width - reach - 2, height - reach - 2, 1), (stars, 3)):
        column, row = round(x), round(y)
        drawn = pixels_of(2 * reach + 1, x - column, y - row, fwhm, elongation, angle_deg, beta)
        light[row - reach : row + reach + 1, column - reach : column + reach + 1] += 600 * 50**bright * drawn
    light += rng.normal(0, 1, light.shape) * np.sqrt(64 + (light - 500) / 1.5)
    return np.clip(np.rint(light), 0, 65_535).astype(np.uint16)
