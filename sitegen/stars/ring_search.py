"""Where in the frame the defocused star is: its rough middle and radius, and whether it can be measured at all."""

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray
from scipy import ndimage

from sitegen.stars.digits import rounded
from sitegen.stars.shapes import Floats

COARSE_PX = 1200  # the frame is binned to about this size for the search
SKY_SHARES = (80.0, 35.0)  # percent of the frame that is surely sky: the second for a disc that fills the frame
FLOOR = 1e-3  # of the counts' range: the least noise, for pictures whose sky is clipped to black
SMALLEST_PX = 16.0  # diameter: below, neither disc nor shadow have a shape
GAP_PX = 6  # of the binned image: half of a vane that may split a disc
AS_BRIGHT = 0.6  # of the disc's brightness over the sky
OUTSIDE_RADII = 1.35  # of the disc: beyond its rim and its glow
STAR_PX = 4  # smaller patches are hot pixels and cosmic rays
MOST_OTHERS = 12  # two or three companions may be as bright, each in four parts between the vanes
BLOB_DECIMALS = 2
ROUNDEST = 1.3  # longest over shortest extent that still passes for a disc


class RingProblem(ValueError):
    """A frame whose disc cannot be measured; the text is a sentence for the frame's author."""


class Blob(Struct, frozen=True):
    """Middle and radius in px, brightness of the lit part over the sky, and its whole light."""

    x: float
    y: float
    radius: float
    brightness: float
    light: float
    cut: bool

    def enlarged(self, factor: int) -> "Blob":
        """The same in a frame with `factor` times the pixels along each side."""
        x, y = (_unbinned(place, factor) for place in (self.x, self.y))
        return replace(self, x=x, y=y, radius=self.radius * factor)


def less_sky(image: Floats, share: float) -> tuple[Floats, float]:
    """The image less its sky, a second-order surface (vignetting, a gradient of moonlight), and the noise of what is left.

    The surface is drawn through a thin sample: first the darkest `share` of it (percent), then all that lies near the surface.
    """
    step = max(1, round((image.size / 40_000) ** 0.5))
    sample = image[::step, ::step].ravel()
    terms = _surface_terms(image.shape)[:, ::step, ::step].reshape(6, -1)
    kept = sample <= np.percentile(sample, share)
    least = FLOOR * float(np.ptp(np.percentile(sample, [5, 99.9]))) + 1e-12
    for _ in range(8):
        surface = np.linalg.lstsq(terms[:, kept].T, sample[kept], rcond=None)[0]
        left = sample - surface @ terms
        noise = 1.4826 * float(np.median(np.abs(left[kept])))
        noise = max(noise, least)
        kept = np.abs(left) < 3 * noise
    return image - np.tensordot(surface, _surface_terms(image.shape), 1), noise


def _surface_terms(shape: tuple[int, ...]) -> Floats:
    y, x = np.linspace(-1, 1, shape[0])[:, None], np.linspace(-1, 1, shape[1])[None, :]
    return np.array([np.broadcast_to(term, shape) for term in (np.ones((1, 1)), x, y, x * x, x * y, y * y)])


