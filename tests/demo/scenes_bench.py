"""Frames of tests: a first sub, the artificial star out of focus, star fields before and after the flange was cleaned."""

from dataclasses import dataclass, replace

import light
import numpy as np
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import FancyBboxPatch
from scenes_nebula import LONG_TUBE, all_stars, field_of
from scipy.ndimage import gaussian_filter, zoom
from starfield import Frame

from sitegen.stars.zones import COLUMNS, ROWS

Array = np.ndarray
Random = np.random.Generator

SATURATED = 65535
SURVEY_FRAME = Frame(230.0, -42.0, LONG_TUBE * 4, 1562, 1044)
TURNED_FRAME = replace(SURVEY_FRAME, rotation_deg=180.0)


def first_sub(rng: Random) -> Array:
    """The big cluster in Centaurus in one minute; one channel."""
    frame = field_of(201.697, -47.480, LONG_TUBE, 1100)
    number = 16000
    radius = (138 / frame.scale_arcsec_px) * np.sqrt(rng.random(number) ** -0.80 - 1).clip(0, 7)
    angle = rng.random(number) * 2 * np.pi
    cx, cy = 548.0, 369.0
    ball = cx + radius * np.cos(angle), cy + radius * np.sin(angle) * 0.88, 17.2 - rng.exponential(1.05, number).clip(0, 5.6)
    stars = tuple(np.r_[a, b] for a, b in zip(all_stars(frame, rng, 1500), ball, strict=True))
    grey = np.ones((stars[2].size, 3))
    seen = light.stretch(light.starlight(frame, stars, grey, light.profile(3.4, 0.06, 9), 14.2), 22)[..., 0]
    noise = gaussian_filter(rng.normal(0, 0.035, seen.shape), 0.5)
    return np.clip(0.09 + 0.91 * seen + noise, 0, 1)


@dataclass(frozen=True)
class Ring:
    """A defocused star: radii and the shadow's offset, pixels; up is negative y."""

    outer_px: float = 84.0
    inner_px: float = 36.5
    offset: tuple[float, float] = (0.0, 0.0)
    size_px: int = 320
    sky_adu: float = 3400.0


def ring_frame(ring: Ring, rng: Random) -> Array:
    """ADU of the artificial star out of focus by day, with the shadow of the secondary on its plate; uint16."""
    centre = (ring.size_px - 1) / 2
    line, column = np.mgrid[: ring.size_px, : ring.size_px] - centre
    radius = np.hypot(column, line)
    shadow = np.hypot(column - ring.offset[0], line - ring.offset[1])
    disc = (radius < ring.outer_px) & (shadow > ring.inner_px)
    shine = disc * (0.80 + 0.34 * np.exp(-((ring.outer_px - radius) / 5.5)) + 0.06 * np.cos(radius / 3.1))
    lean = 1 + (ring.offset[0] * column + ring.offset[1] * line) / (ring.outer_px * 60)
    boil = 1 + 0.05 * gaussian_filter(rng.normal(0, 1, shine.shape), 4) / 0.07
    blurred = gaussian_filter(shine * lean * boil, 1.9)
    return _exposed(21000 * blurred + ring.sky_adu, rng, 9.0)


@dataclass(frozen=True)
class Optics:
    """How stars look over the frame: width in the best focus, elongation, and what a tilted sensor adds towards one side.

    ``tilt_px`` is the blur at the frame's corner in the direction ``tilt_deg`` (from the right, through the top), beyond that at
    the line of best focus, which lies ``focus`` of the way from the middle to the opposite corner.
    """

    fwhm_px: float
    elongation: float
    angle_deg: float
    tilt_px: float = 0.0
    tilt_deg: float = 0.0
    focus: float = 0.5


def survey_field(frame: Frame, optics: Optics, star_seed: int, rng: Random) -> Array:
    """ADU of a star field whose stars change over the frame; uint16, 1044 x 1562."""
    x, y, magnitude = all_stars(frame, np.random.default_rng(star_seed), 1100, None, 15.6)
    picture = np.full((frame.height_px, frame.width_px), 300.0)
    for star in zip(x, y, magnitude, strict=True):
        _add_star(picture, star, optics)
    return _exposed(picture, rng, 1.6)


def _blur_px(x: float, y: float, shape: tuple[int, ...], optics: Optics) -> float:
    """Blur grows with the distance from the line of best focus, as the light cone does."""
    height, width = shape
    turn = np.radians(optics.tilt_deg)
    right, up = (x - width / 2) / (width / 2), (height / 2 - y) / (height / 2)
    along = (right * np.cos(turn) + up * np.sin(turn)) / (abs(np.cos(turn)) + abs(np.sin(turn)))
    return float(optics.tilt_px * (along + optics.focus) / (1 + optics.focus))


def _add_star(picture: Array, star: tuple[float, float, float], optics: Optics) -> None:
    x, y, magnitude = star
    height, width = picture.shape
    fwhm = np.hypot(optics.fwhm_px, _blur_px(x, y, picture.shape, optics))
    half = 26
    column = np.arange(max(0, int(x) - half), min(width, int(x) + half + 1))
    line = np.arange(max(0, int(y) - half), min(height, int(y) + half + 1))
    if column.size == 0 or line.size == 0:
        return
    across, down = column[None, :] - x, line[:, None] - y
    turn = np.radians(optics.angle_deg)
    major, minor = across * np.cos(turn) - down * np.sin(turn), across * np.sin(turn) + down * np.cos(turn)
    alpha = fwhm / (2 * np.sqrt(2 ** (1 / 3.0) - 1))
    long, short = alpha * np.sqrt(optics.elongation), alpha / np.sqrt(optics.elongation)
    flux = 4.2e6 * 10 ** (-0.4 * (magnitude - 9.0))
    peak = flux * 2 / (np.pi * alpha**2)
    picture[line[0] : line[-1] + 1, column[0] : column[-1] + 1] += peak * (1 + (major / long) ** 2 + (minor / short) ** 2) ** -3


