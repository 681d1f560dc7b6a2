"""Two pictures of one framing -> two of one size, to lay one over the other."""

from collections.abc import Callable
from pathlib import Path

import pyvips

from sitegen.pictures.cropping import covered
from sitegen.pictures.opening import OpenPicture, opened
from sitegen.pictures.records import MadePicture, PictureProblem, PictureSettings
from sitegen.pictures.sizes import offered

LARGEST_DIFFERENCE = 0.05  # of the proportions: a registered stack loses a rim, another framing differs by more


def make_pair(before: Path, after: Path, out_dir: Path, settings: PictureSettings) -> tuple[MadePicture, MadePicture]:
    """`before/` and `after/` in `out_dir`, each as `make_sizes` makes them, all sizes equal in pairs.

    The common size is the largest that needs no enlarging; what one picture has more at an edge is cut off evenly on
    both sides. Raises PictureProblem, also where the proportions differ by more than a twentieth: not one framing.
    """
    with opened(before, settings, out_dir) as first, opened(after, settings, out_dir) as second:
        size = _common_size(first, second)
        return (
            offered(_brought_to(first, size), size, _folder(out_dir / "before"), settings, None, first.scratch),
            offered(_brought_to(second, size), size, _folder(out_dir / "after"), settings, None, second.scratch),
        )


def _common_size(first: OpenPicture, second: OpenPicture) -> tuple[int, int]:
    (width, height), (other_width, other_height) = (
        (picture.source.width_px, picture.source.height_px) for picture in (first, second)
    )
    difference = abs(width * other_height / (height * other_width) - 1)
    if difference > LARGEST_DIFFERENCE:
        shapes = f"{width} × {height} and {other_width} × {other_height}"
        raise PictureProblem(f"the two do not show one framing: their proportions differ by {difference:.0%} ({shapes})")
    return min(width, other_width), min(height, other_height)


def _brought_to(picture: OpenPicture, size: tuple[int, int]) -> Callable[[], pyvips.Image]:
    return lambda: covered(picture.fresh(), *size)


def _folder(path: Path) -> Path:
    path.mkdir(parents=True, exist_ok=True)
    return path
