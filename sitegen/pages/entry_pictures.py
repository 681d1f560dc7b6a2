"""The entry's pictures as its page shows them: with steps, an overlay, what is known of where they point, or in pairs."""

from collections.abc import Iterator

from msgspec import Struct

from sitegen.cautions.sources import of_steps
from sitegen.diary import addresses
from sitegen.diary.rig import CautionKind
from sitegen.facts.registry import OpticsFacts
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.overlay import Ellipse, Letters, Marked, Overlay
from sitegen.pages.panel_outlines import PanelOutline, panel_outlines
from sitegen.pages.picture_cautions import kinds_of_figure
from sitegen.pages.picture_element import PictureView
from sitegen.pages.picture_view import PreparedPicture, PreparedStep, main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pictures.pointing_records import Pointing

ARROW_PX, LETTER_PX = 26.0, 38.0
BAR_START = 0.03


class LettersView(Struct, frozen=True):
    """`x` and `y` in percent of the picture; the letters themselves."""

    x: str
    y: str
    letters: Letters


class MarkedView(Struct, frozen=True):
    """`address` of the target's page, where an entry shows it."""

    letters: LettersView
    x: str
    y: str
    outline: Ellipse | None
    address: str | None
    is_target: bool


class Arrow(Struct, frozen=True):
    """From the compass's middle to its end, and where its letter stands, in px; `word` names its letter."""

    word: str
    x: float
    y: float
    letter_x: float
    letter_y: float


class OverlayView(Struct, frozen=True):
    """The overlay with its links; `bar_words` what the scale bar stands for, `bar_end` where it ends in percent."""

    overlay: Overlay
    grid_letters: tuple[LettersView, ...]
    objects: tuple[MarkedView, ...]
    bar_words: str
    bar_end: str
    arrows: tuple[Arrow, ...]
    panels: tuple[PanelOutline, ...] = ()
    panel_letters: tuple[LettersView, ...] = ()


class StepView(Struct, frozen=True):
    what_html: str
    picture: PictureView | None


class Compared(Struct, frozen=True):
    """`how` the picture tells the focal length: 'measured' or 'simulated'."""

    rig: str
    how: str
    focal_length: Shown
    nominal: Shown
    difference: str


class PlaceWords(Struct, frozen=True):
    """What is known of where the picture points: who says so, and numbers; or why it is not known. `unsure_corners`: found from
    stars, which do not vouch for its corners. `compared` names trains, with their focal length in this picture beside the nominal
    one."""

    origin: str | None
    matched: int
    unsure_corners: bool
    rows: tuple[Shown, ...]
    compared: tuple["Compared", ...]
    reason: str | None


class Figure(Struct, frozen=True):
    """One picture with everything that belongs to it; `before` is the earlier picture it is laid over, if any. `cautions` are of
    captions and alternative texts."""

    key: str
    picture: PictureView
    overlay: OverlayView | None
    place: PlaceWords | None
    steps: tuple[StepView, ...]
    before: PictureView | None = None
    after: PictureView | None = None
    cautions: tuple[CautionKind, ...] = ()
    cautions_of_steps: tuple[CautionKind, ...] = ()


def figures(prepared: PreparedEntry, book: DiaryIndex) -> tuple[Figure | None, tuple[Figure, ...]]:
    """The first figure, and the others in the author's order. A picture that another is laid over is shown with it."""
    main = main_picture(prepared.pictures)
    by_file = {picture.picture.file: picture for picture in prepared.pictures}
    under = {picture.picture.compare_with for picture in prepared.pictures if picture.picture.compare_with in by_file}
    shown = [picture for picture in prepared.pictures if picture is main or picture.picture.file not in under]
    figure_of = {id(picture): _figure(picture, place, prepared, book, by_file) for place, picture in enumerate(shown)}
    return (figure_of[id(main)] if main else None), tuple(figure_of[id(picture)] for picture in shown if picture is not main)


def _figure(
    picture: PreparedPicture, place: int, prepared: PreparedEntry, book: DiaryIndex, by_file: dict[str, PreparedPicture]
) -> Figure:
    other = by_file.get(picture.picture.compare_with or "")
    before, after = picture.pair or ((other, picture) if other else (None, None))
    return Figure(
        key=f"picture-{place + 1}",
        picture=picture_view(picture),
        overlay=_overlay(picture.overlay, _panels(picture, prepared), book) if picture.overlay else None,
        place=_place(picture, picture.pointing, prepared, book) if picture.pointing else None,
        steps=tuple(_step(step) for step in picture.steps),
        before=picture_view(before) if before else None,
        after=picture_view(after) if after else None,
        cautions=kinds_of_figure(picture, other),
        cautions_of_steps=of_steps(picture.picture.steps),
    )


