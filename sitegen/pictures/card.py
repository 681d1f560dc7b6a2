"""The picture that stands beside a link to an entry: the middle of the result, with the nights' ribbon under it."""

from pathlib import Path

import pyvips

from sitegen.pictures.cropping import covered
from sitegen.pictures.limits import as_picture_problems
from sitegen.pictures.opening import on_8_bits, opened
from sitegen.pictures.records import PictureProblem, PictureSettings

CARD_PX = (1200, 630)
RIBBON_PX = 96
QUALITY = 85
DRAWING_DPI = 72
LONGEST_DRAWING = 2_000_000


def make_card(path: Path, ribbon_svg: str | None, scratch_in: Path, settings: PictureSettings | None = None) -> bytes:
    """A JPEG of 1200 × 630 without metadata. `path` may be one of the sizes already made, which is quicker.

    `ribbon_svg` is drawn 1200 × 96 below; it must bring its own colours and hold no text, since the fonts of the
    machine would show, and no reference to a file is followed. `scratch_in`: a folder for a passing working copy.
    """
    width, height = CARD_PX
    with opened(path, settings or PictureSettings(), scratch_in) as picture:
        image = _in_colour(picture.fresh())
        if ribbon_svg is None:
            return _jpeg(covered(image, width, height))
        return _jpeg(covered(image, width, height - RIBBON_PX).join(drawn(ribbon_svg, width, RIBBON_PX), "vertical"))


def drawn(svg: str, width_px: int, height_px: int) -> pyvips.Image:
    """The drawing stretched to that size, on black, 8 bits sRGB."""
    if len(svg) > LONGEST_DRAWING:
        raise PictureProblem(f"the drawing has {len(svg):,} characters; at most {LONGEST_DRAWING:,} are taken")
    with as_picture_problems():
        natural = pyvips.Image.svgload_buffer(svg.encode("utf-8"), dpi=DRAWING_DPI)
        scaled = pyvips.Image.svgload_buffer(svg.encode("utf-8"), dpi=DRAWING_DPI, scale=width_px / natural.width)
        flat = scaled.flatten(background=0).colourspace("srgb")
        return flat.resize(width_px / flat.width, vscale=height_px / flat.height).copy_memory()


def _in_colour(image: pyvips.Image) -> pyvips.Image:
    return on_8_bits(image).colourspace("srgb")


def _jpeg(image: pyvips.Image) -> bytes:
    return bytes(image.jpegsave_buffer(Q=QUALITY, optimize_coding=True, keep="none"))
