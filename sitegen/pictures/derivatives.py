"""The derivatives of one picture, sizes and tiles, in one piece of work that a process of its own can do."""

from pathlib import Path

from msgspec.structs import replace

from sitegen.pictures.opening import opened
from sitegen.pictures.records import MadePicture, MadeTiles, PictureSettings
from sitegen.pictures.sizes import offered
from sitegen.pictures.tiles import MAX, tiled

TILES = "tiles"


def make_picture(
    path: Path, out_dir: Path, address_id: str | None, settings: PictureSettings, packet: bytes | None = None
) -> tuple[MadePicture, MadeTiles]:
    """The sizes into `out_dir` and the tiles into its folder `tiles`, as `make_sizes` and `make_tiles` make them, but
    with the file opened and stretched once, and the full JPEG written once, where the tiles need it. Arguments and result can
    be pickled. Raises PictureProblem."""
    with opened(path, settings, out_dir) as picture:
        full = (picture.source.width_px, picture.source.height_px)
        sizes = offered(picture.fresh, full, out_dir, settings, packet, picture.scratch)
        tiles = tiled(picture, out_dir / TILES, address_id, settings, out_dir / sizes.full.name)
        return _with_full_among(sizes), tiles


def _with_full_among(sizes: MadePicture) -> MadePicture:
    """The picture with its full JPEG where the tiles have it."""
    full = replace(sizes.full, name=f"{TILES}/{MAX}")
    return replace(sizes, files=tuple(full if file == sizes.full else file for file in sizes.files))
