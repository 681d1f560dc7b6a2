"""Catalogue objects laid over a solved picture: where each is, and its outline as an ellipse in pixels."""

from collections.abc import Iterable

import numpy as np
from msgspec import Struct

from sitegen.stars.digits import direction
from sitegen.stars.solving.solution import Solution
from sitegen.stars.solving.tangent_plane import FloatArray, to_sky

_ROUND_WITHIN = 1e-3
"""Of its axis: what no eye tells from a circle."""


class SkyObject(Struct, frozen=True):
    """ICRS degrees; full axes in arcminutes, None where unknown; position angle of the major axis, degrees
    from north through east, None where unknown."""

    name: str
    ra_deg: float
    dec_deg: float
    major_arcmin: float | None = None
    minor_arcmin: float | None = None
    position_angle_deg: float | None = None


class PlacedObject(Struct, frozen=True):
    """An object in the picture: middle and semi-axes in picture pixels (None: size unknown), and the direction
    of the major axis in degrees from the x axis towards the y axis (clockwise as seen, what SVG's rotate() takes), in
    [0, 180). inside: whether its middle is in the frame."""

    name: str
    x_px: float
    y_px: float
    semi_major_px: float | None
    semi_minor_px: float | None
    angle_deg: float
    inside: bool


def place_objects(solution: Solution, objects: Iterable[SkyObject]) -> tuple[PlacedObject, ...]:
    """Those objects of which any part can be in the frame, in the order given.

    An outline is drawn as the picture maps its middle: exact for small ones; at 5 degrees from the middle of
    the frame the edge of a 1 degree object is off by 1 % of its size. Without a position angle it is the circle of the
    major axis, without a minor axis too.
    """
    placed = (_placed(solution, sky_object) for sky_object in objects)
    return tuple(sky_object for sky_object in placed if sky_object is not None)


def _placed(solution: Solution, sky_object: SkyObject) -> PlacedObject | None:
    x, y = (float(value) for value in solution.to_pixel(sky_object.ra_deg, sky_object.dec_deg))
    if not np.isfinite([x, y]).all():
        return None
    outline = _outline(solution, sky_object)
    reach = (0.0, 0.0) if outline is None else tuple(float(value) for value in np.hypot(outline[:, 0], outline[:, 1]))
    if not _touches(solution, (x, y), (reach[0], reach[1])):
        return None
    inside = _touches(solution, (x, y), (0.0, 0.0))
    if outline is None:
        return PlacedObject(sky_object.name, x, y, None, None, 0.0, inside)
    directions, (major, minor), _ = np.linalg.svd(outline)
    angle = float(np.degrees(np.arctan2(directions[1, 0], directions[0, 0])))
    # the longer axis of a circle points wherever a last bit has it
    angle_deg = direction(angle, 180.0) if major - minor > _ROUND_WITHIN * major else 0.0
    return PlacedObject(sky_object.name, x, y, float(major), float(minor), angle_deg, inside)


def _touches(solution: Solution, at: tuple[float, float], reach: tuple[float, float]) -> bool:
    """Whether the box around an ellipse meets the frame."""
    return all(-0.5 - far <= place <= size - 0.5 + far for place, far, size
               in zip(at, reach, (solution.width_px, solution.height_px), strict=True))


def _outline(solution: Solution, sky_object: SkyObject) -> FloatArray | None:
    """The matrix that makes the object's ellipse of the unit circle, pixels; its rows' lengths are the half box."""
    if sky_object.major_arcmin is None:
        return None
    round_one = sky_object.position_angle_deg is None or sky_object.minor_arcmin is None
    minor = sky_object.major_arcmin if round_one else sky_object.minor_arcmin
    axes = np.diag([sky_object.major_arcmin / 120, (minor or sky_object.major_arcmin) / 120])
    angle = np.radians(sky_object.position_angle_deg or 0.0)
    east_north = np.array([[np.sin(angle), np.cos(angle)], [np.cos(angle), -np.sin(angle)]])
    return np.asarray(_pixels_per_degree(solution, sky_object) @ east_north @ axes)


def _pixels_per_degree(solution: Solution, sky_object: SkyObject) -> FloatArray:
    """Columns: pixels moved for a degree to the east and to the north of the object."""
    step = solution.scale_arcsec_px / 3600
    ra, dec = to_sky([step, -step, 0.0, 0.0], [0.0, 0.0, step, -step], sky_object.ra_deg, sky_object.dec_deg)
    x, y = solution.to_pixel(ra, dec)
    return np.array([[x[0] - x[1], x[2] - x[3]], [y[0] - y[1], y[2] - y[3]]]) / (2 * step)
