"""FITS frames: read rightly from every form they are stored in, and stretched as the docstring says."""

import gzip
from importlib.resources import files
from pathlib import Path

import numpy as np
import pytest
from astropy.io import fits

from sitegen.pictures.demosaic import bayer_to_rgb
from sitegen.pictures.fits_pixels import fits_facts, fits_rows
from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.source import picture_facts
from tests.pictures.originals import decoded

FINE = PictureSettings(full_quality=98, jpeg_quality=98)
M13 = Path(str(files("astropy.io.fits").joinpath("hdu/compressed/tests/data/m13.fits")))


def values(path: Path, scratch: Path) -> np.ndarray:
    """(rows, width), or with planes last."""
    facts = fits_facts(path)
    with fits_rows(path, facts, scratch) as rows:
        read = rows(0, facts.source.height_px)
    return read[..., 0] if facts.planes == 1 else read


def frame(kind: str) -> np.ndarray:
    noise = np.random.default_rng(3).normal(1000, 10, (60, 90))
    noise[40:44, 20:24] += 8000
    return noise.astype(kind)


@pytest.mark.parametrize("kind", ["u1", "i2", "u2", "i4", "u4", "i8", "f4", "f8"])
def test_every_number_type_reads_as_astropy_reads_it(tmp_path: Path, kind: str) -> None:
    """Physical values equal astropy's own, to a float's precision, BZERO and byte order included."""
    stored = (frame("f8") / 40).astype(kind) if kind == "u1" else frame(kind)
    fits.writeto(tmp_path / "a.fits", stored)
    np.testing.assert_allclose(values(tmp_path / "a.fits", tmp_path), fits.getdata(tmp_path / "a.fits").astype("f4"), rtol=1e-6)


@pytest.mark.parametrize("form", ["a.fits.gz", "a.fits.fz", "cube.fits.fz", "cube.fits", "second.fits"])
def test_every_packing_reads_as_astropy_reads_it(tmp_path: Path, form: str) -> None:
    """Gzip, tile compression, planes, and a picture behind an empty first HDU hold the same values as a plain file."""
    data = np.stack([frame("i2"), frame("i2") * 2, frame("i2") * 3]) if form.startswith("cube") else frame("i2")
    if form.endswith(".fz"):
        fits.CompImageHDU(data).writeto(tmp_path / form)
    elif form.startswith("second"):
        fits.HDUList([fits.PrimaryHDU(), fits.ImageHDU(data)]).writeto(tmp_path / form)
    else:
        fits.writeto(tmp_path / form, data)
    expected = np.moveaxis(data, 0, -1) if data.ndim == 3 else data
    np.testing.assert_array_equal(values(tmp_path / form, tmp_path), expected.astype("f4"))


def test_a_real_frame_reads_the_same_in_all_its_packings(tmp_path: Path) -> None:
    """astropy's sample of M 13 (300 × 300) and its lossless compressed variants give the same pixels."""
    plain = values(M13, tmp_path)
    assert plain.shape == (300, 300)
    for variant in ("m13_gzip.fits", "m13_rice.fits", "m13_plio.fits"):
        np.testing.assert_array_equal(values(M13.with_name(variant), tmp_path), plain, err_msg=variant)


def test_the_lowest_stored_row_is_the_lowest_shown(tmp_path: Path) -> None:
    """A bright first row shows at the bottom; with ROWORDER TOP-DOWN at the top. The facts say which."""
    data = frame("f4")
    data[:10] = 9000
    for order, flipped in (("BOTTOM-UP", True), ("TOP-DOWN", False), (None, True)):
        header = fits.Header({"ROWORDER": order} if order else {})
        fits.writeto(tmp_path / "a.fits", data, header, overwrite=True)
        assert picture_facts(tmp_path / "a.fits").is_flipped is flipped
        make_sizes(tmp_path / "a.fits", tmp_path / "out", FINE)
        shown = decoded(tmp_path / "out" / "full.jpg")
        bright, dark = (shown[-8:], shown[:8]) if flipped else (shown[:8], shown[-8:])
        assert bright.mean() > dark.mean() + 100


@pytest.mark.parametrize("pattern", ["RGGB", "BGGR", "GRBG", "GBRG"])
def test_a_mosaic_of_even_light_becomes_even_colour(pattern: str) -> None:
    """Red 0.2, green 0.5, blue 0.9 behind any pattern comes back exactly, to the edges and with odd sides."""
    light = {"R": 0.2, "G": 0.5, "B": 0.9}
    cell = np.array([light[letter] for letter in pattern]).reshape(2, 2)
    mosaic = np.tile(cell, (6, 7))[:11, :13].astype(np.float32)
    colour = bayer_to_rgb(mosaic, pattern)
    np.testing.assert_allclose(colour, np.broadcast_to(np.array([0.2, 0.5, 0.9], np.float32), (11, 13, 3)), rtol=1e-6)


