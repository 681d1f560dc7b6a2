"""Every published number: its place in facts.json, its type, and the fact that computes it.

A record is an object of facts.json, its fields in the file's order. A new fact is one file and one line here; a fact that is
taken away takes its field along, and the type checker names every page and chart that read it.
"""

from typing import Annotated

from msgspec import Struct, field

from sitegen.diary.entry import PictureType, Stage
from sitegen.diary.rig import CautionKind
from sitegen.facts import (
    entry_identity,
    integration_by_filter,
    integration_dark_equivalent,
    integration_growth,
    integration_recalled,
    integration_shared,
    integration_totals,
    mosaic,
    night_advice,
    night_body,
    night_conditions,
    night_moon,
    night_polar,
    night_sun,
    night_target,
    night_use,
    optics_light,
    optics_measured,
    optics_resolution,
    optics_sampling,
    optics_scale,
    optics_train,
    picture_pointing,
    sub_log,
    sub_measures,
    sub_sky,
    target_identity,
)
from sitegen.facts.cautions import CAUTIONS
from sitegen.facts.fact import Numbers, Pair, Quantity, Text, Truth
from sitegen.facts.star_rings import STAR_RINGS, FrameRing
from sitegen.facts.star_shapes import STAR_SHAPES, FrameShapes
from sitegen.facts.views import PanelSource


class TargetFacts(Struct, frozen=True):
    name: Annotated[str, target_identity.NAME]
    ra_deg: Annotated[Quantity, target_identity.RA_DEG]
    dec_deg: Annotated[Quantity, target_identity.DEC_DEG]
    constellation: Annotated[Text, target_identity.CONSTELLATION]
    kind: Annotated[Text, target_identity.KIND]
    size_arcmin: Annotated[Pair, target_identity.SIZE_ARCMIN]
    magnitude: Annotated[Quantity, target_identity.MAGNITUDE]


class OpticsFacts(Struct, frozen=True):
    """One train at one binning, as the entry used it."""

    rig: Annotated[str, optics_train.RIG]
    from_evening: Annotated[Text, optics_train.FROM] = field(name="from")
    binning: Annotated[int, optics_train.BINNING]
    focal_length_mm: Annotated[float | int, optics_train.FOCAL_LENGTH_MM]
    f_ratio: Annotated[Quantity, optics_train.F_RATIO]
    scale_arcsec_px: Annotated[float | int, optics_scale.SCALE_ARCSEC_PX]
    field_deg: Annotated[tuple[float | int, float | int], optics_scale.FIELD_DEG]
    field_diagonal_deg: Annotated[float | int, optics_scale.FIELD_DIAGONAL_DEG]
    rayleigh_arcsec: Annotated[Quantity, optics_resolution.RAYLEIGH_ARCSEC]
    dawes_arcsec: Annotated[Quantity, optics_resolution.DAWES_ARCSEC]
    seeing_arcsec: Annotated[Quantity, optics_sampling.SEEING_ARCSEC]
    sampling_px_per_fwhm: Annotated[Quantity, optics_sampling.SAMPLING_PX_PER_FWHM]
    sampling: Annotated[Text, optics_sampling.SAMPLING]
    measured_scale_arcsec_px: Annotated[Quantity, optics_measured.MEASURED_SCALE_ARCSEC_PX]
    measured_focal_length_mm: Annotated[Quantity, optics_measured.MEASURED_FOCAL_LENGTH_MM]
    simulated_scale_arcsec_px: Annotated[Quantity, optics_measured.SIMULATED_SCALE_ARCSEC_PX]
    simulated_focal_length_mm: Annotated[Quantity, optics_measured.SIMULATED_FOCAL_LENGTH_MM]
    integration_s: Annotated[float | int, optics_light.INTEGRATION_S]
    by_filter: Annotated[dict[str, optics_light.TrainFilter], optics_light.BY_FILTER]


class IntegrationFacts(Struct, frozen=True):
    """`by_filter` by the filter's short name, `by_night` by the evening as ISO 8601."""

    total_s: Annotated[float | int, integration_totals.TOTAL_S]
    recalled_s: Annotated[float | int, integration_recalled.RECALLED_S]
    kept: Annotated[int, integration_totals.KEPT]
    discarded: Annotated[int, integration_totals.DISCARDED]
    discarded_s: Annotated[float | int, integration_totals.DISCARDED_S]
    broadband_s: Annotated[float | int, integration_totals.BROADBAND_S]
    narrowband_s: Annotated[float | int, integration_totals.NARROWBAND_S]
    dark_equivalent_s: Annotated[Quantity, integration_dark_equivalent.DARK_EQUIVALENT_S]
    shared_s: Annotated[float | int, integration_shared.SHARED_S]
    by_filter: Annotated[dict[str, integration_by_filter.FilterTotals], integration_by_filter.BY_FILTER]
    by_night: Annotated[dict[str, float | int], integration_by_filter.BY_NIGHT]


