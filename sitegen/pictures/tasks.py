"""The room's heavy work by name, so that one late import brings it all in."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from sitegen.diary.addresses import CARD_PICTURE
from sitegen.pictures.card import make_card
from sitegen.pictures.comparing import make_pair
from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.pointing import point
from sitegen.pictures.records import MadePicture, MadeTiles, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.source import picture_facts

TILED_FROM_PX = 1600
"""A picture no longer than this is all on the screen at twice its size; the full file then serves the zoom better."""


def work(name: str, *given: Any) -> Any:
    """Does one of the works below."""
    return WORK[name](*given)


def make_published(path: Path, out_dir: Path, settings: PictureSettings) -> tuple[MadePicture, MadeTiles | None]:
    """The sizes, and for a large picture its tiles, whose address is still to be written into `info.json`."""
    source = picture_facts(path)
    if max(source.width_px, source.height_px) <= TILED_FROM_PX:
        return make_sizes(path, out_dir, settings), None
    return make_picture(path, out_dir, None, settings)


def write_card(path: Path, ribbon_svg: str | None, out_dir: Path) -> None:
    """The card in `out_dir`, under the name it is published by."""
    (out_dir / CARD_PICTURE).write_bytes(make_card(path, ribbon_svg, out_dir))


WORK: Mapping[str, Callable[..., Any]] = {
    "publish": make_published,
    "point": point,
    "pair": make_pair,
    "card": write_card,
}
