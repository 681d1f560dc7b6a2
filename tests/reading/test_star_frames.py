"""Frames of stars opened: the same pixels out of every wrapping, and a sentence for whatever is no frame."""

import gzip
from datetime import UTC, datetime

import numpy as np
import pytest
import pyvips
from astropy.io import fits

from sitegen.reading.star_frames import BAYER_PATTERNS, FrameProblem, open_frame
from sitegen.reading.star_measuring import ring_of, survey_of
from tests.stars.frames_on_disk import ramp, write_fits
from tests.stars.synthetic import Sky, draw, shapes_at
from tests.stars.synthetic_rings import Disc, draw_disc


def picture(pixels):
    """Without being told that it is grey in 16 bits, libvips would write a PNG of 8."""
    image = pyvips.Image.new_from_array(pixels)
    return image.copy(interpretation="grey16") if pixels.dtype == np.uint16 else image


@pytest.mark.parametrize("ending", ["fits", "fits.gz", "fits.fz"])
@pytest.mark.parametrize("dtype", [np.uint8, np.int16, np.uint16, np.int32, np.float32])
def test_every_wrapping_gives_the_same_pixels(tmp_path, ending, dtype):
    """Plain, gzipped and tile-compressed; 8, 16 (with BZERO) and 32 bits and float, the first stored row at the bottom."""
    pixels = ramp(dtype=dtype)
    frame = open_frame(write_fits(tmp_path / f"frame.{ending}", pixels))
    quantised = (dtype, ending) == (np.float32, "fits.fz")  # as tile compression does to floats by its design
    tolerance = 2.0 if quantised else 0.0
    assert np.abs(frame.pixels.astype(float) - pixels).max() <= tolerance
    assert frame.pixels.dtype.isnative


SCALE = 206.265 * 7.52 / 1000  # ″/px


def test_the_header_tells_scale_moment_and_binning(tmp_path):
    """206.265 × 7.52 / 1000 ″/px (Starlink Cookbook SC/5, eqs 1 to 4); XPIXSZ counts binned pixels (common practice)."""
    frame = open_frame(write_fits(tmp_path / "frame.fits", ramp(), SATURATE=60_000))
    assert frame.scale_arcsec_px == pytest.approx(SCALE, abs=1e-4)
    assert frame.taken == datetime(2026, 9, 12, 12, 30, tzinfo=UTC)
    assert (frame.binning, frame.saturation, frame.bayer) == (2, 60_000, None)


def test_what_the_header_does_not_tell_is_none(tmp_path):
    """No scale without a focal length; no moment without a date, or in a local time whose zone nobody knows."""
    dateless = open_frame(write_fits(tmp_path / "a.fits", ramp(), DATE_OBS=None, FOCALLEN=None, XBINNING=None))
    local = open_frame(write_fits(tmp_path / "b.fits", ramp(), TIMESYS="LOCAL", FOCALLEN=0.0))
    assert (dateless.taken, dateless.scale_arcsec_px, dateless.binning) == (None, None, None)
    assert (local.taken, local.scale_arcsec_px) == (None, None)


@pytest.mark.parametrize("pattern", BAYER_PATTERNS)
@pytest.mark.parametrize("rows", [66, 67])
def test_the_bayer_pattern_is_read_from_the_lowest_row(tmp_path, pattern, rows):
    """A file stored from the top row down is turned over, its pattern with it; each pixel keeps its colour."""
    stored = np.array([[ord(pattern[2 * (row % 2) + column % 2]) for column in range(80)] for row in range(rows)], np.uint16)
    for order in ("BOTTOM-UP", "TOP-DOWN"):
        frame = open_frame(write_fits(tmp_path / f"{order}.fits", stored, BAYERPAT=pattern, ROWORDER=order))
        corner = "".join(chr(value) for value in frame.pixels[:2, :2].ravel())
        assert frame.bayer == corner
    assert (frame.pixels == stored[::-1]).all()


def test_bayer_offsets_shift_the_pattern(tmp_path):
    """XBAYROFF and YBAYROFF of 1: the stored corner is the pattern's last letter."""
    frame = open_frame(write_fits(tmp_path / "f.fits", ramp(), BAYERPAT="RGGB", XBAYROFF=1, YBAYROFF=1))
    assert frame.bayer == "BGGR"


def test_of_three_planes_the_green_one_is_taken(tmp_path):
    """In FITS and in a picture alike; a colour stack has no Bayer pattern."""
    red, green, blue = ramp(), ramp() + 7, ramp() + 11
    frame = open_frame(write_fits(tmp_path / "rgb.fits", np.stack([red, green, blue]), BAYERPAT="RGGB"))
    assert (frame.pixels == green).all()
    assert frame.bayer is None
    pyvips.Image.new_from_array(np.dstack([red, green, blue])).write_to_file(str(tmp_path / "rgb.tif"))
    assert (open_frame(tmp_path / "rgb.tif").pixels == green[::-1]).all()


