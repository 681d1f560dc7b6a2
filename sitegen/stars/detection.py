"""Sky level and detections of a frame. The pixels are done by sep, the source-extraction library."""

import numpy as np
import sep
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.stars.mosaic import planes_of, super_pixels
from sitegen.stars.shapes import Floats

MESH_PX = 64  # the sky is taken from boxes of this size
THRESHOLDS = (5.0, 10.0, 25.0, 100.0)  # sigma; the higher ones only where nebulosity overflows the extraction
GAUSS = 2.354820045  # FWHM of a Gaussian over its sigma


class SurveyProblem(ValueError):
    """A frame in which stars cannot be measured; the text is a sentence for its author."""


class Levelled(Struct, frozen=True):
    """`pixels`: the frame less its sky, float32 (height, width). `noise`: 1 sigma of a measured (green or mono) pixel."""

    pixels: NDArray[np.float32]
    finite: NDArray[np.bool_] | None  # None where every pixel is
    background: float
    noise: float
    search_noise: float  # of a super-pixel, or of a pixel of a mono frame


class Detections(Struct, frozen=True):
    """Per detection, shape (n,): place in frame pixels, peak above the sky, FWHM px that a Gaussian of its moments would have."""

    x: Floats
    y: Floats
    peak: Floats
    moment_fwhm: Floats
    merged: NDArray[np.bool_]


def level(pixels: NDArray[np.generic], pattern: str | None) -> Levelled:
    """Take the sky away, in each colour for itself. A native float32 copy is made; the frame handed in stays as it was."""
    image = np.array(pixels, dtype=np.float32, order="C")
    finite = _finite(image)
    if np.ptp(image[::7, ::5]) == 0:
        raise SurveyProblem("the sky of the frame has no noise at all, so nothing can be told from it")
    skies = [_level_plane(plane, finite) for plane in planes_of(image, pattern)]
    measured = [sky for sky, letter in zip(skies, pattern or "G", strict=True) if letter == "G"]
    background, noise = np.mean(measured, axis=0)
    search = np.sqrt(sum(rms**2 for _, rms in skies)) / len(skies)
    return Levelled(image, finite, float(background), float(noise), float(search))


def _finite(image: NDArray[np.float32]) -> NDArray[np.bool_] | None:
    if np.isfinite(image.sum(dtype=np.float64)):
        return None
    finite = np.isfinite(image)
    if finite.mean() < 0.5:
        raise SurveyProblem("more than half of the frame's pixels are not numbers")
    image[~finite] = np.median(image[finite])
    return finite


def _level_plane(plane: NDArray[np.float32], finite: NDArray[np.bool_] | None) -> tuple[float, float]:
    """Sky and noise of one colour; its pixels are levelled in place."""
    whole = plane.flags.c_contiguous
    data = plane if whole else np.ascontiguousarray(plane)
    sky = sep.Background(data, bw=min(MESH_PX, data.shape[1]), bh=min(MESH_PX, data.shape[0]))
    sky.subfrom(data)
    if not whole:
        plane[...] = data
    return float(sky.globalback), float(sky.globalrms)


def detect(levelled: Levelled, pattern: str | None) -> Detections:
    """Everything that rises above the sky, hot pixels included."""
    image = levelled.pixels if pattern is None else super_pixels(levelled.pixels)
    sources = _extract(image, levelled.search_noise)
    step, shift = (1, 0.0) if pattern is None else (2, 0.5)
    return Detections(
        step * sources["x"] + shift,
        step * sources["y"] + shift,
        sources["peak"].astype(np.float64),
        step * GAUSS * np.sqrt(sources["a"] * sources["b"]),
        (sources["flag"] & sep.OBJ_MERGED) > 0,
    )


def _extract(image: NDArray[np.float32], noise: float) -> NDArray[np.void]:
    """sep.extract at the lowest threshold that its buffers stand."""
    for threshold in THRESHOLDS:
        try:
            sources: NDArray[np.void] = sep.extract(image, threshold * noise)
        except Exception as overflow:  # sep raises the bare class, telling only by its text
            if "full" not in str(overflow) and "overflow" not in str(overflow):
                raise
        else:
            return sources
    raise SurveyProblem("too much of the frame is bright: no stars can be told from it")
