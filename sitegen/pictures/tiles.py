"""One picture -> a pyramid of tiles, laid out as IIIF Image API 3.0 names its static files (level 0).

The specification's words followed here: sections 4 (the canonical form of a request: `region/size/0/default.jpg`),
5 (`info.json`) and 6 (level 0: `full/max` at least). A picture without an address has the same files, and "." as id.
"""

import json
import shutil
from pathlib import Path

from sitegen.pictures.encoders import full_jpeg
from sitegen.pictures.opening import OpenPicture, on_8_bits, opened
from sitegen.pictures.records import MadeTiles, PictureSettings

MAX = "full/max/0/default.jpg"
"""The whole picture in its own size, which level 0 asks for."""


def make_tiles(
    path: Path, out_dir: Path, address_id: str | None, settings: PictureSettings | None = None, full: Path | None = None
) -> MadeTiles:
    """Writes the tiles and `info.json` into `out_dir`, in place of what earlier tiles lie there.

    `address_id` is the absolute address that `out_dir` will have, without a slash at the end. `full` is the full JPEG
    where `make_sizes` has made it already: it is moved to `MAX`, not encoded again. Raises PictureProblem.
    """
    settings = settings or PictureSettings()
    with opened(path, settings, out_dir) as picture:
        return tiled(picture, out_dir, address_id, settings, full)


def tiled(picture: OpenPicture, out_dir: Path, address_id: str | None, settings: PictureSettings, full: Path | None) -> MadeTiles:
    """What `make_tiles` makes, of a picture that is open already."""
    size = (picture.source.width_px, picture.source.height_px)
    tiles_dir = picture.scratch / "tiles"
    suffix = f".jpg[Q={settings.tile_quality},subsample_mode=off]"  # the colour of a star is two pixels wide
    on_8_bits(picture.fresh()).dzsave(str(tiles_dir), layout="iiif3", tile_size=settings.tile_px, suffix=suffix, keep="none")
    _write_full(picture, tiles_dir, full, settings)
    (tiles_dir / "info.json").write_bytes(info_json(size, settings.tile_px, address_id))
    names = sorted(file.relative_to(tiles_dir).as_posix() for file in tiles_dir.rglob("*") if file.is_file())
    _move(tiles_dir, out_dir, keep=picture.scratch)
    return MadeTiles(*size, settings.tile_px, scale_factors(*size, settings.tile_px), tuple(names))


def info_json(size: tuple[int, int], tile_px: int, address_id: str | None) -> bytes:
    """The description of the service; the same tiles serve under any address."""
    info = {
        "@context": "http://iiif.io/api/image/3/context.json",
        "id": address_id or ".",
        "type": "ImageService3",
        "protocol": "http://iiif.io/api/image",
        "profile": "level0",
        "width": size[0],
        "height": size[1],
        "sizes": [{"width": width, "height": height} for width, height in offered_sizes(size, tile_px)],
        "tiles": [{"width": tile_px, "scaleFactors": list(scale_factors(*size, tile_px))}],
        "preferredFormats": ["jpg"],
    }
    return json.dumps(info, indent=1).encode("ascii") + b"\n"


def scale_factors(width_px: int, height_px: int, tile_px: int) -> tuple[int, ...]:
    """1, 2, 4 … up to the first at which the whole picture lies in one tile."""
    factors = [1]
    while max(_level((width_px, height_px), factors[-1])) > tile_px:
        factors.append(2 * factors[-1])
    return tuple(factors)


def offered_sizes(size: tuple[int, int], tile_px: int) -> tuple[tuple[int, int], ...]:
    """What may be asked for whole as `full/w,h`: the level that is one tile. Larger levels would repeat pixels of their tiles."""
    return (_level(size, scale_factors(*size, tile_px)[-1]),)


def _level(size: tuple[int, int], factor: int) -> tuple[int, int]:
    """A level's size; a part of a pixel at the edge is a pixel."""
    return -(-size[0] // factor), -(-size[1] // factor)


def _write_full(picture: OpenPicture, tiles_dir: Path, full: Path | None, settings: PictureSettings) -> None:
    target = tiles_dir / MAX
    target.parent.mkdir(parents=True, exist_ok=True)
    if full is None:
        target.write_bytes(full_jpeg(picture.fresh(), settings))
    else:
        full.rename(target)


def _move(tiles_dir: Path, out_dir: Path, keep: Path) -> None:
    out_dir.mkdir(parents=True, exist_ok=True)
    for old in out_dir.iterdir():
        if old != keep:
            shutil.rmtree(old) if old.is_dir() else old.unlink()
    for path in tiles_dir.iterdir():
        path.rename(out_dir / path.name)
