"""Measured frames beside the rig they were taken with: which train stood that evening, and the scale where no header tells it."""

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from msgspec.structs import replace

from sitegen.diary.entry import Entry, PictureType
from sitegen.diary.rig import Rig
from sitegen.diary.rigs_used import rigs_of
from sitegen.diary.site import Site
from sitegen.facts.views import RingView, SurveyView
from sitegen.sky.optics import effective_focal_length_mm, image_scale_arcsec_px
from sitegen.stars.measured import RingedFrame, SurveyedFrame, scaled


def survey_view(
    frame: SurveyedFrame,
    entry: Entry,
    rigs: Mapping[str, Rig],
    sites: Mapping[str, Site],
    frame_type: PictureType = "observation",
) -> SurveyView:
    """In ″ by the frame's own scale, else by the train of that evening; in px alone without a rig."""
    rig, evening = _rig_of(entry, rigs), _evening(frame.taken, entry, sites)
    if frame.survey.scale_arcsec_px is None and rig is not None:
        scale = _train_scale(rig, evening, frame.binning or 1)
        frame = replace(frame, survey=scaled(frame.survey, scale))
    return SurveyView(frame, evening, rig.slug if rig else None, frame_type)


def ring_view(
    frame: RingedFrame,
    entry: Entry,
    rigs: Mapping[str, Rig],
    sites: Mapping[str, Site],
    frame_type: PictureType = "observation",
) -> RingView:
    rig = _rig_of(entry, rigs)
    return RingView(frame, _evening(frame.taken, entry, sites), rig.slug if rig else None, frame_type)


def _rig_of(entry: Entry, rigs: Mapping[str, Rig]) -> Rig | None:
    """The entry's own, else the only one its logs know; None where that leaves a choice."""
    used = rigs_of(entry)
    slug = entry.rig or (used[0] if len(used) == 1 else None)
    return rigs.get(slug) if slug else None


def _evening(taken: datetime | None, entry: Entry, sites: Mapping[str, Site]) -> date:
    """By civil noon at the entry's site, as good as solar noon for a frame of stars; without a date in the frame, the day the
    entry was published."""
    if taken is None:
        return entry.published
    used = sorted({sub.site for sub in entry.lights})
    site = sites.get(entry.site or (used[0] if used else ""))
    there = taken.astimezone(ZoneInfo(site.time_zone)) if site else taken
    return (there.replace(tzinfo=UTC) - timedelta(hours=12)).date()


def _train_scale(rig: Rig, evening: date, binning: int) -> float:
    train = rig.train_on(evening)
    focal_length_mm = effective_focal_length_mm(train.telescope.focal_length_mm, train.telescope.factor)
    return image_scale_arcsec_px(train.camera.pixel_um, binning, focal_length_mm)
