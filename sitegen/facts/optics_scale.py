"""Image scale and field of view."""

import math

from sitegen.facts.fact import Fact
from sitegen.facts.optics_train import focal_length_mm
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import field_deg, image_scale_arcsec_px

HOWELL = "S. B. Howell, Handbook of CCD Astronomy, 2nd ed., Cambridge 2006"
ON_PLATE_SCALE, ON_SAMPLING = f"{HOWELL}, section 4.1", f"{HOWELL}, on pixel sampling"


def scale_arcsec_px(view: OpticsView) -> float:
    """Arcseconds across one pixel of the binned frame."""
    return image_scale_arcsec_px(view.train.camera.pixel_um, view.binning, focal_length_mm(view))


def width_and_height_deg(view: OpticsView) -> list[float]:
    """Field across the frame's width and height, each through the centre."""
    camera = view.train.camera
    return [field_deg(side, camera.pixel_um, focal_length_mm(view)) for side in (camera.width_px, camera.height_px)]


def diagonal_deg(view: OpticsView) -> float:
    camera = view.train.camera
    return field_deg(math.hypot(camera.width_px, camera.height_px), camera.pixel_um, focal_length_mm(view))


SCALE_ARCSEC_PX: Fact[OpticsView] = Fact(
    "Image scale",
    "″/px",
    scale_arcsec_px,
    "206.265 × pixel size in µm × binning ÷ focal length in mm.",
    ON_PLATE_SCALE,
    4,
)
FIELD_DEG: Fact[OpticsView] = Fact(
    "Field of view",
    "°",
    width_and_height_deg,
    "2 · atan(sensor side ÷ 2 focal lengths), for width and height.",
    "geometry of a flat sensor behind a distortion-free lens",
    4,
)
FIELD_DIAGONAL_DEG: Fact[OpticsView] = Fact(
    "Field, corner to corner",
    "°",
    diagonal_deg,
    "2 · atan(sensor diagonal ÷ 2 focal lengths).",
    "geometry of a flat sensor behind a distortion-free lens",
    4,
)
