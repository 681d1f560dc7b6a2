"""What the author's file is: size, kind, depth. Reads the header, never all the pixels."""

from pathlib import Path

import pyvips

from sitegen.pictures.container import format_of, refuse_cut_short
from sitegen.pictures.doors import as_picture_problems, refuse_outsize
from sitegen.pictures.fits_pixels import fits_facts
from sitegen.pictures.records import Colour, Format, PictureProblem, PictureSource

BITS = {"uchar": 8, "char": 8, "ushort": 16, "short": 16, "uint": 32, "int": 32, "float": 32, "double": 64}
TURNED = range(5, 9)  # the EXIF orientations that swap width and height


def picture_facts(path: Path) -> PictureSource:
    """The file's facts. Raises PictureProblem, and nothing else, for whatever cannot become a published picture:
    no picture, cut short, above 150 megapixels or 65,500 pixels a side, an unsupported kind of sample."""
    with as_picture_problems():
        kind = format_of(path)
        if kind == "fits":
            return fits_facts(path).source
        refuse_cut_short(path, kind)
        return _facts_of(header(path, kind), kind)


def header(path: Path, kind: Format) -> pyvips.Image:
    """The file opened for one pass from top to bottom, by the loader of its kind and no other: a name or a content
    that would lead libvips to another loader has no effect."""
    loader = {"jpeg": "jpegload", "png": "pngload", "tiff": "tiffload", "webp": "webpload", "avif": "heifload"}[kind]
    return pyvips.Operation.call(loader, str(path), access="sequential", fail_on="truncated")


def _facts_of(image: pyvips.Image, kind: Format) -> PictureSource:
    refuse_outsize(image.width, image.height)
    if image.format not in BITS:
        raise PictureProblem("its samples are complex numbers")
    orientation = 1 if kind == "avif" else _orientation(image)
    sides = (image.height, image.width) if orientation in TURNED else (image.width, image.height)
    return PictureSource(
        width_px=sides[0],
        height_px=sides[1],
        format=kind,
        bits=image.get("bits-per-sample") if "bits-per-sample" in image.get_fields() else BITS[image.format],
        colour=_colour(image),
        has_alpha=bool(image.hasalpha()),
        orientation=orientation,
    )


def _orientation(image: pyvips.Image) -> int:
    """An AVIF is turned by its own transformation boxes, which the decoder has obeyed already."""
    stored = image.get("orientation") if "orientation" in image.get_fields() else 1
    return int(stored) if stored in range(1, 9) else 1


def _colour(image: pyvips.Image) -> Colour:
    if image.interpretation == "cmyk":
        return "cmyk"
    return "grey" if image.bands < 3 else "rgb"
