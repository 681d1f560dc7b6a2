"""From the scale of a solved picture to the scale of the train's own pixels, where the picture still tells it."""

from collections.abc import Iterable

from msgspec.structs import replace

from sitegen.facts.optics_scale import scale_arcsec_px
from sitegen.facts.views import OpticsView, PointedPicture

CLOSE = 0.1
"""A train farther than this from what is written of it is rather a crop, or another train."""
SAME_SHAPE = 0.01


def measured(optics: Iterable[OpticsView], pictures: Iterable[PointedPicture]) -> tuple[OpticsView, ...]:
    """The rows with the scale that the first fitting picture tells; None stays where none does."""
    every = tuple(pictures)
    return tuple(_measured(row, every) for row in optics)


def _measured(row: OpticsView, pictures: tuple[PointedPicture, ...]) -> OpticsView:
    scales = ((scale, picture.file) for picture in pictures if (scale := frame_scale_arcsec_px(row, picture)) is not None)
    scale, file = next(scales, (None, None))
    return replace(row, measured_scale_arcsec_px=scale, measured_by=file)


def frame_scale_arcsec_px(row: OpticsView, picture: PointedPicture) -> float | None:
    """Arcseconds across a pixel of the train's (binned) frame, by this picture.

    Told by a picture in the frame's own pixels, cropped or not, and by one that shows the whole frame resized, which its
    proportions tell. None for any other (cropped and resized), for one not solved or stated by the author, and where the
    scale is farther than a tenth from the nominal one.
    """
    if picture.solution is None or picture.origin == "author":
        return None
    nominal, scale = scale_arcsec_px(row), picture.solution.scale_arcsec_px
    longer, shorter = _sides(picture.width_px, picture.height_px)
    camera = row.train.camera
    frame_longer, frame_shorter = (side / row.binning for side in _sides(camera.width_px, camera.height_px))
    if longer <= frame_longer + 1 and abs(scale / nominal - 1) <= CLOSE:
        return scale
    if abs(longer * frame_shorter / (shorter * frame_longer) - 1) > SAME_SHAPE:
        return None
    whole = scale * longer / frame_longer
    return whole if abs(whole / nominal - 1) <= CLOSE else None


def _sides(width_px: int, height_px: int) -> tuple[int, int]:
    return max(width_px, height_px), min(width_px, height_px)
