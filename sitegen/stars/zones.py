"""The frame's 5 × 3 zones, and what the stars in one of them say together."""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.stars.digits import COMPONENT_DECIMALS, SIZE_DECIMALS, direction, rounded
from sitegen.stars.records import Zone
from sitegen.stars.shapes import Floats, angle_deg_of, elongation_of, scatter_of

COLUMNS, ROWS = 5, 3
FEWEST_STARS = 10
"""In a zone: with fewer, the elongation of one in 900 random zones was off by more than 0.02 (tests/bench/stars.py)."""
FEWEST_FOR_TREND = 40


class Measured(Struct, frozen=True):
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
    centred = to_zone_centres(stars, numbers, shape)
    return tuple(
        _zone(centred.of(numbers == number), centre_of(number, shape), scale_arcsec_px) for number in range(COLUMNS * ROWS)
    )


def to_zone_centres(stars: Measured, numbers: NDArray[np.intp], shape: tuple[int, ...]) -> Measured:
    """The stars as they would be at the centre of their zone, by the smooth change over the whole frame.

    Without it a median would hold wherever the sampled stars happen to lie, and its scatter would be the field's. The change is a
    second-order surface through all stars, and only its differences within a zone are used. Fewer than FEWEST_FOR_TREND stars
    carry no surface, and stay as they are.
    """
    if len(stars.x) < FEWEST_FOR_TREND:
        return stars
    centres = np.array([centre_of(number, shape) for number in range(COLUMNS * ROWS)])[numbers]
    here, there = _surface(stars.x, stars.y, shape), _surface(centres[:, 0], centres[:, 1], shape)
    moved = (values + (there - here) @ _steady_fit(here, values) for values in (stars.fwhm_px, stars.e1, stars.e2))
    return Measured(stars.x, stars.y, *moved)


def _surface(x: Floats, y: Floats, shape: tuple[int, ...]) -> Floats:
    u, v = 2 * x / shape[1] - 1, 2 * y / shape[0] - 1
    return np.column_stack([np.ones_like(u), u, v, u * u, u * v, v * v])


def _steady_fit(design: Floats, values: Floats) -> Floats:
    """Least squares in which strays lose their weight."""
    weights = np.ones_like(values)
    for _ in range(5):
        root = np.sqrt(weights)
        terms = np.asarray(np.linalg.lstsq(design * root[:, None], values * root, rcond=None)[0], np.float64)
        left = values - design @ terms
        weights = 1 / (1 + (left / (2 * scatter_of(left) + 1e-9)) ** 2)
    return terms


def centre_of(number: int, shape: tuple[int, ...]) -> tuple[float, float]:
    row, column = divmod(number, COLUMNS)
    return (column + 0.5) * shape[1] / COLUMNS - 0.5, (row + 0.5) * shape[0] / ROWS - 0.5


def _zone(stars: Measured, centre: tuple[float, float], scale_arcsec_px: float | None) -> Zone:
    count = len(stars.x)
    if count < FEWEST_STARS:
        return Zone(*centre, count)
    fwhm, e1, e2 = _medians(stars)
    return Zone(
        *centre,
        stars=count,
        fwhm_px=fwhm,
        fwhm_arcsec=None if scale_arcsec_px is None else rounded(fwhm * scale_arcsec_px, SIZE_DECIMALS),
        elongation=_elongation(e1, e2),
        angle_deg=_angle_deg(e1, e2),
        scatter_px=rounded(scatter_of(stars.fwhm_px), SIZE_DECIMALS),
        scatter_e=rounded(np.hypot(scatter_of(stars.e1), scatter_of(stars.e2)) / np.sqrt(2), COMPONENT_DECIMALS),
    )


def _elongation(e1: float, e2: float) -> float:
    return rounded(elongation_of(e1, e2), SIZE_DECIMALS)


def _angle_deg(e1: float, e2: float) -> float | None:
    angle_deg = angle_deg_of(e1, e2)
    return None if angle_deg is None else direction(angle_deg, 180.0)


def overall(stars: Measured) -> tuple[float | None, float | None, float | None]:
    """FWHM px, elongation and angle over the whole frame: plain medians; None with too few stars."""
    if len(stars.x) < FEWEST_STARS:
        return None, None, None
    fwhm, e1, e2 = _medians(stars)
    return fwhm, _elongation(e1, e2), _angle_deg(e1, e2)


def _medians(stars: Measured) -> tuple[float, float, float]:
    fwhm, e1, e2 = (float(np.median(values)) for values in (stars.fwhm_px, stars.e1, stars.e2))
    return rounded(fwhm, SIZE_DECIMALS), e1, e2
