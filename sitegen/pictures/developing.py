"""Linear light -> a picture for the screen, band by band: missing colours filled in, stretched, upright."""

from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pyvips
from numpy.typing import NDArray

from sitegen.pictures.demosaic import MARGIN_ROWS, as_taken, bayer_to_rgb
from sitegen.pictures.fits_pixels import FitsFacts, Rows, fits_facts, fits_rows
from sitegen.pictures.row_file import opened_once, written
from sitegen.pictures.stretch import Drawing, Stretch, drawn, measured, sampling_step

BAND_VALUES = 3_000_000  # a band's values stay near the processor
Samples = NDArray[np.float32]


def developed_fits(path: Path, wishes: Stretch, scratch: Path) -> Callable[[], pyvips.Image]:
    """16 bits, one band or three, anew for each pass; the first stored row at the bottom unless the header says not."""
    facts = fits_facts(path)
    width, height = facts.source.width_px, facts.source.height_px
    channels = 3 if facts.pattern else facts.planes
    with fits_rows(path, facts, scratch) as rows:
        drawing = measured(_sampled(rows, facts), wishes)
        target = written(_bands(rows, facts, drawing), width, height, channels, scratch / "drawn.tif")
    return lambda: opened_once(target)


def developed(fresh: Callable[[], pyvips.Image], wishes: Stretch, scratch: Path) -> Callable[[], pyvips.Image]:
    """The same for a picture that is no FITS, of one band or three, whose author asks for a stretch."""
    image = fresh()
    step = sampling_step(image.width, image.height)
    sample = image.subsample(step, step).numpy().reshape(-1, image.bands).astype(np.float32)
    drawing = measured([sample[:, band] for band in range(image.bands)], wishes)
    bands = (drawn(rows, drawing) for rows in _rows_of(fresh()))
    target = written(bands, image.width, image.height, image.bands, scratch / "drawn.tif")
    return lambda: opened_once(target)


def _sampled(rows: Rows, facts: FitsFacts) -> list[Samples]:
    step = sampling_step(facts.source.width_px, facts.source.height_px)
    sample = rows(0, facts.source.height_px, step)[:, ::step]
    if facts.pattern and min(sample.shape[:2]) > 1:
        return as_taken(sample[..., 0], facts.pattern)
    return [sample[..., plane] for plane in range(sample.shape[-1])] * (3 if facts.pattern else 1)


def _bands(rows: Rows, facts: FitsFacts, drawing: Drawing) -> Iterator[NDArray[np.uint16]]:
    height = facts.source.height_px
    at_once = _rows_at_once(facts.source.width_px * len(drawing.curves))
    tops = range(0, height, at_once)
    for top in reversed(tops) if facts.source.is_flipped else tops:
        band = drawn(_colours(rows, facts, top, min(top + at_once, height)), drawing)
        yield band[::-1] if facts.source.is_flipped else band


def _colours(rows: Rows, facts: FitsFacts, top: int, end: int) -> Samples:
    if facts.pattern is None:
        return rows(top, end)
    first = max(0, top - MARGIN_ROWS)
    mosaic = rows(first, min(facts.source.height_px, end + MARGIN_ROWS))[..., 0]
    return bayer_to_rgb(mosaic, facts.pattern)[top - first : end - first]


def _rows_of(image: pyvips.Image) -> Iterator[Samples]:
    region = pyvips.Region.new(image.cast("float"))
    at_once = _rows_at_once(image.width * image.bands)
    for top in range(0, image.height, at_once):
        count = min(at_once, image.height - top)
        content = region.fetch(0, top, image.width, count)
        yield np.frombuffer(content, np.float32).reshape(count, image.width, image.bands)


def _rows_at_once(row_values: int) -> int:
    """Even, so that each band begins with a whole cell of a Bayer pattern."""
    return max(2, BAND_VALUES // row_values // 2 * 2)
