"""The files that an `info.json` promises, by the words of the IIIF Image API 3.0 alone."""

from collections.abc import Iterator
from math import ceil
from typing import Any


def promised(info: dict[str, Any]) -> set[str]:
    """Canonical addresses below the service's: `full/max` (level 0 of the compliance document), each of `sizes` (5.3), and
    for each scale factor every region of `tiles` (5.4 and its implementation note), cut at the edge; and the description."""
    sizes = {f"full/{size['width']},{size['height']}/0/default.jpg" for size in info["sizes"]}
    return {"info.json", "full/max/0/default.jpg"} | sizes | set(_tiles(info["width"], info["height"], info["tiles"]))


def _tiles(width: int, height: int, grids: list[dict[str, Any]]) -> Iterator[str]:
    for grid in grids:
        for factor in grid["scaleFactors"]:
            side = grid["width"] * factor
            for top in range(0, height, side):
                for left in range(0, width, side):
                    yield _tile(width, height, left, top, side, factor)


def _tile(width: int, height: int, left: int, top: int, side: int, factor: int) -> str:
    across, down = min(side, width - left), min(side, height - top)
    region = "full" if (across, down) == (width, height) else f"{left},{top},{across},{down}"
    return f"{region}/{ceil(across / factor)},{ceil(down / factor)}/0/default.jpg"