class MoonFacts(Struct, frozen=True):
    illuminated: Annotated[Quantity, night_moon.MOON_ILLUMINATED]
    phase: Annotated[Text, night_moon.MOON_PHASE]
    age_days: Annotated[Quantity, night_moon.MOON_AGE_DAYS]
    rise: Annotated[Text, night_moon.MOON_RISE]
    set: Annotated[Text, night_moon.MOON_SET]
    up_share_of_dark: Annotated[Quantity, night_moon.MOON_UP_SHARE_OF_DARK]
    dark_and_moonless_s: Annotated[Quantity, night_moon.MOON_DARK_AND_MOONLESS_S]


class TargetOfNightFacts(Struct, frozen=True):
    transit: Annotated[Text, night_target.TARGET_TRANSIT]
    max_altitude_deg: Annotated[Quantity, night_target.TARGET_MAX_ALTITUDE_DEG]
    min_airmass: Annotated[Quantity, night_target.TARGET_MIN_AIRMASS]
    positions_from: Annotated[Text, night_body.POSITIONS_FROM]
    ra_deg: Annotated[Quantity, night_body.BODY_RA_DEG]
    dec_deg: Annotated[Quantity, night_body.BODY_DEC_DEG]
    size_arcsec: Annotated[Quantity, night_body.BODY_SIZE_ARCSEC]
    elongation_deg: Annotated[Quantity, night_body.BODY_ELONGATION_DEG]
    illuminated: Annotated[Quantity, night_body.BODY_ILLUMINATED]


class ConditionsFacts(Struct, frozen=True):
    guiding_rms_arcsec: Annotated[Quantity, night_conditions.GUIDING_RMS_ARCSEC]
    temperature_c: Annotated[Quantity, night_conditions.TEMPERATURE_C]
    humidity_percent: Annotated[Quantity, night_conditions.HUMIDITY_PERCENT]
    wind_m_s: Annotated[Quantity, night_conditions.WIND_M_S]
    cloud_percent: Annotated[Quantity, night_conditions.CLOUD_PERCENT]
    sky_mag_arcsec2: Annotated[Quantity, night_conditions.SKY_MAG_ARCSEC2]


class PolarFacts(Struct, frozen=True):
    error_arcmin: Annotated[Quantity, night_polar.POLAR_ERROR_ARCMIN]
    drift_arcsec_min: Annotated[Quantity, night_polar.POLAR_DRIFT_ARCSEC_MIN]
    corner_smear_px: Annotated[Quantity, night_polar.POLAR_CORNER_SMEAR_PX]
    typical_corner_smear_px: Annotated[Quantity, night_polar.POLAR_TYPICAL_CORNER_SMEAR_PX]


class NightFacts(Struct, frozen=True):
    """One night at one site. Times are ISO 8601 UTC, as published."""

    evening_of: Annotated[str, night_sun.EVENING_OF]
    site: Annotated[str, night_sun.SITE]
    sunset: Annotated[Text, night_sun.SUNSET]
    sunrise: Annotated[Text, night_sun.SUNRISE]
    dark_start: Annotated[Text, night_sun.DARK_START]
    dark_end: Annotated[Text, night_sun.DARK_END]
    dark_s: Annotated[Quantity, night_sun.DARK_S]
    nautical_dark_s: Annotated[Quantity, night_sun.NAUTICAL_DARK_S]
    moon: MoonFacts
    target: TargetOfNightFacts
    integration_s: Annotated[float | int, night_use.INTEGRATION_S]
    first_start: Annotated[Text, night_use.FIRST_START]
    last_end: Annotated[Text, night_use.LAST_END]
    used_share_of_dark: Annotated[Quantity, night_use.USED_SHARE_OF_DARK]
    advice: Annotated[Text, night_advice.ADVICE]
    moon_down: Annotated[tuple[tuple[str, str], ...] | None, night_advice.MOON_DOWN]
    followed: Annotated[Truth, night_advice.FOLLOWED]
    polar: PolarFacts
    conditions: ConditionsFacts


