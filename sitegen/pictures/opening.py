"""A picture file -> its pixels: upright, sRGB, in the depth it came in, without alpha and without any metadata.

A picture is never held in memory whole. JPEG, PNG and TIFF are decoded row by row, once for each thing that is made.
What cannot be read so (turned pictures, progressive and interlaced files, formats whose decoders want it all) is
decoded once into a plain working copy beside the results and read from there.
"""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

import pyvips
from msgspec import Struct

from sitegen.pictures.developing import developed, developed_fits
from sitegen.pictures.libvips import set_up
from sitegen.pictures.limits import as_picture_problems
from sitegen.pictures.records import PictureSettings, PictureSource
from sitegen.pictures.row_file import opened_once
from sitegen.pictures.source import header, is_progressive, picture_facts
from sitegen.pictures.stretch import stretch_of

WHOLE_AT_ONCE = ("webp", "avif")
FULL_SCALES = (1.0, 255.0, 65_535.0, 4_294_967_295.0)
ROUNDING = 1.001  # a float picture may overshoot its white by a hair
Fresh = Callable[[], pyvips.Image]

set_up()


class OpenPicture(Struct, frozen=True):
    """`fresh` gives the pixels anew for each single pass from top to bottom: 8 or 16 bits, 1 band (grey) or 3 (sRGB);
    `scratch` is a folder that goes when the picture is closed."""

    source: PictureSource
    fresh: Fresh
    scratch: Path


@contextmanager
def opened(path: Path, settings: PictureSettings, scratch_in: Path) -> Iterator[OpenPicture]:
    """The picture while the block runs; its working copy, where one is needed, goes with it."""
    with as_picture_problems("worked on"), _scratch(scratch_in) as folder:
        source = picture_facts(path)
        if source.format == "fits":
            fresh = developed_fits(path, stretch_of(settings.stretch), folder)
        else:
            fresh = _photograph(path, source, settings.stretch, folder)
        yield OpenPicture(source, fresh, folder)


@contextmanager
def _scratch(scratch_in: Path) -> Iterator[Path]:
    scratch_in.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory(dir=scratch_in, prefix=".working-") as folder:
        yield Path(folder)


def _photograph(path: Path, source: PictureSource, wishes: Mapping[str, float], scratch: Path) -> Fresh:
    stored = _streamed(path, source, scratch)
    stretch = stretch_of(wishes)
    if wishes:
        return developed(lambda: _three_or_one(stored()), stretch, scratch)
    if source.bits <= 16:
        return lambda: _screen_colours(stored())
    white = _white(stored())
    return lambda: _screen_colours(_in_16_bits(stored(), white))


def _streamed(path: Path, source: PictureSource, scratch: Path) -> Fresh:
    """The stored samples, upright, for one pass at a time."""
    image = header(path, source.format)
    if source.orientation != 1:
        upright = _laid_down(image, scratch / "turned.v").autorot()
        return lambda: upright
    if source.format in WHOLE_AT_ONCE or is_progressive(image):
        image.tiffsave(str(scratch / "pixels.tif"))
        return lambda: opened_once(scratch / "pixels.tif")
    return lambda: header(path, source.format)


def _laid_down(image: pyvips.Image, target: Path) -> pyvips.Image:
    """To be read in any order, as turning asks for."""
    image.write_to_file(str(target))
    return pyvips.Image.new_from_file(str(target))


def _white(image: pyvips.Image) -> float:
    """The smallest of 1, 255, 65535 and 2³² − 1 that no value exceeds. Values are taken as drawn for the screen, which
    is what programs store in such a file, not as linear light."""
    largest = float(_finite(image).max())
    return next((scale for scale in FULL_SCALES if largest <= scale * ROUNDING), largest)


def _in_16_bits(image: pyvips.Image, white: float) -> pyvips.Image:
    values = (_finite(image) * (65_535 / white)).rint().cast("ushort")
    return values.copy(interpretation="grey16" if image.bands < 3 else "rgb16")


def _finite(image: pyvips.Image) -> pyvips.Image:
    """Not-a-number and the infinities, which times 0 are not 0, become black."""
    return ((image * 0) == 0).ifthenelse(image, 0).cast("float")


def _screen_colours(image: pyvips.Image) -> pyvips.Image:
    """Alpha lies on black, as the sky does; a colour profile is applied; nothing but the pixels is left."""
    if image.hasalpha():
        image = image.flatten(background=0)
    depth = 16 if image.format == "ushort" else 8
    if "icc-profile-data" in image.get_fields() or image.interpretation == "cmyk":
        image = image.icc_transform("srgb", embedded=True, input_profile="cmyk" if image.bands == 4 else "srgb",
                                    intent="relative", black_point_compensation=True, depth=depth)
    grey, colour = ("grey16", "rgb16") if depth == 16 else ("b-w", "srgb")
    wanted = grey if image.bands < 3 else colour
    return _three_or_one(image if image.interpretation == wanted else image.colourspace(wanted))


def _three_or_one(image: pyvips.Image) -> pyvips.Image:
    return image.extract_band(0, n=3 if image.bands > 2 else 1) if image.bands not in (1, 3) else image


def on_8_bits(image: pyvips.Image) -> pyvips.Image:
    return image if image.format == "uchar" else image.colourspace("srgb" if image.bands == 3 else "b-w")