def _exposed(adu: Array, rng: Random, read_noise: float) -> Array:
    """Photon and read noise of a few averaged exposures, and the camera's ceiling."""
    noisy = adu + rng.normal(0, 1, adu.shape) * np.sqrt(adu / 120 + read_noise**2)
    return np.clip(np.rint(noisy), 0, SATURATED).astype(np.uint16)


def shown(adu: Array, low: float, high: float, strength: float) -> Array:
    """A test frame as a picture, 0..1."""
    linear = np.clip((adu.astype(float) - low) / (high - low), 0, None)
    return np.clip(np.arcsinh(strength * linear) / np.arcsinh(strength), 0, 1)


def pair(left: Array, right: Array) -> Array:
    """Two rings side by side, enlarged, on one dark ground."""
    both = [np.clip(zoom(shown(adu, 2900, 30000, 1.5), 2.4, order=3), 0, 1) for adu in (left, right)]
    gap = np.full((both[0].shape[0], 16), 0.16)
    return np.hstack([both[0], gap, both[1]])


def zone_squares(adu: Array, cut_px: int = 120) -> Array:
    """The middle of each of the 5 x 3 zones in which the site measures star shapes, enlarged."""
    zones = [np.array_split(row, COLUMNS, axis=1) for row in np.array_split(adu, ROWS)]
    return np.clip(np.vstack([np.hstack([_framed(_middle(zone, cut_px)) for zone in row]) for row in zones]), 0, 1)


def _middle(zone: Array, cut_px: int) -> Array:
    top, left = ((length - cut_px) // 2 for length in zone.shape)
    return zone[top : top + cut_px, left : left + cut_px]


def _framed(cut: Array) -> Array:
    return np.pad(zoom(shown(cut, 298, 14000, 60), 2, order=3), 4, constant_values=0.22)


LAST_LINE = "Before every session: press the test button. If it does not trip, go home and call the electrician."
BOXES = (
    (0.03, 0.56, 0.25, "Outlet on the hall's wall", "mains, residual-current device,\nfitted by an electrician", "#7a2e1d"),
    (0.375, 0.56, 0.25, "Supply in a closed box", "mains in, 12 V out,\nnot ours to open", "#7a2e1d"),
    (0.72, 0.56, 0.25, "Distribution box", "a fuse for each load,\none switch, a lid", "#1f4e66"),
)
LOADS = (("Mount", "5 A"), ("Camera", "5 A"), ("Focuser and wheel", "2 A"), ("Dew bands", "8 A, on their own"))


def power_plan() -> Array:
    """The shed's power as a drawing; (840, 1500, 3), 0..1."""
    figure = Figure(figsize=(15, 8.4), dpi=100, facecolor="#f6f3ec")
    axes = figure.add_axes((0, 0, 1, 1))
    axes.set_axis_off()
    axes.set(xlim=(0, 1), ylim=(0, 1))
    axes.text(0.03, 0.925, "Power on the hill", fontsize=30, family="DejaVu Serif", color="#222222")
    axes.text(
        0.03,
        0.872,
        "Mains stops at the wall. Only twelve volts cross the path.",
        fontsize=17,
        family="DejaVu Serif",
        color="#444444",
    )
    for left, bottom, width, title, text, colour in BOXES:
        _box(axes, left, bottom, width, 0.22, title, text, colour)
    for start, end, label, colour in ((0.28, 0.375, "mains", "#7a2e1d"), (0.625, 0.72, "12 volts", "#1f4e66")):
        _arrow(axes, (start, 0.67), (end, 0.67), colour)
        axes.text((start + end) / 2, 0.705, label, ha="center", fontsize=12.5, family="DejaVu Serif", color=colour)
    axes.plot([0.845, 0.845], [0.56, 0.44], color="#1f4e66", lw=2.4)
    axes.plot([0.1325, 0.8675], [0.44, 0.44], color="#1f4e66", lw=2.4)
    for number, (title, text) in enumerate(LOADS):
        left = 0.03 + 0.245 * number
        _arrow(axes, (left + 0.1025, 0.44), (left + 0.1025, 0.355), "#1f4e66")
        _box(axes, left, 0.20, 0.205, 0.155, title, text, "#1f4e66")
    axes.text(0.03, 0.085, LAST_LINE, fontsize=17, family="DejaVu Serif", color="#7a2e1d")
    canvas = FigureCanvasAgg(figure)
    canvas.draw()
    return np.asarray(canvas.buffer_rgba())[..., :3] / 255.0


def _box(axes: Axes, left: float, bottom: float, width: float, height: float, title: str, text: str, colour: str) -> None:
    axes.add_patch(
        FancyBboxPatch(
            (left, bottom),
            width,
            height,
            boxstyle="round,pad=0,rounding_size=0.012",
            facecolor="#fffdf8",
            edgecolor=colour,
            lw=2.4,
        )
    )
    axes.text(
        left + width / 2,
        bottom + height - 0.055,
        title,
        ha="center",
        fontsize=16,
        family="DejaVu Serif",
        weight="bold",
        color=colour,
    )
    axes.text(
        left + width / 2,
        bottom + (height - 0.06) / 2,
        text,
        ha="center",
        va="center",
        fontsize=14,
        family="DejaVu Serif",
        color="#333333",
    )


def _arrow(axes: Axes, start: tuple[float, float], end: tuple[float, float], colour: str) -> None:
    axes.annotate("", xy=end, xytext=start, arrowprops={"arrowstyle": "-|>", "color": colour, "lw": 2.4, "mutation_scale": 22})
