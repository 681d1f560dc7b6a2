"""Where a picture of the diary points: as its author says, as its file says, or as its stars say; else why it is not known."""

from collections.abc import Iterator, Sequence
from math import cos, radians, sin
from pathlib import Path

import numpy as np
import numpy.typing as npt

from sitegen.catalogue.star_field import stars_to_solve
from sitegen.diary.entry import PointingSolution
from sitegen.pictures.avm_reading import spatial_keywords
from sitegen.pictures.fits_pixels import fits_header
from sitegen.pictures.limits import as_picture_problems
from sitegen.pictures.opening import OpenPicture, opened
from sitegen.pictures.pointing_records import Pointing, PointingPrior, ScalePrior
from sitegen.pictures.records import PictureSettings, PictureSource
from sitegen.pictures.resizing import reduced
from sitegen.pictures.source import picture_facts
from sitegen.stars.solving.avm import from_avm
from sitegen.stars.solving.detection import DetectedStars, detect_stars
from sitegen.stars.solving.headers import from_header_keywords
from sitegen.stars.solving.scene import SolvePrior
from sitegen.stars.solving.solution import LOOKED_AT_PX, NotSolved, Solution
from sitegen.stars.solving.solver import solve, too_wide
from sitegen.stars.solving.transforms import flipped_top_bottom, oriented, resized

SAME_SHAPE = 0.06  # a registered stack loses a rim
SAME_SCALE = 0.03  # within what the solver allows anyhow
LOOKED_FOR_AT_MOST = 6
NO_TARGET = "the entry has no target with a fixed place"
NO_TRAIN = "no rig tells the scale"


def point(path: Path, prior: PointingPrior, settings: PictureSettings, scratch_in: Path) -> Pointing:
    """Of the author's solution, the FITS header, AVM and the stars, the first that says it. Deterministic.
    Raises PictureProblem where the file is no picture."""
    source = picture_facts(path)
    if prior.stated is not None:
        return Pointing(stated_solution(prior.stated, source.width_px, source.height_px), "author")
    read = _as_the_file_says(path, source)
    if read is not None:
        return read
    if not prior.by_stars:
        return Pointing(None, None, "its stars were not asked")
    return _as_the_stars_say(path, source, prior, settings, scratch_in)


def stated_solution(stated: PointingSolution, width_px: int, height_px: int) -> Solution:
    """The author's words for a picture of that size as a solution about its centre."""
    scale, turn = stated.scale_arcsec_px / 3600, radians(stated.rotation_deg)
    right = 1 if stated.mirrored else -1  # with north up, east lies to the left unless mirrored
    cd = (right * scale * cos(turn), -scale * sin(turn)), (-right * scale * sin(turn), -scale * cos(turn))
    centre = (width_px - 1) / 2, (height_px - 1) / 2
    return Solution(width_px, height_px, stated.ra_deg % 360, stated.dec_deg, *centre, cd)


def _as_the_file_says(path: Path, source: PictureSource) -> Pointing | None:
    if source.format == "fits":
        solution = from_header_keywords(fits_header(path), source.width_px, source.height_px)
        if isinstance(solution, NotSolved):
            return None
        return Pointing(flipped_top_bottom(solution) if source.is_flipped else solution, "header")
    with as_picture_problems():
        keywords = spatial_keywords(path, source)
    sides = (source.height_px, source.width_px) if source.orientation > 4 else (source.width_px, source.height_px)
    stated = from_avm(keywords, *sides)
    return None if isinstance(stated, NotSolved) else Pointing(oriented(stated, source.orientation), "avm")


def _as_the_stars_say(
    path: Path, source: PictureSource, prior: PointingPrior, settings: PictureSettings, scratch_in: Path
) -> Pointing:
    size = source.width_px, source.height_px
    priors = list(_priors(prior, *size))[:LOOKED_FOR_AT_MOST]
    if not priors:
        return Pointing(None, None, NO_TRAIN if prior.places else NO_TARGET)
    wide = [refused for solve_prior in priors if (refused := too_wide(*size, solve_prior)) is not None]
    if len(wide) == len(priors):
        return Pointing(None, None, wide[0].reason)
    with opened(path, settings, scratch_in) as picture:
        pixels = _small(picture)
    stars, reason = detect_stars(pixels), None
    for solve_prior in priors:
        solution = _solved(stars, (pixels.shape[1], pixels.shape[0]), size, solve_prior)
        if isinstance(solution, Solution):
            return Pointing(resized(solution, *size), "stars")
        reason = reason or solution.reason
    return Pointing(None, None, reason)


def _small(picture: OpenPicture) -> npt.NDArray[np.generic]:
    image = picture.fresh()
    shrink = min(1.0, LOOKED_AT_PX / max(image.width, image.height))
    pixels = reduced(image, max(1, round(image.width * shrink)), max(1, round(image.height * shrink))).numpy()
    return np.asarray(pixels)


def _solved(
    stars: DetectedStars, seen: tuple[int, int], size: tuple[int, int], prior: SolvePrior
) -> Solution | NotSolved:
    shrunk = SolvePrior(prior.ra_deg, prior.dec_deg, prior.scale_arcsec_px * size[0] / seen[0])
    field = stars_to_solve(prior.ra_deg, prior.dec_deg, shrunk.search_radius_deg(*seen))
    return solve(stars, *seen, field.ra_deg, field.dec_deg, field.magnitude, shrunk)


def _priors(prior: PointingPrior, width_px: int, height_px: int) -> Iterator[SolvePrior]:
    """Every scale the picture may have at every place it may show, the likeliest first."""
    for scale in likely_scales(width_px, height_px, prior.trains):
        yield from (SolvePrior(ra_deg, dec_deg, scale) for ra_deg, dec_deg in prior.places)


def likely_scales(width_px: int, height_px: int, trains: Sequence[ScalePrior]) -> tuple[float, ...]:
    """Arcseconds per picture pixel: of whole frames resized, for pictures of a frame's shape; then of frames cropped and
    not resized. Scales the solver cannot tell apart are given once."""
    longer, shape = max(width_px, height_px), max(width_px, height_px) / min(width_px, height_px)
    frames = [(max(train.width_px, train.height_px), min(train.width_px, train.height_px), train) for train in trains]
    whole = [train.scale_arcsec_px * length / longer for length, width, train in frames
             if abs(shape * width / length - 1) <= SAME_SHAPE]
    cropped = [train.scale_arcsec_px for length, _, train in frames if longer <= length]
    scales: list[float] = []
    for scale in (*whole, *cropped):
        if all(abs(scale / other - 1) > SAME_SCALE for other in scales):
            scales.append(scale)
    return tuple(scales)