def test_a_sample_that_was_taken_stays(tmp_path: Path) -> None:
    """Behind RGGB the red value at a red site, the green at both green ones and the blue at a blue one are the mosaic's."""
    mosaic = np.random.default_rng(5).random((8, 8)).astype(np.float32)
    colour = bayer_to_rgb(mosaic, "RGGB")
    np.testing.assert_allclose(colour[0::2, 0::2, 0], mosaic[0::2, 0::2], rtol=1e-6)
    np.testing.assert_allclose(colour[0::2, 1::2, 1], mosaic[0::2, 1::2], rtol=1e-6)
    np.testing.assert_allclose(colour[1::2, 0::2, 1], mosaic[1::2, 0::2], rtol=1e-6)
    np.testing.assert_allclose(colour[1::2, 1::2, 2], mosaic[1::2, 1::2], rtol=1e-6)


def test_the_pattern_s_offset_is_obeyed(tmp_path: Path) -> None:
    """XBAYROFF 1 turns RGGB into GRBG, YBAYROFF 1 into GBRG; a colour cube has no pattern whatever its header says."""
    for right, down, expected in ((0, 0, "RGGB"), (1, 0, "GRBG"), (0, 1, "GBRG"), (1, 1, "BGGR")):
        header = fits.Header({"BAYERPAT": "RGGB", "XBAYROFF": right, "YBAYROFF": down})
        fits.writeto(tmp_path / "a.fits", frame("u2"), header, overwrite=True)
        assert fits_facts(tmp_path / "a.fits").pattern == expected
    fits.writeto(tmp_path / "b.fits", np.stack([frame("u2")] * 3), header)
    assert (picture_facts(tmp_path / "b.fits").colour, fits_facts(tmp_path / "b.fits").pattern) == ("rgb", None)


def shown(tmp_path: Path, data: np.ndarray, stretch: dict[str, float]) -> np.ndarray:
    fits.writeto(tmp_path / "a.fits", data, overwrite=True)
    make_sizes(tmp_path / "a.fits", tmp_path / "out", PictureSettings(stretch=stretch, full_quality=98, jpeg_quality=98))
    return decoded(tmp_path / "out" / "full.jpg") / 255


def test_more_light_is_never_drawn_darker(tmp_path: Path) -> None:
    """A ramp of light from sky to beyond white rises all the way."""
    ramp = np.broadcast_to(np.linspace(990, 20_000, 400), (40, 400)) + np.random.default_rng(2).normal(0, 1, (40, 400)) * 0
    sky = np.random.default_rng(2).normal(1000, 5, (400, 400))
    sky[:40] = ramp
    row = shown(tmp_path, sky.astype("f4"), {})[::-1][20].mean(axis=-1)
    assert np.all(np.diff(row[::10]) >= -0.01)
    assert row[-1] - row[0] > 0.5


def test_pixels_without_value_are_black(tmp_path: Path) -> None:
    """NaN, the infinities and BLANK come out black and move neither sky nor white."""
    data = np.random.default_rng(4).normal(1000, 20, (200, 200)).astype("f4")
    data[:50, :50], data[0, 60], data[0, 61] = np.nan, np.inf, -np.inf
    seen = shown(tmp_path, data, {})
    assert seen[-50:, :50].max() < 0.02
    assert np.median(seen[:100]) == pytest.approx(0.13, abs=0.02)
    header = fits.Header({"BLANK": -1})
    fits.writeto(tmp_path / "b.fits", np.where(np.isnan(data), -1, np.nan_to_num(data, posinf=0, neginf=0)).astype("i2"), header)
    assert values(tmp_path / "b.fits", tmp_path)[:50, :50].max() == 0


def test_a_gzip_that_swells_is_refused(tmp_path: Path) -> None:
    """A small header with gigabytes of nothing behind it, packed into kilobytes, is refused before they are written."""
    fits.writeto(tmp_path / "a.fits", np.zeros((10, 10), "f4"))
    with gzip.open(tmp_path / "bomb.fits.gz", "wb") as stream:
        stream.write((tmp_path / "a.fits").read_bytes())
        for _ in range(66):
            stream.write(bytes(1 << 20))
    with pytest.raises(PictureProblem, match=r"^it unpacks to far more than its header says$"):
        make_sizes(tmp_path / "bomb.fits.gz", tmp_path / "out", FINE)


def test_bands_of_rows_leave_no_seam(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A Bayer frame with odd sides worked on four rows at a time gives the very pixels that one piece gives, so that
    no band's edge shows; likewise from a gzipped file, whose rows come in another way."""
    light = np.random.default_rng(6).normal(1000, 50, (61, 43)).astype("f4")
    fits.writeto(tmp_path / "a.fits", light, fits.Header({"BAYERPAT": "GBRG"}))
    (tmp_path / "a.fits.gz").write_bytes(gzip.compress((tmp_path / "a.fits").read_bytes()))
    pictures = []
    for name, values_at_once in (("a.fits", 10**6), ("a.fits", 4 * 3 * 43), ("a.fits.gz", 4 * 3 * 43)):
        monkeypatch.setattr("sitegen.pictures.developing.BAND_VALUES", values_at_once)
        make_sizes(tmp_path / name, tmp_path / "out", FINE)
        pictures.append((tmp_path / "out" / "full.jpg").read_bytes())
    assert pictures[0] == pictures[1] == pictures[2]
