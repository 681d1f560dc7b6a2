"""What is said about where a picture points. No pixels, no heavy import."""

from typing import Literal

from msgspec import Struct

from sitegen.diary.entry import PointingSolution
from sitegen.stars.solving.solution import Solution

Origin = Literal["author", "header", "avm", "stars"]


class ScalePrior(Struct, frozen=True):
    """A frame as a train delivers it: size in (binned) pixels, and their nominal scale."""

    width_px: int
    height_px: int
    scale_arcsec_px: float


class PointingPrior(Struct, frozen=True):
    """What the diary knows before the picture is looked at. `places`: (ra, dec) of the targets, degrees ICRS, the main one
    first. `by_stars`: whether its stars may be asked, where neither author nor file say."""

    stated: PointingSolution | None
    places: tuple[tuple[float, float], ...]
    trains: tuple[ScalePrior, ...]
    by_stars: bool


class Pointing(Struct, frozen=True):
    """`solution` in pixels of the upright picture in its full size, and who gave it; both None where it is not solved,
    and then `reason` says why, a sentence without a full stop."""

    solution: Solution | None
    origin: Origin | None
    reason: str | None = None
