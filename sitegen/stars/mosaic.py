"""One-shot-colour frames without a demosaic, whose interpolation would smear a star by a pixel or two.

Every colour of the 2 × 2 cell is levelled for itself. Stars are FOUND on super-pixels (the mean of a cell: half the size, no
colour), and MEASURED on the raw green pixels only, each at its own true place in the full-size frame; the other colours get no
weight in the fit. Sizes are therefore in full-resolution pixels, and nothing was interpolated.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

PATTERNS = ("RGGB", "BGGR", "GRBG", "GBRG")  # the cell read from the array's first row and column
CORNERS = ((0, 0), (0, 1), (1, 0), (1, 1))  # row, column within the cell


def checked_pattern(bayer: str | None) -> str | None:
    """The pattern in capitals, None for a mono frame; ValueError for anything else."""
    pattern = bayer.strip().upper() if bayer else None
    if pattern is not None and pattern not in PATTERNS:
        raise ValueError(f"colour pattern {bayer!r} is not known; one of {', '.join(PATTERNS)}")
    return pattern


def planes_of(image: NDArray[np.float32], pattern: str | None) -> Iterator[NDArray[np.float32]]:
    """The image itself, or views of its four colours."""
    if pattern is None:
        yield image
        return
    for row, column in CORNERS:
        yield image[row::2, column::2]


def super_pixels(image: NDArray[np.float32]) -> NDArray[np.float32]:
    """The mean of each cell. Super-pixel (i, j) has its centre at (2i + 0.5, 2j + 0.5) of the frame."""
    return (image[::2, ::2] + image[1::2, ::2] + image[::2, 1::2] + image[1::2, 1::2]) * np.float32(0.25)


def is_measured(y: NDArray[np.intp], x: NDArray[np.intp], pattern: str | None) -> NDArray[np.bool_]:
    """Which pixels the profile is fitted to: green ones, or all of a mono frame."""
    if pattern is None:
        return np.ones(np.broadcast(y, x).shape, bool)
    green = np.array([letter == "G" for letter in pattern]).reshape(2, 2)
    return green[y % 2, x % 2]
