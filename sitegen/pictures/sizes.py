"""One picture -> the files a page offers: each width in AVIF, WebP and JPEG, the full JPEG, a preview to show at once."""

from collections.abc import Callable
from pathlib import Path

import pyvips

from sitegen.pictures.embedding import with_packet
from sitegen.pictures.encoders import ENCODERS, Encoder, full_jpeg
from sitegen.pictures.opening import opened
from sitegen.pictures.placeholder import mean_colour, placeholder
from sitegen.pictures.records import MadeFile, MadePicture, PictureSettings
from sitegen.pictures.resizing import height_at, reduced

HELD_PX = 30_000_000  # more pixels than this at one size only a very long strip has; it waits on disk instead


def make_sizes(path: Path, out_dir: Path, settings: PictureSettings, packet: bytes | None = None) -> MadePicture:
    """Writes `480.avif`, `480.webp`, `480.jpg`, … `full.jpg` into `out_dir`; nothing is enlarged.

    A picture no wider than the widest size has `full` in all three types; a wider one as JPEG only, since tiles serve
    its pixels. `packet` is the XMP to carry in JPEG and WebP. Same file, settings and packet give the same bytes.
    Raises PictureProblem; what was written until then may stay in `out_dir`.
    """
    with opened(path, settings, out_dir) as picture:
        full = (picture.source.width_px, picture.source.height_px)
        return offered(picture.fresh, full, out_dir, settings, packet, picture.scratch)


def offered(
    fresh: Callable[[], pyvips.Image], full: tuple[int, int], out_dir: Path, settings: PictureSettings,
    packet: bytes | None, scratch: Path,
) -> MadePicture:
    """What `make_sizes` makes, from pixels that `fresh` gives anew for each pass. `full`: their width and height."""
    widest = min(full[0], max(settings.widths_px, default=full[0]))
    top = _held(reduced(fresh(), widest, height_at(widest, full)), scratch)
    wanted = [(str(width), width) for width in sorted(set(settings.widths_px)) if width < full[0]]
    wanted += [("full", full[0])] if widest == full[0] else []
    files = [
        _made(out_dir / name, reduced(top, width, height_at(width, full)), encoder, settings, packet)
        for name, width in wanted
        for encoder in ENCODERS
        if encoder.takes(width, height_at(width, full))
    ]
    if widest < full[0]:
        files.append(_written(out_dir / "full.jpg", full_jpeg(fresh(), settings), full, "image/jpeg", packet))
    files.sort(key=lambda file: (file.mime, file.width_px))
    return MadePicture(*full, tuple(files), placeholder(top), mean_colour(top))


def _held(image: pyvips.Image, scratch: Path) -> pyvips.Image:
    """Pixels that several outputs are made from."""
    if image.width * image.height <= HELD_PX:
        return image.copy_memory()
    target = str(scratch / "held.v")
    image.write_to_file(target)
    return pyvips.Image.new_from_file(target)


def _made(target: Path, image: pyvips.Image, encoder: Encoder, settings: PictureSettings, packet: bytes | None) -> MadeFile:
    content = encoder.encode(image, settings)
    return _written(target.with_suffix(f".{encoder.suffix}"), content, (image.width, image.height), encoder.mime, packet)


def _written(target: Path, content: bytes, size: tuple[int, int], mime: str, packet: bytes | None) -> MadeFile:
    if packet is not None and mime != "image/avif":
        content = with_packet(content, packet)
    target.write_bytes(content)
    return MadeFile(target.name, *size, len(content), mime)
