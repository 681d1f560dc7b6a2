"""The train: telescope and camera as they stood, and what they make of the sky."""

from msgspec import Struct

from sitegen.diary.rig import Filter, Rig, Train
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.shown import Shown
from sitegen.pages.site_book import SiteBook

ROWS = (
    "focal_length_mm",
    "f_ratio",
    "scale_arcsec_px",
    "field_deg",
    "rayleigh_arcsec",
    "seeing_arcsec",
    "sampling_px_per_fwhm",
    "sampling",
    "measured_scale_arcsec_px",
    "measured_focal_length_mm",
)


class TrainView(Struct, frozen=True):
    rig: Rig
    train: Train
    binning: int
    rows: tuple[Shown, ...]
    filters: tuple[Filter, ...]


def section(prepared: PreparedEntry, book: SiteBook) -> tuple[TrainView, ...] | None:
    views = tuple(
        TrainView(
            rig=view.rig,
            train=view.train,
            binning=view.binning,
            rows=tuple(book.shower.show(f"optics.{key}", row[key]) for key in ROWS if row[key] is not None),
            filters=tuple(one for short, one in prepared.view.filters if short in view.rig.filters),
        )
        for view, row in zip(prepared.view.optics, prepared.facts["optics"], strict=True)
    )
    return views or None
