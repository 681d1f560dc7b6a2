"""What a solved picture says of the train, beside what is printed on the tube."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import focal_length_from_scale_mm


def measured_focal_length_mm(view: OpticsView) -> float | None:
    """None where no picture of this train is solved."""
    scale = view.measured_scale_arcsec_px
    return focal_length_from_scale_mm(view.train.camera.pixel_um, view.binning, scale) if scale else None


MEASURED_SCALE_ARCSEC_PX: Fact[OpticsView] = Fact(
    "Measured scale",
    "″/px",
    lambda view: view.measured_scale_arcsec_px,
    "The scale that a picture's plate solution gives for the camera's own pixels.",
    "the picture's plate solution",
    4,
)
MEASURED_FOCAL_LENGTH_MM: Fact[OpticsView] = Fact(
    "Measured focal length",
    "mm",
    measured_focal_length_mm,
    "206.265 × pixel size in µm × binning ÷ measured scale.",
    "definition",
    1,
)
