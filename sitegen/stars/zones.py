"""The frame's 5 × 3 zones, and what the stars in one of them say together."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sitegen.stars.records import Zone
from sitegen.stars.shapes import Floats, angle_deg_of, elongation_of, scatter_of

COLUMNS, ROWS = 5, 3
FEWEST_STARS = 5  # in a zone: under it the median is a guess


@dataclass(frozen=True, slots=True)
class Measured:
    """Stars, one value each, shape (n,): place px, FWHM px, shape vector."""

    x: Floats
    y: Floats
    fwhm_px: Floats
    e1: Floats
    e2: Floats

    def of(self, chosen: NDArray[np.bool_]) -> "Measured":
        return Measured(self.x[chosen], self.y[chosen], self.fwhm_px[chosen], self.e1[chosen], self.e2[chosen])


def zone_numbers(x: Floats, y: Floats, shape: tuple[int, ...]) -> NDArray[np.intp]:
    """Which zone a place lies in: 0 at the bottom left, counting along the row."""
    height, width = shape
    column = ((x + 0.5) * COLUMNS / width).astype(np.intp).clip(0, COLUMNS - 1)
    row = ((y + 0.5) * ROWS / height).astype(np.intp).clip(0, ROWS - 1)
    return np.asarray(row * COLUMNS + column)


def zones_of(stars: Measured, shape: tuple[int, ...], scale_arcsec_px: float | None) -> tuple[Zone, ...]:
    """All 15, those without enough stars too."""
    numbers = zone_numbers(stars.x, stars.y, shape)
    return tuple(
        zone_of(stars.of(numbers == number), _centre(number, shape), scale_arcsec_px) for number in range(COLUMNS * ROWS)
    )


def _centre(number: int, shape: tuple[int, ...]) -> tuple[float, float]:
    row, column = divmod(number, COLUMNS)
    return (column + 0.5) * shape[1] / COLUMNS - 0.5, (row + 0.5) * shape[0] / ROWS - 0.5


def zone_of(stars: Measured, centre: tuple[float, float], scale_arcsec_px: float | None) -> Zone:
    """Medians over the stars; only their number where there are too few."""
    count = len(stars.x)
    if count < FEWEST_STARS:
        return Zone(*centre, count)
    fwhm, e1, e2 = (float(np.median(values)) for values in (stars.fwhm_px, stars.e1, stars.e2))
    return Zone(
        *centre,
        stars=count,
        fwhm_px=fwhm,
        fwhm_arcsec=None if scale_arcsec_px is None else fwhm * scale_arcsec_px,
        elongation=elongation_of(e1, e2),
        angle_deg=angle_deg_of(e1, e2),
        scatter_px=scatter_of(stars.fwhm_px),
        scatter_e=float(np.hypot(scatter_of(stars.e1), scatter_of(stars.e2)) / np.sqrt(2)),
    )
