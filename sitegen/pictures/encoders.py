"""Pixels -> the bytes of a published file, without metadata. The same pixels give the same bytes on any number of cores."""

from collections.abc import Callable

import pyvips
from msgspec import Struct

from sitegen.pictures.opening import on_8_bits
from sitegen.pictures.records import PictureSettings


class Encoder(Struct, frozen=True):
    """`longest_px` and `largest_px`: what the type can hold, or what it can be asked to in under 1 GB."""

    suffix: str
    mime: str
    longest_px: int
    largest_px: int
    encode: Callable[[pyvips.Image, PictureSettings], bytes]

    def takes(self, width_px: int, height_px: int) -> bool:
        return max(width_px, height_px) <= self.longest_px and width_px * height_px <= self.largest_px


def jpeg(image: pyvips.Image, settings: PictureSettings) -> bytes:
    """Progressive, so that it sharpens while it arrives."""
    return _bytes(on_8_bits(image).jpegsave_buffer(Q=settings.jpeg_quality, optimize_coding=True, interlace=True, keep="none"))


def full_jpeg(image: pyvips.Image, settings: PictureSettings) -> bytes:
    """In one pass from top to bottom; colour at full resolution from quality 90 on."""
    return _bytes(on_8_bits(image).jpegsave_buffer(Q=settings.full_quality, keep="none"))


def webp(image: pyvips.Image, settings: PictureSettings) -> bytes:
    return _bytes(on_8_bits(image).webpsave_buffer(Q=settings.webp_quality, effort=2, keep="none"))


def avif(image: pyvips.Image, settings: PictureSettings) -> bytes:
    """Ten bits where the picture has sixteen: a faint nebula's gradient shows no steps. Colour at full resolution: at
    half of it the stars turn white, and the file is a twentieth smaller."""
    form = {"compression": "av1", "bitdepth": 8 if image.format == "uchar" else 10, "subsample_mode": "off"}
    return _bytes(image.heifsave_buffer(Q=settings.avif_quality, effort=settings.avif_effort, keep="none", **form))


def _bytes(encoded: object) -> bytes:
    return bytes(encoded)  # type: ignore[call-overload,no-any-return]


# in the order in which a page offers them
ENCODERS = (
    Encoder("avif", "image/avif", 16_384, 20_000_000, avif),  # libvips refuses a longer side
    Encoder("webp", "image/webp", 16_383, 60_000_000, webp),
    Encoder("jpg", "image/jpeg", 65_500, 150_000_000, jpeg),
)
