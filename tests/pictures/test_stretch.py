"""The curve is the published one, the sky comes out as was asked for, and hues stay where they shall."""

import subprocess
import sys
from math import asinh, sinh
from pathlib import Path

import numpy as np
import pytest
from astropy.io import fits
from astropy.visualization import AsinhStretch
from astropy.visualization.lupton_rgb import AsinhMapping

from sitegen.pictures.records import PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.stretch import Curve, Drawing, asinh_curve, drawn, inverse_curve, measured, softening_for, stretch_of
from tests.pictures.originals import decoded

ROOT = Path(__file__).resolve().parents[2]


def sky_of(level: float, width: float, shape: tuple[int, ...] = (300, 300), seed: int = 8) -> np.ndarray:
    """Gaussian noise around a level."""
    return np.random.default_rng(seed).normal(level, width, shape)


def with_stars(sky: np.ndarray) -> np.ndarray:
    """One pixel in nine is light of stars, between the sky and a thousand times its noise."""
    light = np.random.default_rng(11).exponential(3000, sky[..., ::3, ::3].shape)
    sky[..., ::3, ::3] += light
    return sky


def shown(tmp_path: Path, data: np.ndarray, stretch: dict[str, float]) -> np.ndarray:
    """As published, 0 to 1; without the chroma subsampling that a JPEG of quality 98 leaves out."""
    fits.writeto(tmp_path / "a.fits", data, overwrite=True)
    make_sizes(tmp_path / "a.fits", tmp_path / "out", PictureSettings(stretch=stretch, full_quality=98, jpeg_quality=98))
    return decoded(tmp_path / "out" / "full.jpg") / 255


def developed(data: np.ndarray, stretch: dict[str, float]) -> np.ndarray:
    """(channels, rows, width) -> (rows, width, channels), 0 to 1, without an encoder."""
    planes = data.astype(np.float32)
    return drawn(np.moveaxis(planes, 0, -1), measured(list(planes), stretch_of(stretch))) / 65_535


@pytest.mark.parametrize("softening", [1e-4, 0.01, 0.3, 5.0])
def test_the_curve_is_the_published_one(softening: float) -> None:
    """asinh(x/a)/asinh(1/a), as in astropy's AsinhStretch, which quotes Lupton et al.; and the inverse is its inverse. Both sides
    compute in double precision: 1e-12."""
    light = np.linspace(0, 1, 50)
    curve = np.array([asinh_curve(value, softening) for value in light])
    np.testing.assert_allclose(curve, AsinhStretch(softening)(light), atol=1e-12)
    np.testing.assert_allclose([inverse_curve(value, softening) for value in curve], light, atol=1e-12)


@pytest.mark.parametrize("is_inverse", [False, True])
@pytest.mark.parametrize("softening", [1e-6, 1e-3, 0.1, 1e3])
def test_the_table_draws_the_curve(softening: float, is_inverse: bool) -> None:
    """Within a thousandth, a quarter of a step of 8 bits, where nearly all light falls between two knots near black."""
    light = np.geomspace(1e-9, 1, 3000).astype(np.float32)
    shape = inverse_curve if is_inverse else asinh_curve
    seen = drawn(light[None, :, None], Drawing((Curve(0, 1, softening, is_inverse),), colours_together=False))
    np.testing.assert_allclose(seen[0, :, 0] / 65_535, [shape(float(value), softening) for value in light], atol=1e-3)
    assert np.all(np.diff(seen[0, :, 0].astype(int)) >= 0)


@pytest.mark.parametrize(("sky", "brightness"), [(1e-5, 0.13), (0.001, 0.5), (0.1, 0.13), (0.02, 0.3)])
def test_the_softening_brings_the_sky_to_its_brightness(sky: float, brightness: float) -> None:
    """Six digits of the softening leave less than 1e-5 of brightness."""
    assert asinh_curve(sky, softening_for(sky, brightness)) == pytest.approx(brightness, abs=1e-5)


@pytest.mark.parametrize(("scale", "zero"), [(1.0, 0.0), (1 / 65_535, 0.0), (30.0, -5000.0), (0.001, 1000.0)])
def test_the_sky_comes_out_as_was_asked_for(scale: float, zero: float) -> None:
    """In any unit the sky between the stars is drawn with the brightness asked for, and the share asked for is black: 0.005 and
    0.13 of themselves. Of 80,000 pixels of sky 0.5 % are 400 ± 20; stars that noise hides move both by some percent."""
    data = with_stars(sky_of(1000, 20)) * scale + zero
    for wishes, share, brightness in (({}, 0.005, 0.13), ({"black_share": 0.05, "sky_brightness": 0.3}, 0.05, 0.3)):
        seen = np.delete(developed(data[None], wishes)[..., 0], np.s_[::3], axis=0)
        assert np.median(seen) == pytest.approx(brightness, abs=0.01)
        assert np.mean(seen == 0) == pytest.approx(share, rel=0.25)


def test_a_galaxy_that_fills_a_third_does_not_move_the_sky() -> None:
    """Masked like a star, whatever its size; without the mask the median of all would lie in its outskirts."""
    data = sky_of(1000, 20)
    data[:100] += 500
    seen = developed(data[None], {})[..., 0]
    assert np.median(seen[100:]) == pytest.approx(0.13, abs=0.015)
    assert np.median(seen[:100]) > 0.5


