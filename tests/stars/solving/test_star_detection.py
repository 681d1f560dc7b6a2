"""Detection on rendered stars with known places."""

import numpy as np
import pytest

from sitegen.stars.solving.detection import detect_stars
from sitegen.stars.solving.star_likeness import star_like


def field(width: int = 400, height: int = 300, count: int = 25) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Linear counts with Gaussian stars (FWHM 3.5 px) of falling brightness on noise, and their places."""
    luck = np.random.default_rng(3)
    cells = luck.permutation(80)[:count]
    x, y = 40.0 * (cells % 10) + luck.uniform(12, 28, count), 37.5 * (cells // 10) + luck.uniform(12, 25, count)
    down, across = np.mgrid[0:height, 0:width]
    picture = 200 + luck.normal(0, 5, (height, width))
    for column, row, peak in zip(x, y, np.geomspace(4000, 150, count), strict=True):
        picture += peak * np.exp(-((across - column) ** 2 + (down - row) ** 2) / (2 * 1.5**2))
    return picture, x, y


def stretched(linear: np.ndarray) -> np.ndarray:
    """A strong stretch to 8 bits: the brightest stars saturate."""
    return np.rint(255 * np.clip(np.arcsinh((linear - 190) / 50) / 4, 0, 1)).astype(np.uint8)


FORMS = {
    "linear float": lambda picture: picture.astype(np.float32),
    "linear 16 bit": lambda picture: picture.astype(np.uint16),
    "big-endian FITS": lambda picture: picture.astype(">i2"),
    "stretched 8 bit": stretched,
    "RGB": lambda picture: np.stack([stretched(picture)] * 3, axis=2),
    "RGBA": lambda picture: np.stack([stretched(picture)] * 3 + [np.full(picture.shape, 255, np.uint8)], axis=2),
    "planes first": lambda picture: np.stack([stretched(picture)] * 3),
}


@pytest.mark.parametrize("form", FORMS)
def test_stars_are_found_where_they_are(form: str) -> None:
    """All 25 stars and nothing else, to 0.3 px (noise of the faintest: peak 30 times the noise), whatever the picture's form."""
    picture, x, y = field()
    stars = detect_stars(FORMS[form](picture))
    assert len(stars) == len(x)
    distance = np.hypot(stars.x_px[:, None] - x, stars.y_px[:, None] - y).min(axis=1)
    assert distance.max() < 0.3


def test_brightest_first() -> None:
    """Also where a stretch has made the brightest equally white, the order is that of brightness."""
    picture, x, _ = field()
    stars = detect_stars(stretched(picture))
    found = np.abs(stars.x_px[:, None] - x).argmin(axis=1)
    assert np.abs(found - np.arange(len(x))).max() <= 2
    assert (np.diff(stars.flux) <= 0).all()


def test_large_pictures_are_binned_without_a_shift() -> None:
    """A picture 9 times as large, each pixel drawn as 9 x 9, gives the same stars at 9 times the places."""
    picture, x, y = field()
    stars = detect_stars(np.kron(stretched(picture), np.ones((9, 9), dtype=np.uint8)))
    distance = np.hypot(stars.x_px[:, None] - (9 * x + 4), stars.y_px[:, None] - (9 * y + 4)).min(axis=1)
    assert len(stars) >= 23
    assert distance.max() < 9


def test_a_nebula_and_a_streak_are_no_stars() -> None:
    """A broad glow and a satellite's streak add nothing to the list."""
    picture, x, _ = field()
    down, across = np.mgrid[0:300, 0:400]
    glow = 300 * np.exp(-((across - 200) ** 2 + (down - 150) ** 2) / (2 * 60**2))
    streak = np.where(np.abs(down - 0.4 * across - 3) < 1.5, 900, 0)
    assert abs(len(detect_stars(picture + glow)) - len(x)) <= 1
    assert len(detect_stars(picture + streak)) <= len(x) + 1


def test_undefined_pixels_are_background() -> None:
    """NaN borders, as stacking leaves them, hide stars but make none."""
    picture, x, _ = field()
    picture[:40] = np.nan
    assert 15 < len(detect_stars(picture)) <= len(x)


@pytest.mark.parametrize("picture", [np.zeros((50, 60)), np.full((50, 60, 3), 255, np.uint8), np.zeros((3, 4), np.uint8),
                                     np.full((50, 60), np.nan)])
def test_flat_and_tiny_pictures_have_no_stars(picture: np.ndarray) -> None:
    """Nothing to find is no error."""
    assert len(detect_stars(picture)) == 0


def test_what_is_no_picture_is_refused() -> None:
    """A cube of four axes is not a picture."""
    with pytest.raises(ValueError, match="a picture has 2 or 3 axes, not 4"):
        detect_stars(np.zeros((2, 2, 2, 2)))


def test_soft_patches_come_behind_stars() -> None:
    """Knots of 2.5 times a star's width in places without a star, the brightest of all, are listed behind the 25 stars."""
    picture, _, _ = field()
    empty = np.random.default_rng(3).permutation(80)[25:28]
    knots = [(40.0 * (cell % 10) + 20, 37.5 * (cell // 10) + 19) for cell in empty]
    down, across = np.mgrid[0:300, 0:400]
    for column, row in knots:
        picture += 5000 * np.exp(-((across - column) ** 2 + (down - row) ** 2) / (2 * 3.75**2))
    stars = detect_stars(stretched(picture))
    behind = [int(np.hypot(stars.x_px - column, stars.y_px - row).argmin()) for column, row in knots]
    assert len(stars) == 28
    assert sorted(behind) == [25, 26, 27]


@pytest.mark.parametrize("bright", [3, 12, 40])
def test_few_bright_stars_are_as_steep_as_their_light(bright: int) -> None:
    """Slopes in proportion to peaks, as one point spread makes them (within 15 %, common practice, no source): all are stars,
    however thinly the bright ones are strewn above a crowd of faint ones."""
    luck = np.random.default_rng(8)
    peaks = np.concatenate([luck.uniform(8, 12, 120), np.geomspace(15, 200, bright)])
    assert star_like(peaks, 0.33 * peaks * luck.uniform(0.85, 1.0, len(peaks))).all()
