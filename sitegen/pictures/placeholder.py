"""What a page shows before the picture has arrived: a few dozen pixels inside the page itself."""

from base64 import b64encode

import pyvips

from sitegen.pictures.opening import on_8_bits
from sitegen.pictures.resizing import reduced

LONGEST_URI = 700
PREVIEW_SIDES_PX = (32, 24, 16, 8)


def placeholder(image: pyvips.Image) -> str:
    """A WebP data URI under 700 characters: enlarged by the browser, it is the picture out of focus."""
    for side_px in PREVIEW_SIDES_PX:
        uri = _uri(image, side_px)
        if len(uri) < LONGEST_URI:
            break
    return uri


def mean_colour(image: pyvips.Image) -> str:
    """#rrggbb, the plain mean of the sRGB values."""
    pixel = on_8_bits(image).colourspace("srgb").stats()
    return "#" + "".join(f"{round(pixel(4, band + 1)[0]):02x}" for band in range(3))


def _uri(image: pyvips.Image, side_px: int) -> str:
    scale = min(1.0, side_px / max(image.width, image.height))
    tiny = on_8_bits(reduced(image, max(1, round(image.width * scale)), max(1, round(image.height * scale))))
    return "data:image/webp;base64," + b64encode(tiny.webpsave_buffer(Q=50, effort=4, keep="none")).decode("ascii")
