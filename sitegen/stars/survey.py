"""Star shapes over one frame: level, find, sort out, sample, fit, and put the numbers zone by zone."""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.stars.detection import Detections, Levelled, detect, level
from sitegen.stars.digits import SIZE_DECIMALS, rounded, significant
from sitegen.stars.moffat import MoffatFits, fit_moffats
from sitegen.stars.mosaic import checked_pattern, is_measured
from sitegen.stars.records import Rejected, StarSurvey
from sitegen.stars.sorting import Sorted, clip_level, hot_pixels, sort_out, windows_at
from sitegen.stars.zones import COLUMNS, ROWS, Measured, overall, zone_numbers, zones_of

STARS_PER_ZONE = 40  # the brightest; with more the median gets no surer than the change across the zone lets it be
SMALLEST_PX = 64
COUNT_DIGITS = 6
MOMENTS_OVERSTATE = 1.25  # what moments make of a Moffat profile's FWHM, roughly: for a first guess only
REACHES_PX = (5, 24)  # half a cut-out, least and most
WORST_RESIDUAL = 0.1  # of the peak, rms: nebula knots, double stars, trails


def star_survey(
    pixels: NDArray[np.generic], *, scale_arcsec_px: float | None, bayer: str | None = None, saturation: float | None = None
) -> StarSurvey:
    """Measure the stars of a frame, `pixels` of shape (height, width), row 0 at the bottom (see `records` for all conventions).

    `bayer`: the colour pattern of a RAW one-shot-colour frame, read from the array's first row ("RGGB"); None for mono or a
    single colour. `saturation`: counts at which the sensor clips; without it the frame is asked. Any whole or floating type; NaN
    is left out. Raises SurveyProblem (a sentence for the author) where nothing can be measured, ValueError for the wrong kind of
    array or pattern. Size of the error (tests/bench/stars.py): at most 1 % of a zone's FWHM; of its elongation 0.006 in 99 of 100
    zones, 0.025 at worst, in a zone of few faint stars. Of undersampled frames, from 1.2 px up: 0.7 % and 0.008 over the frame.
    """
    looked = _look(pixels, checked_pattern(bayer), saturation)
    fwhm, elongation, angle = overall(looked.stars)
    return StarSurvey(
        width_px=looked.shape[1],
        height_px=looked.shape[0],
        scale_arcsec_px=scale_arcsec_px,
        bayer=looked.pattern,
        detected=len(looked.sorted_out.usable),
        usable=int(looked.sorted_out.usable.sum()),
        star_count=len(looked.stars.x),
        fwhm_px=fwhm,
        fwhm_arcsec=None if fwhm is None or scale_arcsec_px is None else rounded(fwhm * scale_arcsec_px, SIZE_DECIMALS),
        elongation=elongation,
        angle_deg=angle,
        background=significant(looked.levelled.background, COUNT_DIGITS),
        noise=significant(looked.levelled.noise, COUNT_DIGITS),
        saturation=looked.clip,
        rejected=_rejected(looked),
        zones=zones_of(looked.stars, looked.shape, scale_arcsec_px),
    )


def measured_stars(pixels: NDArray[np.generic], *, bayer: str | None = None, saturation: float | None = None) -> Measured:
    """The stars that a survey of the same frame rests on, one by one: place, FWHM in px and shape vector. Raises as it does."""
    return _look(pixels, checked_pattern(bayer), saturation).stars


class _Looked(Struct, frozen=True):
    """A frame once looked at. `fitted`: how many stars a profile was fitted to; `stars`: those whose fit is believable."""

    shape: tuple[int, ...]
    pattern: str | None
    levelled: Levelled
    clip: float | None
    sorted_out: Sorted
    fitted: int
    stars: Measured


def _look(pixels: NDArray[np.generic], pattern: str | None, saturation: float | None) -> _Looked:
    raw = _checked(pixels, pattern)
    levelled = level(raw, pattern)
    detections = detect(levelled, pattern)
    clip = clip_level(raw, detections, saturation)
    fwhm = first_fwhm(detections, levelled)
    reach = int(np.clip(np.ceil(2.1 * fwhm) + 1, *REACHES_PX))
    sorted_out = sort_out(detections, levelled, raw, fwhm, reach, clip)
    sample = brightest(detections, sorted_out.usable, raw.shape)
    stars = _fit(levelled, detections, sample, pattern, fwhm, reach)
    return _Looked(raw.shape, pattern, levelled, clip, sorted_out, len(sample), stars)


