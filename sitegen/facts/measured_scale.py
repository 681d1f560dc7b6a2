"""From the scale of a solved picture to the scale of the train's own pixels, where the picture still tells it."""

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from sitegen.diary.entry import FROM_EXPOSURES
from sitegen.facts.optics_scale import scale_arcsec_px
from sitegen.facts.views import OpticsView, PointedPicture

CLOSE = 0.1
"""A train farther than this from what is written of it is rather a crop, or another train."""
SAME_SHAPE = 0.01


def measured(optics: Iterable[OpticsView], pictures: Iterable[PointedPicture]) -> tuple[OpticsView, ...]:
    """The rows with the scale that the first fitting picture of exposures tells, and apart from it the one that the first
    fitting simulation was drawn at; None stays where none does."""
    every = tuple(pictures)
    # Light on a sensor measures a train; a simulation gives back the focal length that somebody typed into it. It fills facts of
    # another name, not the same ones with a flag: the name is all that goes along when a number is quoted in a text or read by a
    # program, and both may stand side by side. A chart or an artwork that happens to be solved tells neither.
    exposed = [picture for picture in every if picture.type in FROM_EXPOSURES]
    simulated = [picture for picture in every if picture.type == "simulation"]
    return tuple(_measured(row, exposed, simulated) for row in optics)


def _measured(row: OpticsView, exposed: Sequence[PointedPicture], simulated: Sequence[PointedPicture]) -> OpticsView:
    scale, file = _first_scale(row, exposed)
    drawn_scale, drawn_file = _first_scale(row, simulated)
    return replace(
        row,
        measured_scale_arcsec_px=scale,
        measured_by=file,
        simulated_scale_arcsec_px=drawn_scale,
        simulated_by=drawn_file,
    )


def _first_scale(row: OpticsView, pictures: Sequence[PointedPicture]) -> tuple[float, str] | tuple[None, None]:
    """With the file of the picture that tells it."""
    scales = ((scale, picture.file) for picture in pictures if (scale := frame_scale_arcsec_px(row, picture)) is not None)
    return next(scales, (None, None))


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
