"""How wide and how round stars are over the field, frame by frame."""

from msgspec import Struct

from sitegen.diary.entry import PictureType
from sitegen.facts.fact import Fact, Quantity, Text
from sitegen.facts.utc_text import utc_text
from sitegen.facts.views import EntryView, SurveyView


class ZoneShape(Struct, frozen=True):
    """Angles in degrees from the row towards the top; None where too few stars were measured."""

    x: float | int
    y: float | int
    stars: int
    fwhm_px: Quantity
    fwhm_arcsec: Quantity
    elongation: Quantity
    angle_deg: Quantity
    scatter_px: Quantity
    scatter_e: Quantity


class ShapePattern(Struct, frozen=True):
    kind: str
    words: str
    sureness: float | int
    direction_deg: Quantity
    orientation: Text
    evidence: tuple[str, ...]


class FrameShapes(Struct, frozen=True):
    """One frame that the entry names in `star_survey`."""

    file: str
    type: PictureType
    taken: Text
    star_count: int
    width_px: int
    height_px: int
    scale_arcsec_px: Quantity
    fwhm_px: Quantity
    fwhm_arcsec: Quantity
    elongation: Quantity
    angle_deg: Quantity
    zones: tuple[ZoneShape, ...]
    pattern: ShapePattern


def star_shapes(view: EntryView) -> tuple[FrameShapes, ...]:
    """One object a frame that the entry names in `star_survey`, in its order."""
    return tuple(_shapes(survey) for survey in view.surveys)


def _shapes(view: SurveyView) -> FrameShapes:
    survey, pattern, taken = view.frame.survey, view.frame.pattern, view.frame.taken
    return FrameShapes(
        file=view.frame.file,
        type=view.type,
        taken=utc_text(taken) if taken else None,
        star_count=survey.star_count,
        width_px=survey.width_px,
        height_px=survey.height_px,
        scale_arcsec_px=survey.scale_arcsec_px,
        fwhm_px=survey.fwhm_px,
        fwhm_arcsec=survey.fwhm_arcsec,
        elongation=survey.elongation,
        angle_deg=survey.angle_deg,
        zones=tuple(ZoneShape(**{name: getattr(zone, name) for name in ZoneShape.__struct_fields__}) for zone in survey.zones),
        pattern=ShapePattern(**{name: getattr(pattern, name) for name in ShapePattern.__struct_fields__}),
    )


STAR_SHAPES: Fact[EntryView] = Fact(
    "Star shapes over the field",
    "",
    star_shapes,
    (
        "A Moffat profile fitted to up to 40 stars in each of 5 × 3 zones: medians, null where fewer than 10 were"
        " measured in a zone. Width and elongation are those of the profile as recorded, the pixel's own width included:"
        " the fit averages the light over each pixel, and half of the averaged profile's height is where it is read."
        " Zones run from the bottom left; angles from the row towards the top. A frame is an"
        " observation unless its author calls it something else (`type`)."
    ),
    "A. F. J. Moffat, Astronomy & Astrophysics 3, 455 (1969); the zones and the names of the patterns: common practice",
    3,
)
