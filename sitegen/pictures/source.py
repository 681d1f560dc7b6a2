"""What the author's file is: size, kind, depth. Reads the header, never all the pixels."""

from pathlib import Path

import pyvips

from sitegen.pictures.container import format_of, refuse_cut_short
from sitegen.pictures.fits_pixels import fits_facts
from sitegen.pictures.limits import as_picture_problems, refuse_outsize
from sitegen.pictures.records import Colour, Format, PictureProblem, PictureSource

BITS = {"uchar": 8, "char": 8, "ushort": 16, "short": 16, "uint": 32, "int": 32, "float": 32, "double": 64}
TURNED = range(5, 9)  # the EXIF orientations that swap width and height
LOADERS: dict[Format, tuple[str, dict[str, bool]]] = {
    "jpeg": ("jpegload", {}),
    "png": ("pngload", {}),
    "tiff": ("tiffload", {"unlimited": True}),  # its limit of 50 MB a piece refuses good files; ours is in tiff_layout
    "webp": ("webpload", {}),
    "avif": ("heifload", {}),
}

# What decoders that want the whole picture took of memory, in bytes a pixel, measured at 40 and 150 megapixels
AVIF_8_BITS, AVIF_10_BITS, WEBP = 15.3, 25.6, 9.4
BESIDE = 0.5  # what a decoder takes beside the samples themselves
LARGEST_AT_ONCE_BYTES = 980_000_000


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
    loader, options = LOADERS[kind]
    return pyvips.Operation.call(loader, str(path), access="sequential", fail_on="truncated", **options)


def _facts_of(image: pyvips.Image, kind: Format) -> PictureSource:
    refuse_outsize(image.width, image.height)
    if image.format not in BITS:
        raise PictureProblem("its samples are complex numbers")
    bits = image.get("bits-per-sample") if "bits-per-sample" in image.get_fields() else BITS[image.format]
    _refuse_too_much_at_once(image, kind, bits)
    orientation = 1 if kind == "avif" else _orientation(image)
    sides = (image.height, image.width) if orientation in TURNED else (image.width, image.height)
    return PictureSource(
        width_px=sides[0],
        height_px=sides[1],
        format=kind,
        bits=bits,
        colour=_colour(image),
        has_alpha=bool(image.hasalpha()),
        orientation=orientation,
    )


def is_progressive(image: pyvips.Image) -> bool:
    """A JPEG in several scans, an interlaced PNG: no row is whole before the last byte."""
    fields = image.get_fields()
    return "interlaced" in fields or ("jpeg-multiscan" in fields and image.get("jpeg-multiscan") == 1)


def _refuse_too_much_at_once(image: pyvips.Image, kind: Format, bits: int) -> None:
    sample_bytes = {"jpeg": 2, "png": bits // 8}.get(kind, 0)  # a JPEG's coefficients have 16 bits
    a_pixel = sample_bytes * image.bands + BESIDE if is_progressive(image) else 0.0
    a_pixel = {"avif": AVIF_10_BITS if bits > 8 else AVIF_8_BITS, "webp": WEBP}.get(kind, a_pixel)
    needed = a_pixel * image.width * image.height
    if needed > LARGEST_AT_ONCE_BYTES:
        raise PictureProblem(
            f"it needs {needed / 1e9:.1f} GB of memory, since this kind of file is decoded at one go; "
            "save it as TIFF, or as a JPEG or PNG that is not progressive"
        )


def _orientation(image: pyvips.Image) -> int:
    """An AVIF is turned by its own transformation boxes, which the decoder has obeyed already."""
    stored = image.get("orientation") if "orientation" in image.get_fields() else 1
    return int(stored) if stored in range(1, 9) else 1


def _colour(image: pyvips.Image) -> Colour:
    if image.interpretation == "cmyk":
        return "cmyk"
    return "grey" if image.bands < 3 else "rgb"
