"""The train: telescope and camera as they stood, and what they make of the sky."""

from msgspec import Struct

from sitegen.diary.rig import Filter, Rig, Train
from sitegen.facts.registry import OpticsFacts
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.prepared import PreparedEntry


class TrainView(Struct, frozen=True):
    rig: Rig
    train: Train
    binning: int
    rows: tuple[Shown, ...]
    filters: tuple[Filter, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> tuple[TrainView, ...] | None:
    views = tuple(
        TrainView(
            rig=view.rig,
            train=view.train,
            binning=view.binning,
            rows=optics_shown(row, book),
            filters=tuple(rig_filter for short, rig_filter in prepared.view.filters if short in view.rig.filters),
        )
        for view, row in zip(prepared.view.optics, prepared.facts.optics, strict=True)
    )
    return views or None


def optics_shown(row: OpticsFacts, book: DiaryIndex) -> tuple[Shown, ...]:
    """What is known of the train, from the tube to the sky."""
    values = {
        "focal_length_mm": row.focal_length_mm,
        "f_ratio": row.f_ratio,
        "scale_arcsec_px": row.scale_arcsec_px,
        "field_deg": row.field_deg,
        "rayleigh_arcsec": row.rayleigh_arcsec,
        "seeing_arcsec": row.seeing_arcsec,
        "sampling_px_per_fwhm": row.sampling_px_per_fwhm,
        "sampling": row.sampling,
        "measured_scale_arcsec_px": row.measured_scale_arcsec_px,
        "measured_focal_length_mm": row.measured_focal_length_mm,
        "simulated_scale_arcsec_px": row.simulated_scale_arcsec_px,
        "simulated_focal_length_mm": row.simulated_focal_length_mm,
    }
    return book.formatter.show_known("optics", values)


SECTION = EntrySection("train", section, "train")
