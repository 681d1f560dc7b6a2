"""One colour a pixel -> three."""

import numpy as np
from numpy.typing import NDArray

Samples = NDArray[np.float32]
MARGIN_ROWS = 2  # rows beyond a band that its edge rows need, in whole cells of the pattern


def bayer_to_rgb(mosaic: Samples, pattern: str) -> Samples:
    """(height, width) -> (height, width, 3), both sides at least 2. `pattern`: the four letters of the top left 2 × 2,
    by rows.

    Bilinear: a sample that was taken stays as it is, a missing one is the mean of the two or four nearest of its
    colour; beyond an edge the frame is mirrored about its last row, which keeps the pattern. No edge in the picture is
    guessed; the price is a trace of colour around the finest stars.
    """
    height, width = mosaic.shape
    framed = np.pad(mosaic, 1, mode="reflect")
    colours = np.empty((height, width, 3), np.float32)
    for band, colour in enumerate("RGB"):
        taken = _only(framed, pattern, colour)
        cross = taken[:-2, 1:-1] + taken[2:, 1:-1] + taken[1:-1, :-2] + taken[1:-1, 2:]
        colours[..., band] = taken[1:-1, 1:-1] + cross * np.float32(0.25 if colour == "G" else 0.5)
        if colour != "G":
            colours[..., band] += (taken[:-2, :-2] + taken[:-2, 2:] + taken[2:, :-2] + taken[2:, 2:]) * np.float32(0.25)
    return colours


def as_taken(mosaic: Samples, pattern: str) -> list[Samples]:
    """The samples of red, of the first green and of blue, as they were taken."""
    places = [divmod(pattern.index(colour), 2) for colour in "RGB"]
    return [mosaic[row::2, column::2] for row, column in places]


def _only(framed: Samples, pattern: str, colour: str) -> Samples:
    """0 where another colour was sampled. The frame around the mosaic shifts the pattern by one."""
    taken = np.zeros_like(framed)
    for place, letter in enumerate(pattern):
        if letter == colour:
            row, column = (place // 2 + 1) % 2, (place % 2 + 1) % 2
            taken[row::2, column::2] = framed[row::2, column::2]
    return taken
