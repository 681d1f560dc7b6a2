"""Where it lies: the target's place on the sky, and how large it is in the field."""

from collections.abc import Mapping
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from sitegen.charts.chart import Drawn
from sitegen.charts.finder_map import finder_chart
from sitegen.charts.finder_values import CameraField, FinderValues
from sitegen.diary.target import Target
from sitegen.facts.target_identity import constellation
from sitegen.facts.views import MosaicView, OpticsView
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.prepared import PreparedEntry

OF_BODY = ("positions_from", "ra_deg", "dec_deg", "size_arcsec", "elongation_deg", "illuminated")
ROWS = ("ra_deg", "dec_deg", "constellation", "kind", "size_arcmin", "magnitude")


class Place(Struct, frozen=True):
    """`moving_rows`: where the Moon, a planet, or what a table follows stood on its first night, `moving_on`."""

    target: Target
    rows: tuple[Shown, ...]
    finder: Drawn | None = None
    moving_on: date | None = None
    moving_rows: tuple[Shown, ...] = ()


class Where(Struct, frozen=True):
    places: tuple[Place, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Where | None:
    targets = prepared.view.entry.targets
    fields = _fields(prepared, book)
    finders = (_finder(target, _fitting(target, prepared, fields), book) for target in targets)
    places = (replace(place_of(target, book), finder=finder) for target, finder in zip(targets, finders, strict=True))
    return Where(tuple(_followed(place, prepared, book) for place in places)) if targets else None


def _followed(place: Place, prepared: PreparedEntry, book: DiaryIndex) -> Place:
    """With what is known of a target that moves."""
    for night, facts in zip(prepared.view.nights, prepared.facts.nights, strict=True):
        is_its = night.target is not None and night.target.slug == place.target.slug
        if is_its and facts.target.ra_deg is not None:
            values = {key: getattr(facts.target, key) for key in OF_BODY}
            return replace(place, moving_on=night.evening, moving_rows=book.formatter.show_known("nights.target", values))
    return place


def _fields(prepared: PreparedEntry, book: DiaryIndex) -> dict[str, CameraField]:
    """The field of each rig the entry used, by its slug, turned as a solved picture says, where one does."""
    widths = {row.rig: row.field_deg for row in prepared.facts.optics}
    solved = {row.rig.slug: _solved(row, prepared, book) for row in prepared.view.optics}
    return {rig: solved[rig] or CameraField(book.rigs[rig].name, *field) for rig, field in widths.items()}


def _solved(row: OpticsView, prepared: PreparedEntry, book: DiaryIndex) -> CameraField | None:
    """The field of the picture that measured this train, else of the simulated one; a crop is drawn as the crop it is."""
    file = row.measured_by or row.simulated_by
    picture = next((picture for picture in prepared.view.pictures if picture.file == file), None)
    solved = picture.solution if picture else None
    if solved is None:
        return None
    field = *solved.field_deg, solved.rotation_deg, solved.ra_deg, solved.dec_deg
    return CameraField(book.rigs[row.rig.slug].name, *field, is_simulated=row.measured_by is None)


class _Fields(Struct, frozen=True):
    fields: tuple[CameraField, ...]
    panels: tuple[CameraField, ...] = ()
    whole_deg: tuple[float, float] | None = None


def _fitting(target: Target, prepared: PreparedEntry, fields: Mapping[str, CameraField]) -> _Fields:
    """A mosaic, which is of the first target, shows its panels instead of the fields of their rigs."""
    mosaic = prepared.view.mosaic
    panels = panel_fields(mosaic) if mosaic and target is prepared.view.entry.targets[0] else ()
    if mosaic is None or not panels:
        return _Fields(tuple(fields.values()))
    of_panels = {panel.rig for panel in mosaic.panels}
    whole = prepared.facts.mosaic.field_deg if prepared.facts.mosaic else None
    return _Fields(tuple(field for rig, field in fields.items() if rig not in of_panels), panels, whole)


def panel_fields(mosaic: MosaicView) -> tuple[CameraField, ...]:
    """Those of which place and field are known."""
    return tuple(
        CameraField(panel.name, *panel.field_deg, panel.rotation_deg, panel.ra_deg, panel.dec_deg)
        for panel in mosaic.panels
        if panel.field_deg is not None and panel.ra_deg is not None and panel.dec_deg is not None
    )


def _finder(target: Target, shown: _Fields, book: DiaryIndex) -> Drawn | None:
    if target.ra_deg is None or target.dec_deg is None:
        return None
    place = target.ra_deg, target.dec_deg, target.size_arcmin
    values = FinderValues(target.name, *place, shown.fields, target.position_angle_deg, shown.panels, shown.whole_deg)
    return finder_chart(values, book.voice, f"finder-{target.slug}")


def place_of(target: Target, book: DiaryIndex) -> Place:
    values = {
        "ra_deg": target.ra_deg,
        "dec_deg": target.dec_deg,
        "constellation": constellation(target),
        "kind": target.kind,
        "size_arcmin": list(target.size_arcmin) if target.size_arcmin else None,
        "magnitude": target.magnitude,
    }
    rows = tuple(book.formatter.show(f"target.{key}", values[key]) for key in ROWS if values[key] is not None)
    return Place(target, rows)


SECTION = EntrySection("where", section, "where")