class SubFacts(Struct, frozen=True):
    """The light frames in time order, as columns of one length."""

    start: Annotated[tuple[str, ...], sub_log.START]
    exposure_s: Annotated[tuple[float | int, ...], sub_log.EXPOSURE_S]
    filter: Annotated[tuple[str, ...], sub_log.FILTER]
    kept: Annotated[tuple[bool, ...], sub_log.KEPT]
    target_altitude_deg: Annotated[Numbers, sub_sky.TARGET_ALTITUDE_DEG]
    airmass: Annotated[Numbers, sub_sky.AIRMASS]
    moon_altitude_deg: Annotated[Numbers, sub_sky.MOON_ALTITUDE_DEG]
    moon_separation_deg: Annotated[Numbers, sub_sky.MOON_SEPARATION_DEG]
    moon_illuminated: Annotated[Numbers, sub_sky.MOON_ILLUMINATED]
    sky_brightening_mag: Annotated[Numbers, sub_sky.SKY_BRIGHTENING_MAG]
    sun_altitude_deg: Annotated[Numbers, sub_sky.SUN_ALTITUDE_DEG]
    reason: Annotated[tuple[str | None, ...], sub_measures.REASON]
    fwhm_arcsec: Annotated[Numbers, sub_measures.FWHM_ARCSEC]
    elongation: Annotated[Numbers, sub_measures.ELONGATION]
    stars: Annotated[Numbers, sub_measures.STARS]
    guiding_rms_arcsec: Annotated[Numbers, sub_measures.GUIDING_RMS_ARCSEC]
    guiding_ra_rms_arcsec: Annotated[Numbers, sub_measures.GUIDING_RA_RMS_ARCSEC]
    guiding_dec_rms_arcsec: Annotated[Numbers, sub_measures.GUIDING_DEC_RMS_ARCSEC]
    guiding_drift_arcsec_min: Annotated[Numbers, sub_measures.GUIDING_DRIFT_ARCSEC_MIN]
    sky_mag_arcsec2: Annotated[Numbers, sub_measures.SKY_MAG_ARCSEC2]


class PictureFacts(Struct, frozen=True):
    file: Annotated[str, picture_pointing.FILE]
    type: Annotated[PictureType, picture_pointing.TYPE]
    solved_by: Annotated[Text, picture_pointing.SOLVED_BY]
    not_solved: Annotated[Text, picture_pointing.NOT_SOLVED]
    ra_deg: Annotated[Quantity, picture_pointing.RA_DEG]
    dec_deg: Annotated[Quantity, picture_pointing.DEC_DEG]
    field_deg: Annotated[Pair, picture_pointing.FIELD_DEG]
    scale_arcsec_px: Annotated[Quantity, picture_pointing.SCALE_ARCSEC_PX]
    rotation_deg: Annotated[Quantity, picture_pointing.ROTATION_DEG]
    mirrored: Annotated[Truth, picture_pointing.MIRRORED]
    stars_matched: Annotated[int | None, picture_pointing.STARS_MATCHED]
    residual_arcsec: Annotated[Quantity, picture_pointing.RESIDUAL_ARCSEC]
    corners_sure: Annotated[Truth, picture_pointing.CORNERS_SURE]


class MosaicFacts(Struct, frozen=True):
    field_deg: Annotated[Pair, mosaic.WHOLE_FIELD_DEG]
    turned_by: Annotated[str, mosaic.TURNED_BY]
    elsewhere_s: Annotated[float | int, mosaic.ELSEWHERE_S]
    elsewhere: Annotated[int, mosaic.ELSEWHERE]


class PanelFacts(Struct, frozen=True):
    """One field of a mosaic."""

    name: Annotated[str, mosaic.NAME]
    told_by: Annotated[PanelSource, mosaic.SOURCE]
    ra_deg: Annotated[Quantity, mosaic.RA_DEG]
    dec_deg: Annotated[Quantity, mosaic.DEC_DEG]
    field_deg: Annotated[Pair, mosaic.FIELD_DEG]
    rotation_deg: Annotated[Quantity, mosaic.ROTATION_DEG]
    integration_s: Annotated[float | int, mosaic.INTEGRATION_S]
    kept: Annotated[int, mosaic.KEPT]
    discarded: Annotated[int, mosaic.DISCARDED]
    by_filter: Annotated[dict[str, optics_light.TrainFilter], mosaic.BY_FILTER]


class EntryFacts(Struct, frozen=True):
    """Everything that facts.json says of one entry: rounded, and None where it is not known."""

    schema_number: int = field(name="schema")
    entry: Annotated[str, entry_identity.ENTRY]
    title: Annotated[str, entry_identity.TITLE]
    stage: Annotated[Stage, entry_identity.STAGE]
    target: TargetFacts | None
    optics: tuple[OpticsFacts, ...]
    integration: IntegrationFacts
    nights: tuple[NightFacts, ...]
    subs: SubFacts
    pictures: tuple[PictureFacts, ...]
    mosaic: MosaicFacts | None
    panels: tuple[PanelFacts, ...]
    star_shapes: Annotated[tuple[FrameShapes, ...], STAR_SHAPES]
    star_rings: Annotated[tuple[FrameRing, ...], STAR_RINGS]
    cautions: Annotated[tuple[CautionKind, ...], CAUTIONS]
    next_hour_gain: Annotated[Quantity, integration_growth.NEXT_HOUR_GAIN]
