"""How far the shadow sits from the middle of a defocused star's disc: what an imager turns the collimation screws by."""

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray
from scipy import ndimage

from sitegen.stars.digits import direction, rounded
from sitegen.stars.mosaic import checked_pattern
from sitegen.stars.records import StarRing
from sitegen.stars.ring_model import DEPTH, DR, DX, DY, SR, SX, SY, P, Patch, Q, RingFit, fit_ring
from sitegen.stars.ring_search import Blob, RingProblem, binned, find_disc, refuse_star_field
from sitegen.stars.shapes import Floats

FITTED_PX = 100.0  # a larger disc is binned to about this diameter: its centres stay good to a hundredth of a pixel
MARGIN = 1.35  # radii of sky around the disc that the fit sees
CLIPPED_SHARE = 0.02  # of the disc's pixels at one topmost value
OFF_AXIS = 0.25  # of half the frame's diagonal: common practice, no source
OVAL = 1.06  # longest over shortest diameter: common practice, no source
SHADOW_SIGMA, LEAST_DEPTH = 5.0, 0.1  # a shadow is one from so many sigma and so much of the disc's light on
SHADOW_SHARE = (0.04, 0.9)  # of the disc's diameter
FAINTEST = 3.0  # signal to noise of one pixel, after binning
VANE_SHARE = 0.06  # of the disc's radius: half the width of what may be a vane
PX_DECIMALS, PERCENT_DECIMALS = 3, 2


def ring_offset(pixels: NDArray[np.generic], *, bayer: str | None = None, saturation: float | None = None) -> StarRing:
    """Measure the brightest disc of a frame, `pixels` of shape (height, width), row 0 at the bottom (see `records`).

    `bayer`: the pattern of a raw one-shot-colour frame, whose cells are averaged. `saturation`: counts at which the sensor clips;
    without it a flat top gives it away. Raises RingProblem (a sentence) for a disc that is missing, one of many, cut off,
    saturated, too faint or without a shadow; ValueError for the wrong kind of array. Error on synthetic discs
    (tests/bench/stars.py): within 0.3 px from a signal to noise of 10 on, for diameters of 40 to 400 px.
    """
    if pixels.ndim != 2 or min(pixels.shape) < 32:
        raise ValueError(f"a ring needs one plane of at least 32 × 32 px, not shape {pixels.shape}")
    cell = 1 if checked_pattern(bayer) is None else 2
    image = _filled(pixels)
    searched = image if cell == 1 else binned(image, cell)
    blob = find_disc(searched)
    refuse_star_field(searched, blob)
    blob = blob.enlarged(cell)
    _refuse_saturated(pixels, blob, saturation)
    window = _window(image, blob, cell)
    fit = fit_ring(_patch(window, blob), _first_guess(window, blob))
    _refuse_doubtful(fit, window, pixels.shape)
    return _record(fit, window, pixels.shape)


def _filled(pixels: NDArray[np.generic]) -> Floats:
    image = np.array(pixels, dtype=np.float64)
    bad = ~np.isfinite(image)
    if bad.mean() > 0.5:
        raise RingProblem("more than half of the frame's pixels are not numbers")
    if bad.any():
        image[bad] = np.median(image[~bad])
    return image


def _refuse_saturated(pixels: NDArray[np.generic], blob: Blob, saturation: float | None) -> None:
    """At the stated level, at the top of a whole-number type, or where one topmost value fills part of the disc."""
    disc = _square(pixels, blob, 1.0)
    values, counts = np.unique(disc[np.isfinite(disc)], return_counts=True)
    top, bits = float(values[-1]), pixels.dtype.itemsize * 8 if pixels.dtype.kind in "iu" else 0
    ceiling = saturation if saturation is not None else _type_ceiling(pixels.dtype)
    clipped = counts[values >= ceiling].sum() > CLIPPED_SHARE * disc.size
    flat = bits != 8 and _grainy(pixels) and counts[-1] > max(CLIPPED_SHARE * disc.size, 3 * counts[:-1].max(initial=0))
    if clipped or flat:
        raise RingProblem(f"the disc is saturated at {top:g}: expose it for a shorter time")


def _type_ceiling(dtype: np.dtype[np.generic]) -> float:
    return float(np.iinfo(dtype.str).max) if dtype.kind in "iu" else np.inf


