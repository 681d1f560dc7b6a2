"""What the polar error that the author noted did to the night's pictures."""

import math

from sitegen.diary.rig import Train
from sitegen.facts.fact import Fact
from sitegen.facts.views import NightView
from sitegen.sky.polar_error import TYPICAL_SHARE, greatest_drift_arcsec_min, greatest_turn_rad

AUTHOR = "the author"
SOURCE = "rotation about a displaced axis, derived, to first order: good to the polar error × tan δ, in radians"


def error_arcmin(night: NightView) -> float | None:
    return night.note.polar_error_arcmin if night.note else None


def drift_arcsec_min(night: NightView) -> float | None:
    error = error_arcmin(night)
    return None if error is None else greatest_drift_arcsec_min(error)


def corner_smear_px(night: NightView) -> float | None:
    """At the corner of the kept sub that suffers most, in its own pixels; None without one, without a declination or near the
    pole."""
    error, dec_deg = error_arcmin(night), _dec_deg(night)
    if error is None or dec_deg is None:
        return None
    turns = ((light.sub, greatest_turn_rad(error, light.sub.exposure_s, dec_deg)) for light in night.kept)
    smears = [turn * corner_px(night.trains[sub.rig], sub.binning or 1) for sub, turn in turns if turn is not None]
    return max(smears, default=None)


def typical_corner_smear_px(night: NightView) -> float | None:
    smear_px = corner_smear_px(night)
    return None if smear_px is None else TYPICAL_SHARE * smear_px


def corner_px(train: Train, binning: int) -> float:
    """From the middle of the frame to its corner, in binned pixels."""
    return math.hypot(train.camera.width_px, train.camera.height_px) / 2 / binning


def _dec_deg(night: NightView) -> float | None:
    if night.target is not None and night.target.dec_deg is not None:
        return night.target.dec_deg
    body = night.target_sky.body if night.target_sky else None
    return body.dec_deg if body else None


POLAR_ERROR_ARCMIN: Fact[NightView] = Fact(
    "Polar alignment error", "′", error_arcmin, "How far the mount's axis missed the pole, as the author noted it.", AUTHOR, 2
)
POLAR_DRIFT_ARCSEC_MIN: Fact[NightView] = Fact(
    "Drift by polar error, at most",
    "″/min",
    drift_arcsec_min,
    "How fast stars drift where nothing guides, while the axis lies in the worst direction.",
    SOURCE,
    3,
)
POLAR_CORNER_SMEAR_PX: Fact[NightView] = Fact(
    "Smear in the corners by polar error, at most",
    "px",
    corner_smear_px,
    "By how much the field's turning about a guide star in the middle moves a corner during the kept sub that suffers most, in"
    " pixels as binned; a guide star elsewhere adds its own distance.",
    SOURCE,
    3,
)
POLAR_TYPICAL_CORNER_SMEAR_PX: Fact[NightView] = Fact(
    "Smear in the corners by polar error, typically",
    "px",
    typical_corner_smear_px,
    "The mean over all directions in which the axis may lie: 2/π of the most.",
    SOURCE,
    3,
)
