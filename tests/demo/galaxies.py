"""A spiral galaxy seen at an angle, with its dust in front of its stars."""

from dataclasses import dataclass

import numpy as np
from clouds import fractal, ridges, step, warped
from scipy.ndimage import gaussian_filter, map_coordinates
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator

# Small features are sheared far less than the arms: tangent of their pitch.
LOOSE = 0.85


@dataclass(frozen=True)
class Spiral:
    """Geometry in pixels and degrees; the position angle runs from up to the left, as on the sky."""

    centre: tuple[float, float]
    radius_px: float
    inclination_deg: float
    position_angle_deg: float
    pitch_deg: float = 17.0


def disc_coordinates(shape: tuple[int, int], spiral: Spiral) -> tuple[Array, Array, Array, Array]:
    """Along the major axis, across it, radius in the disc's plane (of 1), and azimuth."""
    line, column = np.indices(shape, dtype=float)
    x, y = column - spiral.centre[0], line - spiral.centre[1]
    turn = np.radians(spiral.position_angle_deg)
    along = (-x * np.sin(turn) - y * np.cos(turn)) / spiral.radius_px
    across = (-x * np.cos(turn) + y * np.sin(turn)) / spiral.radius_px
    deep = across / np.cos(np.radians(spiral.inclination_deg))
    return along, across, np.hypot(along, deep), np.arctan2(deep, along)


def _in_plane(texture: Array, radius: Array, azimuth: Array, winding: float, stretch: float) -> Array:
    """A periodic texture wound up along the arms."""
    lines, columns = texture.shape
    wound = azimuth - np.log(np.maximum(radius, 0.02)) / winding
    column = wound / (2 * np.pi) * columns
    line = np.log(np.maximum(radius, 0.02)) * lines * stretch
    return map_coordinates(texture, [line, column], order=1, mode="grid-wrap")


def paint(frame: Frame, spiral: Spiral, rng: Random) -> Array:
    """Linear light of the galaxy, white about 1 in its middle; (height, width, 3)."""
    shape = (frame.height_px, frame.width_px)
    along, across, radius, azimuth = disc_coordinates(shape, spiral)
    winding = np.tan(np.radians(spiral.pitch_deg))
    wander = _in_plane(fractal((512, 512), 1.8, rng), radius, azimuth, LOOSE, 0.16)
    phase = 2 * (azimuth - np.log(np.maximum(radius, 0.05)) / winding) + 1.3 * wander
    arms = (0.5 + 0.5 * np.cos(phase)) ** 1.3
    clumps = _in_plane(warped(fractal((1024, 2048), 1.2, rng), rng, 14), radius, azimuth, LOOSE, 0.32)
    fine = _in_plane(warped(fractal((2048, 4096), 0.95, rng), rng, 8), radius, azimuth, LOOSE, 0.32)
    edge = step(1.15 - radius + 0.16 * wander, 0.0, 0.6)
    disc = np.exp(-radius / 0.30) * edge
    young = np.exp(-radius / 0.46) * edge * (0.22 + 1.25 * arms) * np.exp(0.50 * clumps + 0.34 * fine)
    young *= step(radius, 0.03, 0.25)
    core = np.exp(-((np.hypot(along, across / 0.60) / 0.040) ** 0.9)) * 2.0
    inner = np.exp(-((np.hypot(along, across / 0.36) / 0.15) ** 1.1)) * 0.55
    light = (disc * (0.8 + 0.4 * arms))[..., None] * np.array([1.0, 0.84, 0.64])
    light += (0.66 * young)[..., None] * np.array([0.66, 0.84, 1.08])
    light += inner[..., None] * np.array([1.0, 0.80, 0.52])
    dust = _dust(radius, azimuth, across, arms, clumps, rng)
    light *= np.exp(-dust[..., None] * np.array([0.70, 1.0, 1.32]))
    light += core[..., None] * np.array([1.0, 0.88, 0.66]) * np.exp(-0.4 * dust[..., None])
    light += _nurseries(shape, radius, arms, clumps, rng)
    haze = np.exp(-(np.hypot(along, across / 0.45) / 0.45)) * 0.035
    light += haze[..., None] * np.array([1.0, 0.9, 0.75])
    return gaussian_filter(light, (0.7, 0.7, 0))


def _dust(radius: Array, azimuth: Array, across: Array, arms: Array, clumps: Array, rng: Random) -> Array:
    """Optical depth in green: lanes, a web of patches, and more of both on the near side."""
    lanes = ridges(_in_plane(warped(fractal((1024, 1024), 1.5, rng, 300), rng, 22), radius, azimuth, 0.42, 0.17), 2.6)
    web = ridges(_in_plane(warped(fractal((1024, 2048), 1.35, rng, 170), rng, 16), radius, azimuth, LOOSE, 0.32), 2.8)
    net = ridges(_in_plane(warped(fractal((2048, 4096), 1.3, rng, 120), rng, 12), radius, azimuth, 1.6, 0.32), 3.0)
    patches = step(_in_plane(fractal((1024, 2048), 1.4, rng, 300), radius, azimuth, LOOSE, 0.32), -0.6, 1.4)
    amount = (1.15 * lanes + 0.95 * web + 0.75 * net) * (0.35 + 1.0 * patches) + 0.22 * np.maximum(-clumps, 0)
    near = 0.60 + 0.65 * step(across, -0.05, 0.06)
    return amount * near * step(radius, 0.01, 0.10) * np.exp(-((radius / 0.85) ** 3)) * (1.25 - 0.45 * arms)


def _nurseries(shape: tuple[int, int], radius: Array, arms: Array, clumps: Array, rng: Random) -> Array:
    """Pink and blue points where stars are being made."""
    light = np.zeros((*shape, 3))
    chance = (
        np.exp(-radius / 0.4) * step(radius, 0.1, 0.2) * step(1.0 - radius, 0, 0.15) * (0.25 + arms) * step(clumps, -0.3, 1.4)
    )
    places = rng.random(shape) < chance * 0.011
    line, column = np.nonzero(places)
    pink = rng.random(line.size) < 0.42
    power = rng.pareto(1.9, line.size).clip(0, 8) + 0.25
    colour = np.where(pink[:, None], np.array([1.0, 0.28, 0.42]), np.array([0.45, 0.72, 1.15]))
    light[line, column] = power[:, None] * colour
    return gaussian_filter(light, (1.15, 1.15, 0)) * 1.3 + gaussian_filter(light, (3.2, 3.2, 0)) * 1.2