def _step(step: PreparedStep) -> StepView:
    return StepView(to_inline_html(step.what), picture_view(step.picture) if step.picture else None)


def _panels(picture: PreparedPicture, prepared: PreparedEntry) -> tuple[PanelOutline, ...]:
    """Those of the entry's mosaic that reach into the picture."""
    solution = picture.pointing.solution if picture.pointing else None
    return panel_outlines(prepared.view.mosaic, solution) if solution else ()


def _overlay(overlay: Overlay, panels: tuple[PanelOutline, ...], book: DiaryIndex) -> OverlayView:
    share, arcmin = overlay.bar
    return OverlayView(
        overlay=overlay,
        grid_letters=tuple(_letters(letters) for letters in overlay.grid_letters),
        objects=tuple(_marked(marked, book) for marked in overlay.objects),
        bar_words=f"{arcmin:.0f}′" if arcmin < 60 else f"{arcmin / 60:.0f}°",
        bar_end=percent(BAR_START + share),
        arrows=(_arrow("north", *overlay.north), _arrow("east", *overlay.east)),
        panels=panels,
        panel_letters=tuple(_letters(Letters(panel.name, *panel.at, "middle")) for panel in panels if panel.at),
    )


def _arrow(word: str, x: float, y: float) -> Arrow:
    return Arrow(word, *(round(value, 1) + 0.0 for value in (ARROW_PX * x, ARROW_PX * y, LETTER_PX * x, LETTER_PX * y + 4.5)))


def _letters(letters: Letters) -> LettersView:
    return LettersView(percent(letters.x), percent(letters.y), letters)


def percent(share: float) -> str:
    return f"{100 * share:.3f}".rstrip("0").rstrip(".") + "%"


def _marked(marked: Marked, book: DiaryIndex) -> MarkedView:
    slug = next((slug for slug in marked.slugs if slug in book.by_target), None)
    address = addresses.target(slug) if slug else None
    return MarkedView(_letters(marked.letters), percent(marked.x), percent(marked.y), marked.outline, address, marked.is_target)


def _place(picture: PreparedPicture, pointing: Pointing, prepared: PreparedEntry, book: DiaryIndex) -> PlaceWords:
    row = next(row for row in prepared.facts.pictures if row.file == picture.picture.file)
    values = {
        "scale_arcsec_px": row.scale_arcsec_px,
        "field_deg": row.field_deg,
        "rotation_deg": row.rotation_deg,
        "residual_arcsec": row.residual_arcsec,
    }
    rows = book.formatter.show_known("pictures", values)
    matched = pointing.solution.matched if pointing.solution else 0
    compared = tuple(_compared(picture, prepared, book))
    return PlaceWords(pointing.origin, matched, row.corners_sure is False, rows, compared, pointing.reason)


def _compared(picture: PreparedPicture, prepared: PreparedEntry, book: DiaryIndex) -> Iterator[Compared]:
    """For the trains that this picture measures, or was simulated with."""
    for view, row in zip(prepared.view.optics, prepared.facts.optics, strict=True):
        if view.measured_by == picture.picture.file:
            yield _beside_nominal("measured", row.measured_focal_length_mm or 0.0, row, book)
        if view.simulated_by == picture.picture.file:
            yield _beside_nominal("simulated", row.simulated_focal_length_mm or 0.0, row, book)


def _beside_nominal(how: str, focal_length_mm: float, row: OpticsFacts, book: DiaryIndex) -> Compared:
    return Compared(
        book.rigs[row.rig].name,
        how,
        book.formatter.show(f"optics.{how}_focal_length_mm", focal_length_mm),
        book.formatter.show("optics.focal_length_mm", row.focal_length_mm),
        _difference(focal_length_mm, row.focal_length_mm, book),
    )


def _difference(focal_length_mm: float, nominal_mm: float, book: DiaryIndex) -> str:
    share = focal_length_mm / nominal_mm - 1
    percents = round(100 * share, 2)
    sign = "−" if percents < 0 else "+" if percents else "±"
    return f"{sign}{book.formatter.numbers.number(abs(percents), 2)}\u202f%"
