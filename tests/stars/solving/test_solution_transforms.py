"""What becomes of a solution when its picture changes: tested on numbered pixels that go through numpy or Pillow."""

import numpy as np
import pytest
from astropy.io import fits
from known_headers import SIP_FILE
from PIL import Image, ImageOps

from sitegen.stars.solving import transforms
from sitegen.stars.solving.headers import from_header_keywords
from sitegen.stars.solving.solution import Solution


@pytest.fixture(scope="module")
def bent() -> Solution:
    """A real solution, 100 x 50 pixels, its lens a hundred times worse: shifts of 3 px."""
    header = fits.getheader(SIP_FILE)
    for key in list(header["A_*_*"]) + list(header["B_*_*"]):
        header[key] *= 100
    solution = from_header_keywords(header)
    assert isinstance(solution, Solution)
    return solution


def numbered(solution: Solution) -> np.ndarray:
    """A picture in which every pixel bears its own number."""
    return np.arange(solution.width_px * solution.height_px, dtype=np.int32).reshape(solution.height_px, solution.width_px)


def assert_same_sky(changed: Solution, pixels: np.ndarray, original: Solution) -> None:
    """Every pixel still lies where the pixel of its number lay."""
    assert pixels.shape == (changed.height_px, changed.width_px)
    row, column = np.divmod(pixels, original.width_px)
    y, x = np.mgrid[0:changed.height_px, 0:changed.width_px]
    assert np.abs(np.array(changed.to_sky(x, y)) - original.to_sky(column, row)).max() * 3600 < 1e-6
    back = changed.to_pixel(*original.to_sky(column, row))
    assert np.hypot(back[0] - x, back[1] - y).max() < 1e-5


def test_crop(bent: Solution) -> None:
    """A crop keeps every place."""
    assert_same_sky(transforms.cropped(bent, 13, 7, 60, 31), numbered(bent)[7:38, 13:73], bent)


def test_flips(bent: Solution) -> None:
    """Both flips keep every place and turn the parity over."""
    assert_same_sky(transforms.flipped_left_right(bent), numbered(bent)[:, ::-1], bent)
    assert_same_sky(transforms.flipped_top_bottom(bent), numbered(bent)[::-1], bent)
    assert transforms.flipped_left_right(bent).mirrored is not bent.mirrored


@pytest.mark.parametrize("quarters", [-1, 0, 1, 2, 3, 4])
def test_quarter_turns(bent: Solution, quarters: int) -> None:
    """Quarter turns clockwise keep every place; numpy counts them the other way."""
    turned = transforms.turned_clockwise(bent, quarters)
    assert_same_sky(turned, np.rot90(numbered(bent), -quarters), bent)
    assert turned.mirrored is bent.mirrored


@pytest.mark.parametrize("orientation", range(1, 9))
def test_exif_orientation_as_pillow_understands_it(bent: Solution, orientation: int) -> None:
    """All eight EXIF orientations keep every place, with Pillow's exif_transpose as the authority."""
    stored = Image.fromarray(numbered(bent))
    stored.getexif()[274] = orientation
    assert_same_sky(transforms.oriented(bent, orientation), np.asarray(ImageOps.exif_transpose(stored)), bent)


def test_resize_keeps_outer_edges(bent: Solution) -> None:
    """Thrice the size: the middle of every block of nine is where its pixel was, distortion included."""
    larger = transforms.resized(bent, 300, 150)
    y, x = np.mgrid[0:50, 0:100]
    assert np.abs(np.array(larger.to_sky(3 * x + 1, 3 * y + 1)) - bent.to_sky(x, y)).max() * 3600 < 1e-6
    assert larger.scale_arcsec_px == pytest.approx(bent.scale_arcsec_px / 3, rel=1e-6)


def test_resize_may_squeeze(bent: Solution) -> None:
    """Five times as wide and thrice as high, as no one should: the places stay, distortion included."""
    squeezed = transforms.resized(bent, 500, 150)
    y, x = np.mgrid[0:50, 0:100]
    assert np.abs(np.array(squeezed.to_sky(5 * x + 2, 3 * y + 1)) - bent.to_sky(x, y)).max() * 3600 < 1e-6
