"""The pictures of the galaxy: a first season in a wide field, and the steps of the second."""

from functools import cache

import light
import numpy as np
from galaxies import Spiral, paint
from scenes_nebula import LONG_TUBE, SHORT_TUBE, all_stars, field_of, star_layer
from scipy.ndimage import gaussian_filter, zoom
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator

REDUCED = LONG_TUBE / 0.8
GALAXY_SEED = 1101


def five_nights_frame(width_px: int) -> Frame:
    """The long tube with its reducer, on the galaxy."""
    return field_of(11.888, -25.288, REDUCED, width_px)


@cache
def _galaxy(width_px: int) -> Array:
    """Linear light of the galaxy in the long tube's frame; the same in every picture."""
    frame = five_nights_frame(width_px)
    grade = width_px / 2400
    spiral = Spiral((1195 * grade, 802 * grade), 800 * grade, 77.5, 52)
    return paint(frame, spiral, np.random.default_rng(GALAXY_SEED))


def _stars(frame: Frame, fwhm_px: float, zero: float, colour: float) -> Array:
    rng = np.random.default_rng(GALAXY_SEED + 1000)
    stars = all_stars(frame, rng, 2600, None, 18.0)
    return star_layer(frame, stars, rng, light.profile(fwhm_px, 0.12, 14), zero, 34, colour)


def five_nights(rng: Random) -> Array:
    """The finished picture."""
    frame = five_nights_frame(2400)
    shown = light.saturate(light.stretch(_galaxy(2400), 17, 1.9), 1.25)
    return light.finish(light.screen(shown, _stars(frame, 3.0, 14.2, 1.3)), rng, (0.035, 0.036, 0.041), 0.006)


def _grey(width_px: int) -> Array:
    return np.repeat(_galaxy(width_px).mean(axis=-1, keepdims=True), 3, axis=-1)


def one_sub(rng: Random) -> Array:
    """A single luminance sub: half the form, all the noise; one channel."""
    frame = five_nights_frame(1500)
    seen = light.screen(light.stretch(_grey(1500), 5, 1.9), 0.9 * _stars(frame, 2.3, 13.0, 0.0))[..., 0]
    noise = rng.normal(0, 0.060, seen.shape) * (0.9 + 0.5 * seen)
    return np.clip(0.11 + 0.86 * seen + gaussian_filter(noise, 0.5), 0, 1)


def luminance(rng: Random) -> Array:
    """All luminance subs together; one channel."""
    frame = five_nights_frame(1500)
    seen = light.screen(light.stretch(_grey(1500), 19, 1.9), _stars(frame, 2.3, 13.4, 0.0))[..., 0]
    return np.clip(0.04 + 0.96 * seen + gaussian_filter(rng.normal(0, 0.007, seen.shape), 0.5), 0, 1)


def colour_only(rng: Random) -> Array:
    """Red, green and blue before the luminance: soft, and noisier in colour than in brightness."""
    frame = five_nights_frame(1500)
    soft = gaussian_filter(_galaxy(1500), (3.0, 3.0, 0))
    shown = light.saturate(light.stretch(soft, 11, 1.9), 1.45)
    picture = light.screen(shown, gaussian_filter(_stars(frame, 3.6, 12.8, 1.6), (1.2, 1.2, 0)))
    noise = gaussian_filter(rng.normal(0, 0.035, picture.shape), (1.4, 1.4, 0))
    return np.clip(0.05 + 0.95 * picture + noise, 0, 1)


def first_season(rng: Random) -> Array:
    """The galaxy small in the short tube's field, a globular cluster to its south-east."""
    frame = field_of(12.55, -25.85, SHORT_TUBE, 2200)
    gx, gy, _ = frame.pixels(np.array([11.888]), np.array([-25.288]))
    light_of = np.zeros((frame.height_px, frame.width_px, 3))
    large = Frame(0, 0, 1, 1320, 1320)
    small = paint(large, Spiral((659.5, 659.5), 430, 77.5, 52), np.random.default_rng(GALAXY_SEED))
    third = np.stack([zoom(gaussian_filter(small[..., band], 1.2), 1 / 3, order=1) for band in range(3)], axis=-1)
    top, left = round(float(gy[0])) - 220, round(float(gx[0])) - 220
    light_of[top : top + 440, left : left + 440] = third[:440, :440]
    shown = light.saturate(light.stretch(light_of, 12, 1.5), 1.3)
    stars = _with_cluster(frame, all_stars(frame, rng, 9000, None, 17.0), rng)
    points = star_layer(frame, stars, rng, light.profile(2.3, 0.10, 11), 12.6, 26, 1.3)
    return light.finish(light.screen(shown, points), rng, (0.038, 0.038, 0.043), 0.007)


def _with_cluster(frame: Frame, stars: tuple[Array, Array, Array], rng: Random) -> tuple[Array, Array, Array]:
    """NGC 288 as a seeded, loose ball of faint stars."""
    cx, cy, _ = frame.pixels(np.array([13.188]), np.array([-26.583]))
    number = 900
    reach = 15 * np.sqrt(rng.random(number) ** -0.8 - 1).clip(0, 5)
    angle = rng.random(number) * 2 * np.pi
    ball = cx + reach * np.cos(angle), cy + reach * np.sin(angle), 16.0 - rng.exponential(0.45, number)
    return tuple(np.r_[a, b] for a, b in zip(stars, ball, strict=True))
