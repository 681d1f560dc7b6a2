"""Which detections are fit to be measured: not hot pixels, not at the edge, not clipped, not two in one."""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from sitegen.stars.detection import Detections, Levelled
from sitegen.stars.shapes import Floats

Mask = NDArray[np.bool_]
Window = NDArray[np.float32]

FAINTEST = 12.0  # peak over noise; a fainter star says more about the noise than about the optics
NEAR_SATURATION = 0.9  # of the clip level, where sensors stop being linear
HOT_NEIGHBOURS = 0.15  # a lone bright pixel's neighbours, as a share of it; a star of 2 px FWHM has 0.38, of 1.2 px 0.1 to 0.3
CLOSE, FAR = 2.2, 4.0  # FWHM: a neighbour matters within CLOSE from 5 % of the star's peak, within FAR from half of it


class Sorted(Struct, frozen=True):
    """`usable` and the reasons against the others, each of shape (n,); a detection has one reason at most."""

    usable: Mask
    hot_pixel: Mask
    edge: Mask
    saturated: Mask
    blended: Mask
    faint: Mask


def sort_out(
    detections: Detections, levelled: Levelled, raw: NDArray[np.generic], fwhm: float, reach: int, clip: float | None
) -> Sorted:
    """`fwhm`: a first guess, px. `reach`: half the cut-out. `clip`: counts at which the frame saturates, None where unknown."""
    windows = windows_at(levelled.pixels, detections.x, detections.y, 3)
    left = np.ones(len(detections.x), bool)
    reasons = [
        hot_pixels(windows),
        _at_edge(detections, levelled.pixels.shape, reach),
        _clipped(windows_at(raw, detections.x, detections.y, 3), clip) | _flat_topped(windows, levelled.noise, fwhm),
        detections.merged | _crowded(detections, fwhm),
        windows[:, 1:6, 1:6].max(axis=(1, 2)) < FAINTEST * levelled.noise,
    ]
    for number, reason in enumerate(reasons):
        reasons[number] = reason & left
        left &= ~reason
    return Sorted(left, *reasons)


def windows_at(image: NDArray[np.generic], x: Floats, y: Floats, reach: int) -> Window:
    """Squares of 2·reach + 1 px around the places, (n, h, w); beyond the frame the outermost pixel repeats."""
    around = np.arange(-reach, reach + 1)
    rows = (np.rint(y).astype(np.intp)[:, None] + around).clip(0, image.shape[0] - 1)
    columns = (np.rint(x).astype(np.intp)[:, None] + around).clip(0, image.shape[1] - 1)
    return np.asarray(image[rows[:, :, None], columns[:, None, :]], np.float32)


def hot_pixels(windows: Window) -> Mask:
    """Lone pixels: the eight around the brightest (within 2 px of the middle) hold next to nothing."""
    top = windows[:, 1:6, 1:6].reshape(len(windows), 25).argmax(axis=1)
    row, column, star = 1 + top // 5, 1 + top % 5, np.arange(len(windows))
    square = sum(windows[star, row + i, column + j] for i in (-1, 0, 1) for j in (-1, 0, 1))
    peak = windows[star, row, column]
    return np.asarray((square - peak) / 8 < HOT_NEIGHBOURS * peak)


def _at_edge(detections: Detections, shape: tuple[int, ...], reach: int) -> Mask:
    x, y = np.rint(detections.x), np.rint(detections.y)
    return np.asarray((x < reach) | (y < reach) | (x >= shape[1] - reach) | (y >= shape[0] - reach))


def _clipped(raw_windows: Window, clip: float | None) -> Mask:
    if clip is None:
        return np.zeros(len(raw_windows), bool)
    return np.asarray(raw_windows.max(axis=(1, 2)) >= NEAR_SATURATION * clip)


def _flat_topped(windows: Window, noise: float, fwhm: float) -> Mask:
    """Far more pixels near the peak's brightness than a star of this size has: clipped, whatever the clip level."""
    peak = windows.max(axis=(1, 2))
    near_top = (windows >= 0.97 * peak[:, None, None]).sum(axis=(1, 2))
    natural = np.pi * (0.1 * fwhm) ** 2  # the area within which a Moffat profile stays above 97 %
    return np.asarray((peak > 60 * noise) & (near_top > max(5.0, 3 * natural)))


def _crowded(detections: Detections, fwhm: float) -> Mask:
    places = np.column_stack([detections.x, detections.y])
    pairs = cKDTree(places).query_pairs(FAR * fwhm, output_type="ndarray")
    crowded = np.zeros(len(places), bool)
    for star, other in ((pairs[:, 0], pairs[:, 1]), (pairs[:, 1], pairs[:, 0])):
        apart = np.hypot(*(places[star] - places[other]).T)
        ratio = detections.peak[other] / detections.peak[star]
        crowded[star[(ratio > 0.5) | ((apart < CLOSE * fwhm) & (ratio > 0.05))]] = True
    return crowded


def clip_level(raw: NDArray[np.generic], detections: Detections, stated: float | None) -> float | None:
    """Where the frame saturates: as stated; else the level at which peaks are cut flat; else the top of a whole-number type."""
    if stated is not None:
        return stated
    windows = windows_at(raw, detections.x, detections.y, 2)
    top = float(windows.max(initial=0))
    at_top = (windows >= 0.995 * top).sum(axis=(1, 2))
    if (at_top >= 3).sum() >= max(3, 0.001 * len(windows)):
        return top
    return float(np.iinfo(raw.dtype.str).max) if raw.dtype.kind in "iu" else None
