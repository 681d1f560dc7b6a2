"""A picture file -> its pixels: upright, sRGB, in the depth it came in, without alpha and without any metadata.

A picture is never held in memory whole. JPEG, PNG and TIFF are decoded row by row, once for each thing that is made.
What cannot be read so (turned pictures, progressive and interlaced files, formats whose decoders want it all) is
decoded once into a plain working copy beside the results and read from there.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

import pyvips

from sitegen.pictures.demosaic import bayer_to_rgb
from sitegen.pictures.doors import as_picture_problems
from sitegen.pictures.fits_pixels import fits_facts, fits_image
from sitegen.pictures.libvips import set_up
from sitegen.pictures.records import PictureSettings, PictureSource
from sitegen.pictures.source import header, is_progressive, picture_facts
from sitegen.pictures.stretch import stretch_of, stretched

WHOLE_AT_ONCE = ("webp", "avif")
FULL_SCALES = (1.0, 255.0, 65_535.0, 4_294_967_295.0)
ROUNDING = 1.001  # a float picture may overshoot its white by a hair

set_up()


@dataclass(frozen=True, slots=True)
class OpenPicture:
    """`fresh` gives the pixels anew for each single pass from top to bottom: 8 or 16 bits, 1 band (grey) or 3 (sRGB);
    `scratch` is a folder that goes when the picture is closed."""

    source: PictureSource
    fresh: Callable[[], pyvips.Image]
    scratch: Path


@contextmanager
def opened(path: Path, settings: PictureSettings, scratch_in: Path) -> Iterator[OpenPicture]:
    """The picture while the block runs; its working copy, where one is needed, goes with it."""
    with as_picture_problems("worked on"), _scratch(scratch_in) as folder:
        source = picture_facts(path)
        is_fits = source.format == "fits"
        fresh = _fits(path, settings, folder) if is_fits else _photograph(path, source, settings, folder)
        yield OpenPicture(source, fresh, folder)


@contextmanager
def _scratch(scratch_in: Path) -> Iterator[Path]:
    scratch_in.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory(dir=scratch_in, prefix=".working-") as folder:
        yield Path(folder)


def _fits(path: Path, settings: PictureSettings, scratch: Path) -> Callable[[], pyvips.Image]:
    facts = fits_facts(path)
    values = fits_image(path, facts, scratch)
    colour = bayer_to_rgb(values, facts.pattern) if facts.pattern else values
    drawn = _on_disk(stretched(colour, stretch_of(settings.stretch)), scratch / "drawn.v")
    upright = drawn.flipver() if facts.source.is_flipped else drawn
    return lambda: upright


def _photograph(path: Path, source: PictureSource, settings: PictureSettings, scratch: Path) -> Callable[[], pyvips.Image]:
    image = header(path, source.format)
    wishes = stretch_of(settings.stretch)
    if not (settings.stretch or source.bits > 16 or _needs_working_copy(image, source)):
        return lambda: _screen_colours(header(path, source.format))
    copy = _working_copy(image, source, scratch)
    upright = copy.autorot()
    if settings.stretch:
        drawn = _on_disk(stretched(_three_or_one(upright).cast("float"), wishes), scratch / "drawn.v")
        return lambda: drawn
    return lambda: _screen_colours(upright)


def _needs_working_copy(image: pyvips.Image, source: PictureSource) -> bool:
    return source.orientation != 1 or source.format in WHOLE_AT_ONCE or is_progressive(image)


def _working_copy(image: pyvips.Image, source: PictureSource, scratch: Path) -> pyvips.Image:
    """Samples above 16 bits come down to 16 on the way."""
    copy = _on_disk(image, scratch / "pixels.v")
    return _in_16_bits(copy) if source.bits > 16 else copy


def _on_disk(image: pyvips.Image, target: Path) -> pyvips.Image:
    """The pixels worked out once and laid down plainly, to be read in any order."""
    image.write_to_file(str(target))
    return pyvips.Image.new_from_file(str(target))


def _in_16_bits(image: pyvips.Image) -> pyvips.Image:
    """White is the smallest of 1, 255, 65535 and 2³² − 1 that no value exceeds. Values are taken as drawn for the
    screen, which is what programs store in such a file, not as linear light; not-a-number is black."""
    values = ((image * 0) == 0).ifthenelse(image, 0).cast("float")
    largest = values.max()
    white = next((scale for scale in FULL_SCALES if largest <= scale * ROUNDING), largest)
    drawn = (values * (65_535 / white)).rint().cast("ushort")
    return drawn.copy(interpretation="grey16" if image.bands < 3 else "rgb16")


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
