"""A picture cut to given proportions: filled, from its middle, nothing squeezed."""

import numpy as np
import pytest
import pyvips

from sitegen.pictures.cropping import covered


@pytest.mark.parametrize(("width_px", "height_px", "kept_x", "kept_y"), [
    (100, 100, (100, 300), (0, 200)),  # a square of a wide picture: the sides go
    (400, 100, (0, 400), (50, 150)),  # wider still: top and bottom go
])
def test_the_middle_is_kept_and_the_rest_cut_off(width_px: int, height_px: int, kept_x: tuple[int, int],
                                                 kept_y: tuple[int, int]) -> None:
    """Of 400 × 200 px whose red is the column and whose green is the row: the ends of what is kept (worked by hand), to 2 px of
    resampling."""
    down, across = np.mgrid[0:200, 0:400]
    pixels = np.stack([across / 2, down, np.zeros((200, 400))], axis=2).astype(np.uint8)
    cut = covered(pyvips.Image.new_from_array(pixels), width_px, height_px).numpy().astype(float)
    assert cut.shape[:2] == (height_px, width_px)
    seen = [cut[height_px // 2, 0, 0] * 2, cut[height_px // 2, -1, 0] * 2, cut[0, 0, 1], cut[-1, 0, 1]]
    assert seen == pytest.approx([kept_x[0], kept_x[1] - 1, kept_y[0], kept_y[1] - 1], abs=2.5)


def test_a_smaller_picture_is_enlarged_to_fill() -> None:
    """20 × 30 px at 60 × 60: exactly that size."""
    assert covered(pyvips.Image.black(20, 30), 60, 60).width == 60
    assert covered(pyvips.Image.black(20, 30), 60, 60).height == 60