@pytest.mark.parametrize(("ending", "dtype"), [("png", np.uint8), ("png", np.uint16), ("tif", np.uint16), ("tif", np.float32)])
def test_pictures_are_turned_over(tmp_path, ending, dtype):
    """Their first row is the top one; row 0 of the array is the bottom."""
    pixels = ramp(dtype=dtype)
    picture(pixels).write_to_file(str(tmp_path / f"p.{ending}"))
    assert (open_frame(tmp_path / f"p.{ending}").pixels == pixels[::-1]).all()


def test_a_jpeg_is_taken(tmp_path):
    """A smooth picture comes back within the rounding of JPEG at its best quality."""
    pixels = np.add.outer(np.arange(64), np.arange(96)).astype(np.uint8)
    pyvips.Image.new_from_array(pixels).write_to_file(str(tmp_path / "p.jpg[Q=100]"))
    assert np.abs(open_frame(tmp_path / "p.jpg").pixels.astype(float) - pixels[::-1]).max() <= 2


@pytest.mark.parametrize("ending", ["fits", "fits.fz"])
def test_a_survey_of_a_file_finds_the_truth(tmp_path, ending):
    """FWHM of every zone within 3 % of what was drawn (our own limit, no source), in px and by the header's scale in ″."""
    sky = Sky(width=900, height=600, stars=700, fwhm=3.2, tilt=0.15, tilt_deg=20, seed=7)
    path = write_fits(tmp_path / f"field.{ending}", draw(sky)[0])
    found, problems = survey_of(path, str(path), path.name)
    assert problems == ()
    assert found.pattern.kind == "tilt"
    for zone in found.survey.zones:
        truth = float(shapes_at(sky, np.float64(zone.x), np.float64(zone.y))[0])
        assert zone.fwhm_px == pytest.approx(truth, rel=0.03)
        assert zone.fwhm_arcsec == pytest.approx(zone.fwhm_px * SCALE, abs=1.5e-3)  # three digits each


def test_a_ring_in_a_picture_points_where_it_was_drawn(tmp_path):
    """A PNG has its top row first: an offset of 6 px up and to the right (60°) must come back so, within 0.3 px and 5°."""
    disc = draw_disc(Disc(offset=6.0, direction_deg=60.0))
    picture(disc[::-1].round().clip(0, 65_535).astype(np.uint16)).write_to_file(str(tmp_path / "ring.png"))
    found, problems = ring_of(tmp_path / "ring.png", "ring.png", "ring.png")
    assert problems == ()
    assert found.ring.offset_px == pytest.approx(6.0, abs=0.3)
    assert found.ring.direction_deg == pytest.approx(60.0, abs=5.0)
    assert (found.width_px, found.height_px) == (400, 300)


def cut(path, share=0.6):
    path.write_bytes(path.read_bytes()[: int(path.stat().st_size * share)])


def broken_empty(folder):
    (folder / "f.fits").write_bytes(b"")
    return "f.fits"


def broken_text(folder):
    (folder / "f.fits").write_text("no frame at all")
    return "f.fits"


def broken_short(folder):
    cut(write_fits(folder / "f.fits", ramp(300, 300)))
    return "f.fits"


def broken_header(folder):
    cut(write_fits(folder / "f.fits", ramp()), 0.05)
    return "f.fits"


def broken_short_gzip(folder):
    cut(write_fits(folder / "f.fits.gz", np.random.default_rng(1).integers(0, 60_000, (300, 300)).astype(np.uint16)))
    return "f.fits.gz"


