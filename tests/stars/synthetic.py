"""Frames with known truth: Moffat stars whose size and shape vary over the field, with everything that spoils a sub."""

from dataclasses import dataclass

import numpy as np


@dataclass
class Sky:
    """What to draw. FWHM = fwhm · (1 + tilt · along + curvature · r²), along in [-1, 1] across the frame, r = 1 at the corners.
    Shape vector = same-way + radial · r² outward. Everything else is nuisance."""

    width: int = 1200
    height: int = 800
    stars: int = 600
    fwhm: float = 3.5
    beta: float = 3.5
    tilt: float = 0.0
    tilt_deg: float = 0.0
    curvature: float = 0.0
    elongation: float = 1.0
    angle_deg: float = 0.0
    radial: float = 0.0
    noise: float = 10.0
    brightest: float = 30_000.0
    faintest: float = 300.0
    gain: float = 1.5
    vignetting: float = 0.25
    hot: int = 300
    level: float = 1000.0
    seed: int = 1
    bayer: str | None = None
    averaged: bool = False
    """Whether each pixel holds the mean of the light over its square, as a sensor's does, or what stands at its middle."""


@dataclass
class Truth:
    x: np.ndarray
    y: np.ndarray
    peak: np.ndarray
    fwhm: np.ndarray
    e1: np.ndarray
    e2: np.ndarray


def truth_of(sky, rng):
    x, y = rng.uniform(0, sky.width - 1, sky.stars), rng.uniform(0, sky.height - 1, sky.stars)
    peak = sky.faintest * (sky.brightest / sky.faintest) ** (rng.uniform(0, 1, sky.stars) ** 1.7)
    return Truth(x, y, peak, *shapes_at(sky, x, y))


def shapes_at(sky, x, y):
    """True FWHM and shape vector at places of the frame."""
    dx, dy = x - sky.width / 2, y - sky.height / 2
    radius2 = (dx**2 + dy**2) / ((sky.width**2 + sky.height**2) / 4)
    cos, sin = np.cos(np.radians(sky.tilt_deg)), np.sin(np.radians(sky.tilt_deg))
    along = (dx * cos + dy * sin) / (abs(cos) * sky.width / 2 + abs(sin) * sky.height / 2)
    fwhm = sky.fwhm * (1 + sky.tilt * along + sky.curvature * radius2)
    outward = np.arctan2(dy, dx)
    size, angle = (sky.elongation - 1) / (sky.elongation + 1), np.radians(sky.angle_deg)
    e1 = size * np.cos(2 * angle) + sky.radial * radius2 * np.cos(2 * outward)
    e2 = size * np.sin(2 * angle) + sky.radial * radius2 * np.sin(2 * outward)
    return fwhm, e1, e2


CENTRE = ((0.0, 0.0, 1.0),)
SQUARE = tuple(
    (across / 2, up / 2, weight * other / 4)
    for across, weight in zip(*np.polynomial.legendre.leggauss(3), strict=True)
    for up, other in zip(*np.polynomial.legendre.leggauss(3), strict=True)
)


def stamp(frame, x, y, peak, fwhm, e1, e2, beta, over=CENTRE):
    """Add one Moffat star, its profile taken at pixel centres or averaged over pixels; fwhm = sqrt(major × minor)."""
    for across, up, weight in over:
        _add(frame, x - across, y - up, weight * peak, fwhm, e1, e2, beta)


def _add(frame, x, y, peak, fwhm, e1, e2, beta):
    reach = int(np.ceil(5 * fwhm))
    x0, x1 = max(0, int(x) - reach), min(frame.shape[1], int(x) + reach + 1)
    y0, y1 = max(0, int(y) - reach), min(frame.shape[0], int(y) + reach + 1)
    dx, dy = np.arange(x0, x1) - x, (np.arange(y0, y1) - y)[:, None]
    size, angle = np.hypot(e1, e2), 0.5 * np.arctan2(e2, e1)
    ratio = (1 + size) / (1 - size)
    a, b = fwhm / 2 * np.sqrt(ratio), fwhm / 2 / np.sqrt(ratio)
    along, across = dx * np.cos(angle) + dy * np.sin(angle), dy * np.cos(angle) - dx * np.sin(angle)
    k = 2 ** (1 / beta) - 1
    frame[y0:y1, x0:x1] += peak * (1 + k * ((along / a) ** 2 + (across / b) ** 2)) ** -beta


def draw(sky, *, dtype=np.uint16):
    """The frame and its truth. Counts clip at 65535 in 16 bits."""
    rng = np.random.default_rng(sky.seed)
    truth = truth_of(sky, rng)
    light = np.full((sky.height, sky.width), sky.level, np.float32)
    for star in zip(truth.x, truth.y, truth.peak, truth.fwhm, truth.e1, truth.e2, strict=True):
        stamp(light, *star, sky.beta, SQUARE if sky.averaged else CENTRE)
    light *= _vignette(sky)
    if sky.bayer:
        light *= _colours(sky)
    variance = sky.noise**2 + (np.maximum(light - sky.level, 0) / sky.gain if sky.gain else 0)
    light += rng.standard_normal(light.shape, dtype=np.float32) * np.sqrt(variance).astype(np.float32)
    places = rng.integers(0, sky.height, sky.hot), rng.integers(0, sky.width, sky.hot)
    light[places] += rng.uniform(500, 40_000, sky.hot).astype(np.float32)
    whole = np.issubdtype(dtype, np.integer)
    return (np.clip(np.rint(light), 0, np.iinfo(dtype).max) if whole else light).astype(dtype), truth


def _vignette(sky):
    y, x = np.ogrid[: sky.height, : sky.width]
    radius2 = ((x - sky.width / 2) ** 2 + (y - sky.height / 2) ** 2) / ((sky.width**2 + sky.height**2) / 4)
    return (1 - sky.vignetting * radius2).astype(np.float32)


def _colours(sky):
    """A sensor's unequal answer to one star colour: the chequered look of a raw one-shot-colour frame."""
    answer = {"R": 0.55, "G": 1.0, "B": 0.7}
    cell = np.array([[answer[sky.bayer[0]], answer[sky.bayer[1]]], [answer[sky.bayer[2]], answer[sky.bayer[3]]]], np.float32)
    return np.tile(cell, (sky.height // 2 + 1, sky.width // 2 + 1))[: sky.height, : sky.width]
