"""Every kind of original comes out upright, in sRGB, with its colours."""

import io
from pathlib import Path

import numpy as np
import pytest
import pyvips
from PIL import Image, ImageCms

from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.source import picture_facts
from tests.pictures.originals import WRITERS, decoded, eight_bits, quarters, scene, sixteen_bits, vips, write

FINE = PictureSettings(full_quality=98, jpeg_quality=98)


def published(path: Path, settings: PictureSettings = FINE) -> np.ndarray:
    make_sizes(path, path.parent / "out", settings)
    return decoded(path.parent / "out" / "full.jpg")


@pytest.mark.parametrize("name", sorted(WRITERS))
def test_every_kind_shows_the_same_scene(tmp_path: Path, name: str) -> None:
    """The four quarters keep their colours within 4 of 255 (JPEG's and AVIF's own loss), whatever the original's kind."""
    seen = quarters(published(write(tmp_path, name)))
    meant = quarters(eight_bits().astype(float))
    assert np.abs(np.subtract(seen, meant)).max() <= 4, (seen, meant)


FACTS = {
    "plain.jpg": ("jpeg", 8, "rgb", False),
    "sixteen.png": ("png", 16, "rgb", False),
    "alpha.png": ("png", 8, "rgb", True),
    "float.tif": ("tiff", 32, "rgb", False),
    "alpha16.tif": ("tiff", 16, "rgb", True),
    "lossless.webp": ("webp", 8, "rgb", False),
    "ten.avif": ("avif", 10, "rgb", False),
}


@pytest.mark.parametrize("name", sorted(FACTS))
def test_facts_come_from_the_header(tmp_path: Path, name: str) -> None:
    """Kind, depth, colour and alpha are named as they were written; size is 120 × 80."""
    facts = picture_facts(write(tmp_path, name))
    assert (facts.width_px, facts.height_px) == (120, 80)
    assert (facts.format, facts.bits, facts.colour, facts.has_alpha) == FACTS[name]
    assert not facts.is_linear


def test_the_content_decides_the_kind(tmp_path: Path) -> None:
    """A PNG that is called .jpg, in a file name that libvips would read options from, is a PNG."""
    path = write(tmp_path, "eight.png").rename(tmp_path / "a[page=3,n=-1].jpg")
    assert picture_facts(path).format == "png"
    assert quarters(published(path))[0][0] > 190


# EXIF orientation -> what a writer does to the upright picture so that this tag turns it back (EXIF 2.3, 4.6.4)
TURNS = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


@pytest.mark.parametrize("orientation", sorted(TURNS))
@pytest.mark.parametrize("suffix", ["jpg", "tif", "webp", "png"])
def test_orientation_is_obeyed(tmp_path: Path, orientation: int, suffix: str) -> None:
    """All eight orientations come out as the one upright scene, and the facts give the upright size."""
    turn = TURNS[orientation]
    upright = Image.fromarray(eight_bits())
    exif = Image.Exif()
    exif[0x0112] = orientation
    extra = {"lossless": True} if suffix == "webp" else {}
    path = tmp_path / f"turned.{suffix}"
    (upright if turn is None else upright.transpose(turn)).save(path, exif=exif, **extra)
    facts = picture_facts(path)
    assert (facts.width_px, facts.height_px) == (120, 80)
    assert np.abs(np.subtract(quarters(published(path)), quarters(eight_bits().astype(float)))).max() <= 6


def test_a_colour_profile_is_applied_before_it_is_dropped(tmp_path: Path) -> None:
    """A picture in Display P3, converted there by Pillow, comes back to its sRGB colours; merely dropping the profile
    would be off by 20 and more."""
    wide = ImageCms.ImageCmsProfile(io.BytesIO(pyvips.Image.profile_load("p3")))
    original = Image.fromarray(eight_bits())
    stored = ImageCms.profileToProfile(original, ImageCms.createProfile("sRGB"), wide)
    stored.save(tmp_path / "p3.tif", icc_profile=wide.tobytes())
    assert np.abs(np.subtract(quarters(np.asarray(stored).astype(float)), quarters(eight_bits().astype(float)))).max() >= 20
    assert np.abs(np.subtract(quarters(published(tmp_path / "p3.tif")), quarters(eight_bits().astype(float)))).max() <= 4


def test_ink_becomes_light(tmp_path: Path) -> None:
    """A CMYK JPEG is published as RGB with its hues in place."""
    Image.fromarray(eight_bits()).convert("CMYK").save(tmp_path / "ink.jpg", quality=95)
    assert picture_facts(tmp_path / "ink.jpg").colour == "cmyk"
    seen = quarters(published(tmp_path / "ink.jpg"))
    assert [int(np.argmax(colour)) for colour in seen[:3]] == [0, 1, 2]


def test_what_is_transparent_lies_on_black(tmp_path: Path) -> None:
    """Half transparent red becomes half as bright, in 8 and in 16 bits."""
    vips(eight_bits(), "srgb").bandjoin(128).pngsave(str(tmp_path / "a.png"))
    vips(sixteen_bits(), "rgb16").bandjoin(32_896).tiffsave(str(tmp_path / "b.tif"))
    for name in ("a.png", "b.tif"):
        assert abs(quarters(published(tmp_path / name))[0][0] - 0.8 * 128) <= 3


def test_grey_stays_grey(tmp_path: Path) -> None:
    """One band in, one band out: a third of the bytes of three equal ones."""
    vips(sixteen_bits()[..., :1], "grey16").tiffsave(str(tmp_path / "grey.tif"))
    make_sizes(tmp_path / "grey.tif", tmp_path / "out", FINE)
    with Image.open(tmp_path / "out" / "full.jpg") as picture:
        assert picture.mode == "L"


def test_not_a_number_is_black(tmp_path: Path) -> None:
    """A float TIFF with holes is published with black holes and unchanged surroundings."""
    pixels = scene().astype(np.float32)
    pixels[:40, :60] = np.nan
    vips(pixels, "rgb").tiffsave(str(tmp_path / "holes.tif"))
    seen = quarters(published(tmp_path / "holes.tif"))
    assert max(seen[0]) <= 3
    assert abs(seen[1][1] - 0.7 * 255) <= 3


def test_stretch_reaches_a_linear_tiff_when_it_is_asked_for(tmp_path: Path) -> None:
    """`stretch` on a 16-bit TIFF brings its sky to the brightness wished for; without it the TIFF stays dark."""
    sky = np.random.default_rng(1).normal(900, 20, (80, 120, 3)).astype(np.uint16)
    vips(sky, "rgb16").tiffsave(str(tmp_path / "linear.tif"))
    assert published(tmp_path / "linear.tif").mean() < 6
    bright = published(tmp_path / "linear.tif", PictureSettings(stretch={"sky_brightness": 0.4}))
    assert abs(np.median(bright) / 255 - 0.4) < 0.02


def test_an_unknown_wish_is_named(tmp_path: Path) -> None:
    """A misspelt key of `stretch` is a sentence with the known ones."""
    path = write(tmp_path, "eight.png")
    known = r"\(known: black_share, sky_brightness, colours_together\)"
    with pytest.raises(PictureProblem, match=rf"^stretch has no 'blakc' {known}$"):
        make_sizes(path, tmp_path / "out", PictureSettings(stretch={"blakc": 1.0}))
    with pytest.raises(PictureProblem, match=r"^stretch: sky_brightness 3 is out of range \(0\.01 to 0\.9\)$"):
        make_sizes(path, tmp_path / "out", PictureSettings(stretch={"sky_brightness": 3.0}))