def broken_gzip(folder):
    path = write_fits(folder / "f.fits.gz", np.random.default_rng(1).integers(0, 60_000, (300, 300)).astype(np.uint16))
    content = bytearray(path.read_bytes())
    content[len(content) // 2 : len(content) // 2 + 400] = bytes(400)
    path.write_bytes(content)
    return "f.fits.gz"


def broken_flood(folder):
    path = write_fits(folder / "f.fits", ramp())
    with gzip.open(folder / "f.fits.gz", "wb", 1) as packed:
        packed.write(path.read_bytes())
        for _ in range(68):
            packed.write(bytes(1 << 20))
    return "f.fits.gz"


def broken_tiles(folder):
    path = write_fits(folder / "f.fits.fz", np.random.default_rng(1).integers(0, 60_000, (300, 300)).astype(np.uint16))
    cut(path)
    return "f.fits.fz"


def broken_table(folder):
    table = fits.BinTableHDU.from_columns([fits.Column("a", "E", array=np.zeros(3))])
    fits.HDUList([fits.PrimaryHDU(), table]).writeto(folder / "f.fits")
    return "f.fits"


def broken_cube(folder):
    write_fits(folder / "f.fits", np.zeros((5, 70, 70), np.uint8))
    return "f.fits"


def broken_promise(folder):
    """A header of 30,000 × 30,000 px with nothing behind it."""
    header = fits.Header([("SIMPLE", True), ("BITPIX", 16), ("NAXIS", 2), ("NAXIS1", 30_000), ("NAXIS2", 30_000)])
    (folder / "f.fits").write_bytes(header.tostring(padding=True).encode())
    return "f.fits"


def broken_packed_promise(folder):
    broken_promise(folder)
    (folder / "f.fits.gz").write_bytes(gzip.compress((folder / "f.fits").read_bytes()))
    return "f.fits.gz"


def broken_png(folder):
    path = folder / "f.png"
    pyvips.Image.new_from_array(np.random.default_rng(1).integers(0, 255, (200, 200)).astype(np.uint8)).write_to_file(str(path))
    cut(path)
    return "f.png"


def broken_nothing(folder):
    return "nothing.fits"


OUTSIZE = "has 900 megapixels (30000 × 30000); at most 150 are taken"
NO_FRAME = "holds no frame: no image of two axes, nor of three with three planes"
CUT_SHORT = "is cut short: the file ends before its pixels do"
BROKEN = (
    (broken_nothing, "cannot be read: No such file or directory"),
    (broken_empty, "is empty"),
    (broken_text, "is neither FITS nor a TIFF, PNG or JPEG picture; name a frame, or what 'sitegen survey --save' wrote"),
    (broken_short, CUT_SHORT),
    (broken_header, "is truncated: the header ends before its END card; copy the frame again"),
    (broken_short_gzip, CUT_SHORT),
    (broken_gzip, "is damaged: gzip cannot unpack it"),
    (broken_flood, "unpacks to far more than its header says"),
    (broken_tiles, "is damaged: its pixels cannot be read"),
    (broken_table, NO_FRAME),
    (broken_cube, NO_FRAME),
    (broken_promise, OUTSIZE),
    (broken_packed_promise, OUTSIZE),
    (broken_png, CUT_SHORT),
)


@pytest.mark.parametrize(("make", "sentence"), BROKEN, ids=lambda value: getattr(value, "__name__", ""))
def test_broken_frames_get_their_sentence(tmp_path, make, sentence):
    """One problem line with the path as it was typed, word for word, for a survey and for a ring; never another exception."""
    name = make(tmp_path)
    for measure in (survey_of, ring_of):
        found, problems = measure(tmp_path / name, f"there/{name}", name)
        assert found is None
        assert [str(problem) for problem in problems] == [f"there/{name}:1:1: error: {sentence}"]


def test_a_frame_without_a_star_says_so(tmp_path):
    """Noise alone has no disc; what the room of stars finds wrong comes out as a problem line, too."""
    noise = np.random.default_rng(3).normal(1000, 10, (200, 300)).astype(np.float32)
    path = write_fits(tmp_path / "noise.fits", noise)
    found, problems = ring_of(path, "noise.fits", "noise.fits")
    assert found is None
    assert str(problems[0]) == "noise.fits:1:1: error: no disc of a defocused star stands out from the sky"
    survey, problems = survey_of(path, "noise.fits", "noise.fits")
    assert (survey.pattern.kind, problems) == ("unclear", ())


def test_a_small_frame_is_refused_in_words(tmp_path):
    """Under 64 px a side there is no field to survey."""
    found, problems = survey_of(write_fits(tmp_path / "s.fits", ramp(20, 20)), "s.fits", "s.fits")
    assert found is None
    assert str(problems[0]) == "s.fits:1:1: error: star shapes need one plane of at least 64 × 64 px, not shape (20, 20)"


def test_random_damage_never_escapes(tmp_path):
    """Sixty files with bytes overwritten anywhere are opened or refused, and nothing else."""
    path = write_fits(tmp_path / "f.fits.fz", ramp())
    sound, chance = path.read_bytes(), np.random.default_rng(5)
    for _ in range(60):
        content = bytearray(sound)
        for place in chance.integers(0, len(content), 12):
            content[place] = chance.integers(0, 256)
        path.write_bytes(content)
        try:
            assert open_frame(path).pixels.ndim == 2
        except FrameProblem as problem:
            assert problem.wrong
