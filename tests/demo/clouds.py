"""Noise in the shapes of gas and dust.

All functions take a numpy Generator, so that a seed is a picture.
"""

from itertools import pairwise

import numpy as np
from scipy.fft import irfft2
from scipy.ndimage import gaussian_filter, map_coordinates

Array = np.ndarray
Random = np.random.Generator


def fractal(shape: tuple[int, int], slope: float, rng: Random, largest_px: float | None = None) -> Array:
    """Noise of mean 0 and deviation 1 whose amplitude falls as frequency to the minus ``slope``."""
    lines, columns = shape
    down, across = np.fft.fftfreq(lines)[:, None], np.fft.rfftfreq(columns)[None, :]
    frequency = np.hypot(down, across)
    floor = 1 / (largest_px or max(shape))
    amplitude = np.where(frequency > 0, np.maximum(frequency, floor) ** -slope, 0)
    amplitude = np.where(frequency < 0.5 * floor, 0, amplitude)
    phase = rng.random(amplitude.shape) * 2 * np.pi
    noise = irfft2(amplitude * rng.rayleigh(1, amplitude.shape) * np.exp(1j * phase), s=shape)
    return (noise - noise.mean()) / noise.std()


def warped(field: Array, rng: Random, reach_px: float, slope: float = 2.2, largest_px: float | None = None) -> Array:
    """The field dragged about by a smooth flow: straight noise becomes swirls."""
    line, column = np.indices(field.shape, dtype=float)
    for axis in (line, column):
        axis += reach_px * fractal(field.shape, slope, rng, largest_px)
    return map_coordinates(field, [line, column], order=1, mode="grid-wrap")


def ridges(field: Array, sharpness: float = 2.0) -> Array:
    """Bright where noise crosses zero: threads and sheets, 0..1."""
    return np.exp(-((np.abs(field) * sharpness) ** 1.2))


def threads(shape: tuple[int, int], rng: Random, size_px: float, octaves: int = 4, sharpness: float = 2.5) -> Array:
    """Ridges within ridges, 0..1."""
    total, weight, share = np.zeros(shape), 0.0, 1.0
    for octave in range(octaves):
        field = fractal(shape, 1.9, rng, size_px / 2**octave)
        layer = ridges(warped(field, rng, size_px / 2**octave * 0.12, largest_px=size_px / 2**octave), sharpness)
        total += share * layer * (0.35 + total / max(weight, 1.0))
        weight, share = weight + share, share * 0.62
    return total / total.max()


def step(field: Array, low: float, high: float) -> Array:
    """0 below ``low``, 1 above ``high``, smooth between."""
    t = np.clip((field - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def rims(dust: Array, source: tuple[float, float], softness_px: float) -> Array:
    """Where the face of a dust cloud looks at a star: the lit edges, >= 0."""
    smooth = gaussian_filter(dust, softness_px)
    down, across = np.gradient(smooth)
    line, column = np.indices(dust.shape, dtype=float)
    x, y = column - source[0], line - source[1]
    distance = np.hypot(x, y) + 1
    return np.maximum((across * x + down * y) / distance, 0)


def glow(shape: tuple[int, int], centre: tuple[float, float], radius_px: float, power: float = 1.0) -> Array:
    """A soft round light that falls to a half at ``radius_px``."""
    line, column = np.indices(shape, dtype=float)
    square = (column - centre[0]) ** 2 + (line - centre[1]) ** 2
    return (1 + square / radius_px**2) ** -power


def tint(brightness: Array, colour: tuple[float, float, float]) -> Array:
    """A grey layer as linear colour."""
    return brightness[..., None] * np.array(colour)


def lane(shape: tuple[int, int], points: list[tuple[float, float, float]], rng: Random, wander_px: float) -> Array:
    """A ragged band along (x, y, half-width) points: 1 on its spine, 0 far away."""
    line, column = np.indices(shape, dtype=float)
    column += wander_px * fractal(shape, 1.9, rng, 9 * wander_px)
    line += wander_px * fractal(shape, 1.9, rng, 9 * wander_px)
    nearest = np.full(shape, np.inf)
    for (x0, y0, w0), (x1, y1, w1) in pairwise(points):
        length = (x1 - x0) ** 2 + (y1 - y0) ** 2
        t = np.clip(((column - x0) * (x1 - x0) + (line - y0) * (y1 - y0)) / length, 0, 1)
        away = np.hypot(column - x0 - t * (x1 - x0), line - y0 - t * (y1 - y0))
        nearest = np.minimum(nearest, away / (w0 + t * (w1 - w0)))
    return np.exp(-(nearest**2))
