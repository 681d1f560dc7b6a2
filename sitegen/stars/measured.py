"""A measurement beside the frame it was made in: what is kept, saved to a small file, read back and shown."""

from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from sitegen.stars.digits import SIZE_DECIMALS, rounded
from sitegen.stars.records import FieldPattern, StarRing, StarSurvey


class SurveyedFrame(Struct, frozen=True):
    """`file` as its author wrote it; `taken` when the exposure began (UTC), `binning` along a side: None where the frame does not
    say. The pattern follows from the survey's zones alone."""

    file: str
    taken: datetime | None
    binning: int | None
    survey: StarSurvey
    pattern: FieldPattern


class RingedFrame(Struct, frozen=True):
    """The same for a defocused star, in a frame of that size."""

    file: str
    taken: datetime | None
    binning: int | None
    width_px: int
    height_px: int
    ring: StarRing


def scaled(survey: StarSurvey, scale_arcsec_px: float | None) -> StarSurvey:
    """The same survey at that image scale, for a frame that does not tell its own."""

    def seen(fwhm_px: float | None) -> float | None:
        return None if fwhm_px is None or scale_arcsec_px is None else rounded(fwhm_px * scale_arcsec_px, SIZE_DECIMALS)

    return replace(
        survey,
        scale_arcsec_px=scale_arcsec_px,
        fwhm_arcsec=seen(survey.fwhm_px),
        zones=tuple(replace(zone, fwhm_arcsec=seen(zone.fwhm_px)) for zone in survey.zones),
    )