def binned(image: Floats, factor: int) -> Floats:
    """Means of factor × factor pixels; what is left over at the far edges goes."""
    height, width = (size // factor for size in image.shape)
    return np.asarray(image[: height * factor, : width * factor].reshape(height, factor, width, factor).mean(axis=(1, 3)))


def find_disc(image: Floats) -> Blob:
    """The brightest disc that is whole. RingProblem where there is none."""
    factor = max(1, round(max(image.shape) / COARSE_PX))
    coarse = binned(image, factor)
    for share in SKY_SHARES:
        level, noise = less_sky(coarse, share)
        blobs = _blobs(ndimage.gaussian_filter(level, 1.0), noise, factor)
        whole = [blob for blob in blobs if not blob.cut and blob.light > 0.2 * blobs[0].light]
        if whole:
            return whole[0]
    if blobs:
        raise RingProblem("the disc is cut off by the edge of the frame")
    raise RingProblem("no disc of a defocused star stands out from the sky")


def refuse_star_field(image: Floats, blob: Blob) -> None:
    """Raises RingProblem where many other places are as bright as the disc: out of focus every star is a disc of one
    size, so nothing else in the frame can reach the brightness of the brightest. Over 40 random star fields (FWHM 2 to 6 px) that
    had a patch like a disc, hundreds did; over the discs of tests/bench/stars.py, none."""
    factor = max(1, round(max(image.shape) / COARSE_PX))
    coarse = binned(image, factor)
    sky = coarse - less_sky(coarse, SKY_SHARES[0])[0]
    height, width = (size * factor for size in coarse.shape)
    blocks = image[:height, :width].reshape(coarse.shape[0], factor, coarse.shape[1], factor)
    left = (blocks - sky[:, None, :, None]).reshape(height, width)
    noise = 1.4826 * float(np.median(np.abs(left[::5, ::5])))
    y, x = np.ogrid[:height, :width]
    outside = np.hypot(x - blob.x, y - blob.y) > OUTSIDE_RADII * blob.radius
    labels, _ = ndimage.label(outside & (left > max(AS_BRIGHT * blob.brightness, 5 * noise)))
    others = int((np.bincount(labels.ravel())[1:] >= STAR_PX).sum())
    if others > MOST_OTHERS:
        raise RingProblem(
            f"no single disc stands out: {others} other places are as bright, as in a field of stars in focus; "
            "defocus until one bright star is a disc"
        )


def _blobs(smooth: Floats, noise: float, factor: int) -> list[Blob]:
    """Round bright patches of a binned image, the one with most light first."""
    bright = smooth > 4 * noise
    labels, count = ndimage.label(ndimage.binary_dilation(bright, iterations=GAP_PX))
    if not count:
        return []
    light = ndimage.sum_labels(smooth, labels, np.arange(1, count + 1))
    slices = ndimage.find_objects(labels)
    order = np.argsort(-light)[:10]
    blobs = [_blob(smooth, labels == number + 1, slices[number], float(light[number]), factor) for number in order]
    return [blob for blob in blobs if blob is not None]


def _blob(smooth: Floats, inside: NDArray[np.bool_], place: tuple[slice, ...], light: float, factor: int) -> Blob | None:
    """The patch above half of its own brightness; None for what is not round or too small."""
    level = np.percentile(smooth[inside & (smooth > 0)], 75)
    lit = np.pad(np.asarray(inside & (smooth > level / 2))[place], GAP_PX)
    closed = ndimage.binary_fill_holes(ndimage.binary_closing(lit, iterations=_gap(lit)))
    filled = ndimage.binary_opening(closed, iterations=_gap(lit))
    labels, count = ndimage.label(filled)
    if not count:
        return None
    filled = labels == 1 + int(np.argmax(ndimage.sum_labels(filled, labels, np.arange(1, count + 1))))
    rows, columns = np.nonzero(filled)
    high, wide = np.ptp(rows) + 1, np.ptp(columns) + 1
    radius = np.sqrt(filled.sum() / np.pi)
    top, left = rows.min() + place[0].start - GAP_PX, columns.min() + place[1].start - GAP_PX
    cut = top <= 0 or left <= 0 or top + high >= smooth.shape[0] or left + wide >= smooth.shape[1]
    round_enough = max(high, wide) < ROUNDEST * min(high, wide) and filled.sum() > 0.6 * high * wide
    if 2 * radius * factor < SMALLEST_PX or not (round_enough or cut):
        return None
    x, y = columns.mean() + place[1].start - GAP_PX, rows.mean() + place[0].start - GAP_PX
    in_frame = _unbinned(x, factor), _unbinned(y, factor), radius * factor
    x_px, y_px, radius_px = (rounded(length, BLOB_DECIMALS) for length in in_frame)
    return Blob(x_px, y_px, radius_px, float(level), light, bool(cut))


def _gap(lit: NDArray[np.bool_]) -> int:
    """Half the widest vane to be bridged: a share of the patch's own size."""
    return int(np.clip(round(0.04 * max(lit.shape)), 1, GAP_PX))


def _unbinned(place: float, factor: int) -> float:
    return float(place * factor + (factor - 1) / 2)
