"""How wide and how round stars are over the field, frame by frame."""

from typing import Any

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView, SurveyView
from sitegen.stars.records import Zone

ZONE_KEYS = ("x", "y", "stars", "fwhm_px", "fwhm_arcsec", "elongation", "angle_deg", "scatter_px", "scatter_e")


def star_shapes(view: EntryView) -> list[dict[str, Any]]:
    """One object a frame that the entry names in `star_survey`, in its order."""
    return [_shapes(one) for one in view.surveys]


def _shapes(one: SurveyView) -> dict[str, Any]:
    survey, pattern = one.frame.survey, one.frame.pattern
    return {
        "file": one.frame.file,
        "taken": one.frame.taken,
        "star_count": survey.star_count,
        "width_px": survey.width_px,
        "height_px": survey.height_px,
        "scale_arcsec_px": survey.scale_arcsec_px,
        "fwhm_px": survey.fwhm_px,
        "fwhm_arcsec": survey.fwhm_arcsec,
        "elongation": survey.elongation,
        "angle_deg": survey.angle_deg,
        "zones": [_zone(zone) for zone in survey.zones],
        "pattern": {
            "kind": pattern.kind,
            "words": pattern.words,
            "sureness": pattern.sureness,
            "direction_deg": pattern.direction_deg,
            "orientation": pattern.orientation,
            "evidence": list(pattern.evidence),
        },
    }


def _zone(zone: Zone) -> dict[str, Any]:
    return {key: getattr(zone, key) for key in ZONE_KEYS}


FACTS: tuple[Fact[EntryView], ...] = (
    Fact(
        "star_shapes",
        "Star shapes over the field",
        "",
        star_shapes,
        "A Moffat profile fitted to up to 40 stars in each of 5 × 3 zones: medians, null where a zone has fewer than five. "
        "Zones run from the bottom left; angles from the row towards the top.",
        "A. F. J. Moffat, Astronomy & Astrophysics 3, 455 (1969); the zones and the names of the patterns: common practice",
        3,
    ),
)
