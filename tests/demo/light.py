"""Starlight on a picture: colours, point-spread functions, stretching, noise.

Arrays are float32, rows by columns (by red, green, blue); linear until stretched.
"""

import numpy as np
from scipy.ndimage import gaussian_filter
from scipy.signal import fftconvolve
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator

WAVELENGTH_NM = np.array([612.0, 549.0, 464.0])
PLANCK_NM_K = 1.4388e7


def star_colours(number: int, rng: Random, warmth: float = 0.0) -> Array:
    """Linear red, green, blue of seeded temperatures, each star's mean 1; (number, 3)."""
    kind = rng.random(number)
    cool = rng.normal(4600, 600, number)
    middling = rng.normal(6400, 700, number)
    hot = rng.normal(11500, 3000, number)
    temperature = np.where(kind < 0.50 + warmth, cool, np.where(kind < 0.80 + warmth / 2, middling, hot))
    return black_body(np.clip(temperature, 3100, 25000))


def black_body(temperature_k: Array) -> Array:
    """Planck's law at three wavelengths, white at 6300 K, mean 1."""

    def planck(kelvin: Array) -> Array:
        return WAVELENGTH_NM**-5 / np.expm1(PLANCK_NM_K / (WAVELENGTH_NM * kelvin))

    colour = planck(np.asarray(temperature_k)[:, None]) / planck(np.array([[6300.0]]))
    return colour / colour.mean(axis=1, keepdims=True)


def faint_stars(
    frame: Frame, rng: Random, number: int, brightest: float = 10.0, faintest: float = 17.0
) -> tuple[Array, Array, Array]:
    """Seeded stars below the catalogue's limit: x, y, magnitude (counts grow 2.2-fold a magnitude)."""
    growth = np.log10(2.2)
    spread = rng.random(number)
    low, high = 10 ** (growth * brightest), 10 ** (growth * faintest)
    magnitude = np.log10(low + spread * (high - low)) / growth
    return rng.random(number) * frame.width_px, rng.random(number) * frame.height_px, magnitude


def impulses(frame: Frame, x: Array, y: Array, flux: Array) -> Array:
    """Fluxes (number, 3) put between four pixels each; (height, width, 3)."""
    light = np.zeros((frame.height_px, frame.width_px, 3))
    column, line = np.floor(x).astype(int), np.floor(y).astype(int)
    right, down = x - column, y - line
    for dx, dy, share in (
        (0, 0, (1 - right) * (1 - down)),
        (1, 0, right * (1 - down)),
        (0, 1, (1 - right) * down),
        (1, 1, right * down),
    ):
        inside = (column + dx >= 0) & (column + dx < frame.width_px) & (line + dy >= 0) & (line + dy < frame.height_px)
        np.add.at(light, (line[inside] + dy, column[inside] + dx), flux[inside] * share[inside, None])
    return light


def moffat(fwhm_px: float, beta: float, half_px: int) -> Array:
    """Unit-sum Moffat profile, (2 half + 1) squared."""
    alpha = fwhm_px / (2 * np.sqrt(2 ** (1 / beta) - 1))
    line, column = np.mgrid[-half_px : half_px + 1, -half_px : half_px + 1]
    profile = (1 + (line**2 + column**2) / alpha**2) ** -beta
    return profile / profile.sum()


def profile(fwhm_px: float, halo: float = 0.10, halo_px: float = 14.0) -> Array:
    """A telescope's image of a star: core and halo; no tube of the school has a spider that would draw spikes."""
    half = 150
    return (1 - halo) * moffat(fwhm_px, 3.0, half) + halo * moffat(halo_px, 1.9, half)


def starlight(frame: Frame, stars: tuple[Array, Array, Array], colours: Array, kernel: Array, zero: float) -> Array:
    """The star layer, linear; a star of magnitude ``zero`` has unit flux."""
    x, y, magnitude = stars
    flux = 10 ** (-0.4 * (magnitude - zero))
    light = impulses(frame, x, y, flux[:, None] * colours)
    return np.stack([fftconvolve(light[..., band], kernel, mode="same") for band in range(3)], axis=-1).clip(0)


def stretch(linear: Array, strength: float, white: float = 1.0) -> Array:
    """Asinh of the brightness with the colour kept; what exceeds white turns white."""
    brightness = linear.mean(axis=-1, keepdims=True) / white
    curved = np.arcsinh(strength * brightness) / np.arcsinh(strength)
    shown = linear / white * (curved / np.maximum(brightness, 1e-9))
    excess = np.maximum(shown - 1, 0).sum(axis=-1, keepdims=True)
    return np.minimum(shown + excess / 2.2, 1)


def saturate(picture: Array, amount: float) -> Array:
    """Push colours away from grey by a factor."""
    grey = picture.mean(axis=-1, keepdims=True)
    return np.clip(grey + amount * (picture - grey), 0, 1)


def screen(below: Array, above: Array) -> Array:
    """Two lights on one paper, neither above white."""
    return 1 - (1 - np.clip(below, 0, 1)) * (1 - np.clip(above, 0, 1))


def finish(picture: Array, rng: Random, ground: tuple[float, float, float], grain: float) -> Array:
    """Lift to a dark ground, add grain, to 0..1."""
    lift = np.array(ground)
    noise = rng.normal(0, grain, picture.shape) + rng.normal(0, grain * 0.7, picture.shape[:2])[..., None]
    soft = gaussian_filter(noise, (0.6, 0.6, 0))
    return np.clip(lift + picture * (1 - lift) + soft, 0, 1)
