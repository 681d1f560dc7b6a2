"""How the panels of a mosaic are turned, and the field of the whole."""

from collections.abc import Iterable, Sequence

import numpy as np
from msgspec.structs import replace

from sitegen.facts.pointing_clusters import vectors_of
from sitegen.facts.views import MosaicView, OpticsView, PanelView, PointedPicture
from sitegen.stars.solving.tangent_plane import FloatArray, to_plane, to_sky

CORNERS = np.array([(1, -1), (1, 1), (-1, 1), (-1, -1)]) / 2.0
"""Right and up of the middle, in sides of the field."""


def turned(
    mosaic: MosaicView | None, optics: Iterable[OpticsView], pictures: Sequence[PointedPicture]
) -> MosaicView | None:
    """With the position angle of the picture that measured a panel's rig, where the author gives none. A picture of the whole
    mosaic measures no train: it may have been turned when it was put together."""
    if mosaic is None:
        return None
    angles = {row.rig.slug: picture.solution.rotation_deg for row in optics for picture in pictures
              if picture.solution is not None and picture.file == row.measured_by}  # fmt: skip
    return replace(mosaic, panels=tuple(_turned(panel, angles.get(panel.rig or "")) for panel in mosaic.panels))


def _turned(panel: PanelView, angle_deg: float | None) -> PanelView:
    if panel.rotation_deg is not None or angle_deg is None:
        return panel
    return replace(panel, rotation_deg=angle_deg, turned_by="picture")


def corners_of(panel: PanelView) -> tuple[FloatArray, FloatArray] | None:
    """ICRS degrees of its four corners as the camera sees them, from the lower right on; with north up where nobody knows how it
    was turned. None without a place or a field."""
    return edge_of(panel, CORNERS)


def edge_of(panel: PanelView, points: FloatArray) -> tuple[FloatArray, FloatArray] | None:
    """The same of any points, right and up of the middle in sides of the field."""
    if panel.ra_deg is None or panel.dec_deg is None or panel.field_deg is None:
        return None
    width, height = (2.0 * np.degrees(np.tan(np.radians(side) / 2.0)) for side in panel.field_deg)
    # a camera sees east on the left: its right-hand side points west of its up
    left, up = -points[:, 0] * width, points[:, 1] * height
    sine, cosine = np.sin(np.radians(panel.rotation_deg or 0.0)), np.cos(np.radians(panel.rotation_deg or 0.0))
    return to_sky(left * cosine + up * sine, up * cosine - left * sine, panel.ra_deg, panel.dec_deg)


def whole_field_deg(mosaic: MosaicView) -> list[float] | None:
    """Width and height of the smallest box around all corners whose sides are those of the first panel, seen from its middle.
    None where the place or the field of a panel is not known."""
    corners = [corners_of(panel) for panel in mosaic.panels]
    placed = [corner for corner in corners if corner is not None]
    if not placed or len(placed) < len(corners):
        return None
    ra, dec = (np.concatenate(axis) for axis in zip(*placed, strict=True))
    centre = _middle(ra, dec)
    xi, eta = to_plane(ra, dec, *centre)
    if np.isnan(xi).any():
        return None
    turn = np.radians(_turn_deg(mosaic))
    left, up = xi * np.cos(turn) - eta * np.sin(turn), xi * np.sin(turn) + eta * np.cos(turn)
    return [_span_deg(left), _span_deg(up)]


def _turn_deg(mosaic: MosaicView) -> float:
    """That of the first panel; none where one is not known."""
    angles = [panel.rotation_deg for panel in mosaic.panels]
    return 0.0 if None in angles else angles[0] or 0.0


def _middle(ra_deg: FloatArray, dec_deg: FloatArray) -> tuple[float, float]:
    x, y, z = vectors_of(list(zip(ra_deg.tolist(), dec_deg.tolist(), strict=True))).mean(axis=0)
    return float(np.degrees(np.arctan2(y, x))) % 360.0, float(np.degrees(np.arctan2(z, np.hypot(x, y))))


def _span_deg(tangents_deg: FloatArray) -> float:
    """The angle between the outermost ones, seen from the middle."""
    low, high = np.degrees(np.arctan(np.radians([tangents_deg.min(), tangents_deg.max()])))
    return float(high - low)


def turned_by(mosaic: MosaicView) -> str:
    """Who tells how all panels were turned: 'author', 'picture', or 'north-up' where one is not known."""
    sources = {panel.turned_by or "north-up" for panel in mosaic.panels}
    return next(source for source in ("north-up", "author", "picture") if source in sources)
