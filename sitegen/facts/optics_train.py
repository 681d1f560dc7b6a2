"""The train in front of the camera: focal length and focal ratio."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import effective_focal_length_mm, focal_ratio


def focal_length_mm(view: OpticsView) -> float:
    """Nominal focal length times the reducer's or Barlow's factor."""
    return effective_focal_length_mm(view.train.telescope.focal_length_mm, view.train.telescope.factor)


def f_ratio(view: OpticsView) -> float | None:
    """None for a train without an aperture."""
    aperture_mm = view.train.telescope.aperture_mm
    return focal_ratio(focal_length_mm(view), aperture_mm) if aperture_mm else None


RIG: Fact[OpticsView] = Fact("Rig", "", lambda view: view.rig.slug, "The rig that the entry or its log names.", "the author")
FROM: Fact[OpticsView] = Fact(
    "Train since",
    "",
    lambda view: view.train.from_evening.isoformat() if view.train.from_evening else None,
    "The evening from which the rig stood like this.",
    "the author",
)
BINNING: Fact[OpticsView] = Fact(
    "Binning",
    "",
    lambda view: view.binning,
    "Pixels joined into one, along each side.",
    "the capture log",
)
FOCAL_LENGTH_MM: Fact[OpticsView] = Fact(
    "Focal length",
    "mm",
    focal_length_mm,
    "The telescope's focal length times the factor of its reducer or Barlow.",
    "definition",
    2,
)
F_RATIO: Fact[OpticsView] = Fact("Focal ratio", "", f_ratio, "Focal length divided by aperture.", "definition", 2)