def test_light_from_edge_to_edge_gets_the_inverse_curve() -> None:
    """Where a straight line would draw the median at 0.5, it is still drawn as asked for, and white stays white."""
    data = np.linspace(100, 1100, 90_000).reshape(1, 300, 300)
    seen = developed(data, {"black_share": 0.0})
    assert np.median(seen) == pytest.approx(0.13, abs=0.001)
    assert seen.max() == 1


def test_colours_apart_make_the_sky_grey_and_so_do_colours_together(tmp_path: Path) -> None:
    """A sky brighter and noisier in red than in blue, as twilight or a street lamp leaves it, is grey within 2 % either way."""
    cube = np.stack(
        [with_stars(sky_of(level, width, seed=seed)) for level, width, seed in ((1200, 18, 1), (1000, 15, 2), (900, 12, 3))]
    )
    for together in (0.0, 1.0):
        assert np.ptp(np.median(shown(tmp_path, cube.astype("f4"), {"colours_together": together}), axis=(0, 1))) < 0.02


def star_of(red: float, green: float, blue: float) -> np.ndarray:
    """Noise around 1000, and a patch with so much light above it; a white one beside it is the brightest."""
    cube = np.stack([sky_of(1000, 5, (100, 100), seed) for seed in (1, 2, 3)])
    cube[:, 20:40, 20:40] += np.array([red, green, blue])[:, None, None]
    cube[:, 60:62, 60:62] += 60_000
    return cube


@pytest.mark.parametrize("softening", [0.001, 0.1])
def test_colours_together_are_those_of_the_paper(softening: float) -> None:
    """astropy's own form of it gives the same three colours, from faint light to far beyond white, within the step of 8 bits that
    it cuts off. Its `Q` and `stretch` say in another way where the curve bends and where white lies."""
    light = np.random.default_rng(2).random((3, 50, 50)).astype(np.float32) * np.geomspace(1e-4, 4, 50, dtype=np.float32)
    seen = drawn(np.moveaxis(light, 0, -1), Drawing((Curve(0, 1, softening, is_inverse=False),) * 3, colours_together=True))
    q = 10 * sinh(0.1 * asinh(1 / softening))
    theirs = AsinhMapping(minimum=0, stretch=q * softening, Q=q).make_rgb_image(*light)
    assert np.abs(seen / 65_535 * 255 - theirs - 0.5).max() <= 0.6


def test_colours_apart_do_not_keep_proportions_and_together_they_do() -> None:
    """4 : 2 : 1 above the sky. Black lies 2.6 widths of the noise (13) below the sky; 1 % is for the noise in the pixel."""
    together, apart = (developed(star_of(8000, 4000, 2000), {"colours_together": way})[30, 30] for way in (1.0, 0.0))
    assert together / together[2] == pytest.approx([8013 / 2013, 4013 / 2013, 1], rel=0.01)
    assert apart[0] / apart[2] < 1.6


def test_a_bright_star_keeps_its_hue() -> None:
    """Where red would exceed white it is white's red, 1, and green and blue follow in proportion."""
    seen = developed(star_of(160_000, 80_000, 40_000), {"colours_together": 1.0})[30, 30]
    assert seen == pytest.approx([1, 0.5, 0.25], abs=0.005)


@pytest.mark.parametrize("value", [0.0, 7.0, -3.0, 65_535.0])
@pytest.mark.parametrize("together", [0.0, 1.0])
def test_a_frame_of_one_value_is_no_accident(tmp_path: Path, value: float, together: float) -> None:
    """Constant data give an even, black picture instead of a division by zero."""
    cube = np.full((3, 30, 30), value, "f4")
    assert shown(tmp_path, cube, {"colours_together": together}).max() < 0.02


def test_a_sky_of_one_value_leaves_the_stars() -> None:
    """Eight bits that hold no noise: the sky is black, a star is seen, and one 100 times fainter as well."""
    data = np.full((1, 100, 100), 7.0)
    data[:, 50:55, 50:55], data[:, 10:15, 10:15] = 2007, 27
    seen = developed(data, {})[..., 0]
    assert (seen[0, 0], seen[52, 52]) == (0, 1)
    assert 0.3 < seen[12, 12] < 0.6


def test_16_bits_of_an_undersampled_sky_are_no_accident() -> None:
    """Whole numbers whose noise is half a step: the sky is neither white nor everywhere black."""
    seen = developed(np.rint(sky_of(1000, 0.5))[None], {})
    assert 0 < np.mean(seen) < 0.5


DIGEST = """
import hashlib, numpy as np
from sitegen.pictures.stretch import drawn, measured, stretch_of
cube = np.random.default_rng(3).normal(1000, 20, (3, 200, 201)).astype(np.float32)
cube[:, ::3, ::3] += np.random.default_rng(4).exponential(3000, cube[:, ::3, ::3].shape).astype(np.float32)
for together in (0.0, 1.0):
    drawing = measured(list(cube), stretch_of({"colours_together": together}))
    print(hashlib.sha256(drawn(np.moveaxis(cube, 0, -1), drawing).tobytes()).hexdigest(), drawing)
"""


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the C library is told by a variable of Linux's")
def test_another_processor_draws_the_same() -> None:
    """With the loops of an old processor in NumPy and the C library: the same curves, the same 16 bits."""
    from tests.bench.same_bytes import OLDEST

    told = [
        subprocess.run(
            [sys.executable, "-c", DIGEST], cwd=ROOT, env={"PYTHONPATH": str(ROOT), **variables}, capture_output=True, text=True,
            check=True,
        ).stdout
        for variables in ({}, OLDEST)
    ]  # fmt: skip
    assert told[0] and told[0] == told[1]