def _checked(pixels: NDArray[np.generic], pattern: str | None) -> NDArray[np.generic]:
    if pixels.ndim != 2 or min(pixels.shape) < SMALLEST_PX:
        raise ValueError(f"star shapes need one plane of at least {SMALLEST_PX} × {SMALLEST_PX} px, not shape {pixels.shape}")
    if pattern is None:
        return pixels
    return pixels[: pixels.shape[0] // 2 * 2, : pixels.shape[1] // 2 * 2]


def first_fwhm(detections: Detections, levelled: Levelled) -> float:
    """A guess at the stars' FWHM in px, good to a third: what sizes cut-outs and distances."""
    clear = (detections.peak > 20 * levelled.search_noise) & ~detections.merged
    clear &= ~hot_pixels(windows_at(levelled.pixels, detections.x, detections.y, 3))
    if clear.sum() < 3:
        return 3.0
    return float(np.clip(np.median(detections.moment_fwhm[clear]) / MOMENTS_OVERSTATE, 1.0, 15.0))


def brightest(detections: Detections, usable: NDArray[np.bool_], shape: tuple[int, ...]) -> NDArray[np.intp]:
    """Indices of at most STARS_PER_ZONE usable stars in each zone, the brightest first."""
    order = np.flatnonzero(usable)[np.argsort(-detections.peak[usable], kind="stable")]
    zones = zone_numbers(detections.x[order], detections.y[order], shape)
    chosen = [order[zones == zone][:STARS_PER_ZONE] for zone in range(COLUMNS * ROWS)]
    return np.concatenate(chosen)


def _fit(
    levelled: Levelled, detections: Detections, sample: NDArray[np.intp], pattern: str | None, fwhm: float, reach: int
) -> Measured:
    """The sampled stars whose profile is believable."""
    if not len(sample):
        return Measured(*np.zeros((5, 0)))
    x, y = np.rint(detections.x[sample]), np.rint(detections.y[sample])
    cutouts = windows_at(levelled.pixels, x, y, reach)
    guess = (detections.moment_fwhm[sample] / MOMENTS_OVERSTATE).clip(fwhm / 2, 2 * fwhm)
    fits = fit_moffats(cutouts, _weights(levelled, x, y, pattern, reach), levelled.noise, guess)
    stars = Measured(x + fits.x, y + fits.y, fits.fwhm_px, fits.e1, fits.e2)
    return stars.of(believable(fits, levelled.noise))


def _weights(
    levelled: Levelled, x: NDArray[np.float64], y: NDArray[np.float64], pattern: str | None, reach: int
) -> NDArray[np.float32]:
    around = np.arange(-reach, reach + 1)
    rows, columns = y.astype(np.intp)[:, None, None] + around[:, None], x.astype(np.intp)[:, None, None] + around
    measured = is_measured(rows, columns, pattern) & (np.hypot(around, around[:, None]) <= reach + 0.5)
    if levelled.finite is not None:
        measured &= levelled.finite[rows, columns]
    return measured.astype(np.float32)


def believable(fits: MoffatFits, noise: float) -> NDArray[np.bool_]:
    """Fits that found one star where one was detected, of a size like the others', leaving little behind."""
    typical = np.median(fits.fwhm_px)
    good = (fits.fwhm_px > 0.4 * typical) & (fits.fwhm_px < 2.5 * typical) & (fits.peak > 5 * noise)
    good &= (np.hypot(fits.x, fits.y) < 1 + fits.fwhm_px / 2) & (np.hypot(fits.e1, fits.e2) < 0.6)
    return np.asarray(good & (fits.residual < WORST_RESIDUAL + 2 * noise / fits.peak))


def _rejected(looked: _Looked) -> Rejected:
    reasons = ("hot_pixel", "edge", "saturated", "blended", "faint")
    counts = {reason: int(getattr(looked.sorted_out, reason).sum()) for reason in reasons}
    return Rejected(**counts, misfit=looked.fitted - len(looked.stars.x))
