"""Stars of a finished picture (stretched, processed, JPEG) or a linear frame: places and brightness order.

Source extraction is that of `sep` (Barbary 2016, JOSS 1, 58; after Bertin & Arnouts 1996). Fluxes of a
stretched picture are no photometry: they only say which star is the brighter one, which is all that the
solver asks of them.
"""

import numpy as np
import numpy.typing as npt
import sep
from msgspec import Struct

from sitegen.stars.solving.solution import LOOKED_AT_PX
from sitegen.stars.solving.star_likeness import star_like, steepest_slopes
from sitegen.stars.solving.tangent_plane import FloatArray

_ABOVE_NOISE = 5.0
_SMALLEST_PX = 5
_LEAST_AXIS_RATIO = 0.4
_LARGEST_SHARE = 0.005
_STARS_AT_MOST = 5000
_STRIP_ROWS = 128


class DetectedStars(Struct, frozen=True):
    """Stars of a picture, brightest first, as arrays of one length.

    x_px, y_px: picture pixels (0 at the centre of the first pixel, y down); flux: above the background,
    in the picture's own unit, only good for order: what is too soft for a star comes behind all that is not.
    """

    x_px: FloatArray
    y_px: FloatArray
    flux: FloatArray

    def __len__(self) -> int:
        return len(self.x_px)


def detect_stars(pixels: npt.NDArray[np.generic]) -> DetectedStars:
    """Stars in an array (height, width), (height, width, 1 to 4: grey, RGB, alpha last) or (3, height, width).

    Places are good to about 0.2 px, and to 0.2 binned px in pictures longer than 2400 px, which are binned
    first. At most 5000 stars, brightest first; none from a flat picture. NaN counts as background.
    """
    rows = _rows_first(pixels)
    binning = -(-max(rows.shape[:2]) // LOOKED_AT_PX)
    small = _filled(_brightness(rows, binning))
    if min(small.shape) < 8 or np.ptp(small) == 0:
        return DetectedStars(np.empty(0), np.empty(0), np.empty(0))
    sources, weight = _weighed(small, _step_of(pixels) / binning)
    order = np.lexsort((sources["x"], sources["y"], -weight))[:_STARS_AT_MOST]
    place = [(sources[axis][order] + 0.5) * binning - 0.5 for axis in "xy"]
    return DetectedStars(place[0], place[1], weight[order])


def _weighed(plane: npt.NDArray[np.float32], step: float) -> tuple[npt.NDArray[np.void], FloatArray]:
    """Sources that may be stars, and their fluxes; those of soft ones are made smaller than that of any steep one."""
    sources, segments = _extracted(plane, step)
    slopes = steepest_slopes(plane, segments, len(sources))
    possible = _star_shaped(sources, plane.size)
    sources, slopes = sources[possible], slopes[possible]
    flux = sources["flux"].astype(np.float64)
    steep = star_like(sources["peak"].astype(np.float64), slopes)
    if steep.any() and not steep.all():
        flux[~steep] *= 0.5 * flux[steep].min() / flux[~steep].max()
    return sources, flux


def _rows_first(pixels: npt.NDArray[np.generic]) -> npt.NDArray[np.generic]:
    """(height, width, colours) without alpha; nothing is copied."""
    if pixels.ndim not in (2, 3):
        raise ValueError(f"a picture has 2 or 3 axes, not {pixels.ndim}")
    if pixels.ndim == 2:
        return pixels[:, :, None]
    if pixels.shape[0] == 3 and pixels.shape[2] > 4:
        return np.moveaxis(pixels, 0, 2)
    return pixels[:, :, : 3 if pixels.shape[2] >= 3 else 1]


def _brightness(rows: npt.NDArray[np.generic], binning: int) -> npt.NDArray[np.float32]:
    """The mean of the colours and of blocks of pixels, made in strips, so that large pictures cost no memory."""
    height, width = (side // binning for side in rows.shape[:2])
    small = np.empty((height, width), dtype=np.float32)
    for top in range(0, height, _STRIP_ROWS):
        strip = rows[top * binning: min(top + _STRIP_ROWS, height) * binning, : width * binning]
        grey = strip.mean(axis=2, dtype=np.float32)
        small[top: top + _STRIP_ROWS] = grey.reshape(-1, binning, width, binning).mean(axis=(1, 3))
    return small


def _filled(plane: npt.NDArray[np.float32]) -> npt.NDArray[np.float32]:
    """With the median in place of what is not finite."""
    finite = np.isfinite(plane)
    return plane if finite.all() else np.where(finite, plane, np.median(plane[finite]) if finite.any() else np.float32(0))


def _step_of(pixels: npt.NDArray[np.generic]) -> float:
    """The least difference that means something: one count of an integer picture, else nothing."""
    return 1.0 if np.issubdtype(pixels.dtype, np.integer) else 0.0


def _extracted(plane: npt.NDArray[np.float32], step: float) -> tuple[npt.NDArray[np.void], npt.NDArray[np.int32]]:
    """The records of sep.extract and the map of their pixels, numbered from 1, with the noise from the background mesh and
    never below half a step.

    The threshold doubles while a crowded picture overflows the extraction.
    """
    mesh = int(np.clip(max(plane.shape) // 32, 16, 64))
    background = sep.Background(plane, bw=mesh, bh=mesh)
    noise = np.maximum(background.rms(), max(step / 2, 1e-6 * float(np.ptp(plane))))
    sep.set_extract_pixstack(max(300_000, plane.size))
    above = _ABOVE_NOISE
    while True:
        try:
            sources, segments = sep.extract(plane - background.back(), above, err=noise, minarea=_SMALLEST_PX,
                                            deblend_cont=0.02, filter_type="conv", segmentation_map=True)
        except Exception as overflow:  # sep raises nothing more specific
            if "deblending overflow" not in str(overflow) or above > 1e4:
                raise
            above *= 2
        else:
            return np.asarray(sources), np.asarray(segments)


def _star_shaped(sources: npt.NDArray[np.void], picture_px: int) -> npt.NDArray[np.bool_]:
    """Neither streaks nor patches too large to be the blob of one star."""
    round_enough = sources["b"] >= _LEAST_AXIS_RATIO * sources["a"]
    small_enough = sources["npix"] <= max(_LARGEST_SHARE * picture_px, 400)
    possible: npt.NDArray[np.bool_] = round_enough & small_enough & (sources["flux"] > 0)
    return possible