def _grainy(pixels: NDArray[np.generic]) -> bool:
    """Whether the sky has noise at all: in a drawn, noiseless frame a flat disc is no sign of clipping."""
    corner = pixels[: pixels.shape[0] // 8, : pixels.shape[1] // 8]
    return len(np.unique(corner)) > 1


def _square(image: NDArray[np.generic], blob: Blob, radii: float) -> NDArray[np.generic]:
    rows, columns = _bounds(image.shape, blob, radii)
    return image[rows, columns]


def _bounds(shape: tuple[int, ...], blob: Blob, radii: float) -> tuple[slice, slice]:
    reach = radii * blob.radius + 3
    rows = slice(max(0, int(blob.y - reach)), min(shape[0], int(blob.y + reach) + 2))
    return rows, slice(max(0, int(blob.x - reach)), min(shape[1], int(blob.x + reach) + 2))


class _Window(Struct, frozen=True):
    """The binned square around the disc, less the sky beside it, and how its pixels lie in the frame."""

    counts: Floats
    left: int
    bottom: int
    factor: int

    def to_frame(self, x: float, y: float) -> tuple[float, float]:
        shift = (self.factor - 1) / 2
        return self.left + self.factor * x + shift, self.bottom + self.factor * y + shift

    def distances(self, blob: Blob) -> Floats:
        """Of the window's pixels from the blob's middle, in window pixels."""
        x, y = self.from_frame(blob.x, blob.y)
        rows, columns = np.indices(self.counts.shape)
        return np.asarray(np.hypot(columns - x, rows - y))

    def from_frame(self, x: float, y: float) -> tuple[float, float]:
        shift = (self.factor - 1) / 2
        return (x - shift - self.left) / self.factor, (y - shift - self.bottom) / self.factor


def _window(image: Floats, blob: Blob, cell: int) -> _Window:
    factor = cell * max(1, round(2 * blob.radius / FITTED_PX / cell))
    rows, columns = _bounds(image.shape, blob, MARGIN)
    bottom, left = rows.start // cell * cell, columns.start // cell * cell
    window = _Window(binned(image[bottom : rows.stop, left : columns.stop], factor), left, bottom, factor)
    return replace(window, counts=window.counts - _sky_beside(window, blob))


def _sky_beside(window: _Window, blob: Blob) -> Floats:
    """A plane through the pixels around the disc, twice, the second time without those that stand out."""
    y, x = np.indices(window.counts.shape)
    design = np.stack([np.ones(x.shape), x, y], axis=-1)
    beside = window.distances(blob) > 1.12 * blob.radius / window.factor
    for _ in range(2):
        terms = np.linalg.lstsq(design[beside], window.counts[beside], rcond=None)[0]
        left = np.abs(window.counts - design @ terms)
        beside &= left <= 5 * np.median(left[beside])
    return np.asarray(design @ terms)


def _patch(window: _Window, blob: Blob) -> Patch:
    radius = blob.radius / window.factor
    return Patch(window.counts, window.distances(blob) < MARGIN * radius + 2, radius, blob.brightness)


def _first_guess(window: _Window, blob: Blob) -> Floats:
    """The shadow is the largest dark patch inside the disc, once all that is as thin as a vane is gone."""
    radius = blob.radius / window.factor
    x, y = window.from_frame(blob.x, blob.y)
    smooth = ndimage.gaussian_filter(window.counts, max(0.7, 0.03 * radius))
    inside = window.distances(blob) < 0.85 * radius
    level = float(np.percentile(smooth[inside], 80))
    shadow_x, shadow_y, shadow_r = _darkest(inside & (smooth < 0.55 * level), radius) or (x, y, 0.3 * radius)
    soft = max(0.8, 0.03 * radius)
    return np.array([x, y, radius, soft, shadow_x, shadow_y, shadow_r, soft, 0.8, 0.0, 0.0, 0.0, level, *[0.0] * 11])


def _darkest(dark: NDArray[np.bool_], radius: float) -> tuple[float, float, float] | None:
    """Middle and radius of the largest patch wider than a vane."""
    labels, count = ndimage.label(ndimage.binary_opening(dark, iterations=max(1, round(VANE_SHARE * radius))))
    if not count:
        return None
    rows, columns = np.nonzero(labels == 1 + int(np.argmax(np.bincount(labels.ravel())[1:])))
    return float(columns.mean()), float(rows.mean()), float(np.sqrt(len(rows) / np.pi))


def _refuse_doubtful(fit: RingFit, window: _Window, shape: tuple[int, ...]) -> None:
    values, errors = fit.values, np.sqrt(np.diag(fit.covariance))
    x, y = window.to_frame(values[DX], values[DY])
    reach = values[DR] * window.factor
    if min(x, y, shape[1] - 1 - x, shape[0] - 1 - y) < reach:
        raise RingProblem("the disc is cut off by the edge of the frame")
    if fit.brightness < FAINTEST * fit.residual:
        raise RingProblem("the disc is too faint to be measured: expose it for longer or choose a brighter star")
    sure = values[DEPTH] > SHADOW_SIGMA * errors[DEPTH] and values[DEPTH] > LEAST_DEPTH
    if not (sure and SHADOW_SHARE[0] < values[SR] / values[DR] < SHADOW_SHARE[1]):
        raise RingProblem("no shadow is to be seen inside the disc: defocus more, or the telescope has no obstruction")


def _record(fit: RingFit, window: _Window, shape: tuple[int, ...]) -> StarRing:
    values, oval = fit.values, float(np.hypot(fit.values[Q], fit.values[P]))
    scale = window.factor
    diameter = 2 * scale / (1 - oval**2) ** 0.25  # per unit of radius: of the circle with the oval's area
    across, up = values[SX] - values[DX], values[SY] - values[DY]
    offset_px = rounded(scale * np.hypot(across, up), PX_DECIMALS)
    error_px = rounded(scale * _offset_error(fit, across, up), PX_DECIMALS)
    outer_px, inner_px = (rounded(diameter * values[radius], PX_DECIMALS) for radius in (DR, SR))
    x, y = (rounded(place, PX_DECIMALS) for place in window.to_frame(values[DX], values[DY]))
    return StarRing(
        outer_px=outer_px,
        inner_px=inner_px,
        offset_px=offset_px,
        offset_percent=rounded(100 * offset_px / outer_px, PERCENT_DECIMALS),
        direction_deg=direction(float(np.degrees(np.arctan2(up, across))), 360.0) if offset_px > error_px else None,
        uncertainty_px=error_px,
        x=x,
        y=y,
        signal_to_noise=rounded(fit.brightness / fit.residual / scale, PX_DECIMALS),
        warnings=(*_off_axis(x, y, shape), *_oval(rounded(np.sqrt((1 + oval) / (1 - oval)), PX_DECIMALS))),
    )


def _offset_error(fit: RingFit, across: float, up: float) -> float:
    """One standard error along the offset's direction.

    What the sectors of the disc disagree about (a delete-one jackknife: Efron 1982, chapter 3) holds the noise too, but eight of
    them may agree by chance: at least the noise by the fit's covariance. And by how much the offset changes once rings of light
    are allowed for, which no sector sees, as a ring pulls all around.
    """
    length = np.hypot(across, up) or 1.0
    along = np.array([across, up]) / length
    slope = np.zeros(len(fit.values))
    slope[[SX, SY, DX, DY]] = np.concatenate([along, -along])
    noise = np.sqrt(slope @ fit.covariance @ slope)
    sectors = np.sqrt((len(fit.without) - 1) * (fit.without @ along).var())
    rings = fit.with_rings @ along - length
    return float(np.hypot(max(noise, sectors), rings))


def _off_axis(x: float, y: float, shape: tuple[int, ...]) -> tuple[str, ...]:
    half = np.hypot(shape[0], shape[1]) / 2
    away = np.hypot(x - (shape[1] - 1) / 2, y - (shape[0] - 1) / 2) / half
    if away <= OFF_AXIS:
        return ()
    return (
        f"the star stands {100 * away:.0f} % of the way from the frame's centre to its corner: "
        "discs off the axis are lopsided even in a telescope in order, so put the star in the middle",
    )


def _oval(elongation: float) -> tuple[str, ...]:
    if elongation <= OVAL:
        return ()
    return (f"the disc is oval, {elongation:.2f} times as long as wide: a tilt, pinched optics or a star off the axis",)
