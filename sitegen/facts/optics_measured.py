"""What a solved picture says of the train, beside what is printed on the tube; what a simulated one says has other names."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import focal_length_from_scale_mm


def measured_focal_length_mm(view: OpticsView) -> float | None:
    """None where no picture of this train is solved."""
    return _focal_length_mm(view, view.measured_scale_arcsec_px)


def simulated_focal_length_mm(view: OpticsView) -> float | None:
    """None where no simulated picture of this train is solved."""
    return _focal_length_mm(view, view.simulated_scale_arcsec_px)


def _focal_length_mm(view: OpticsView, scale: float | None) -> float | None:
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
SIMULATED_SCALE_ARCSEC_PX: Fact[OpticsView] = Fact(
    "Scale in a simulated picture",
    "″/px",
    lambda view: view.simulated_scale_arcsec_px,
    (
        "The scale that a simulated picture's plate solution gives for the camera's own pixels: what was simulated, no"
        " measurement of the train."
    ),
    "the picture's plate solution",
    4,
)
SIMULATED_FOCAL_LENGTH_MM: Fact[OpticsView] = Fact(
    "Focal length in a simulated picture",
    "mm",
    simulated_focal_length_mm,
    "206.265 × pixel size in µm × binning ÷ scale in a simulated picture: what was simulated, no measurement of the train.",
    "definition",
    1,
)
