"""Stars across the field: whisker maps and ring sketches, with what they say, before and after side by side."""

from collections.abc import Sequence
from datetime import date
from pathlib import PurePosixPath
from typing import TypeAlias, TypeVar

from msgspec import Struct

from sitegen.diary.entry import PictureType
from sitegen.facts.views import RingView, SurveyView
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.picture_words import typed_title
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.star_maps import RingSketch, WhiskerMap, percent_words, ring_sketches, whisker_maps
from sitegen.pages.star_words import evidence_words, pattern_words, ring_title, survey_title

View = TypeVar("View", SurveyView, RingView)
Heading: TypeAlias = tuple[str, date, str | None, str, PictureType]
"""Which of a pair it is, its evening, its moment, its file and its type."""


class MapShown(Struct, frozen=True):
    """`when` says before, after or nothing; `moment` the time it was taken, UTC; `type` whether it is an observation."""

    when: str
    evening: date
    moment: str | None
    file: str
    type: PictureType
    map: WhiskerMap
    pattern: str
    evidence: tuple[str, ...]


class SketchShown(Struct, frozen=True):
    when: str
    evening: date
    moment: str | None
    file: str
    type: PictureType
    sketch: RingSketch
    cells: tuple[str, ...]
    warnings: tuple[str, ...]


class StarsShown(Struct, frozen=True):
    """Each kind with its title, or empty."""

    survey_title: str
    surveys: tuple[MapShown, ...]
    ring_title: str
    rings: tuple[SketchShown, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> StarsShown | None:
    return stars_shown(prepared.view.surveys, prepared.view.rings, book)


def stars_shown(surveys: Sequence[SurveyView], rings: Sequence[RingView], book: DiaryIndex) -> StarsShown | None:
    """In the order they were taken, where that is known."""
    if not surveys and not rings:
        return None
    words, numbers = book.formatter.words, book.formatter.numbers
    fields, discs = _in_time(surveys), _in_time(rings)
    return StarsShown(
        typed_title(survey_title([view.frame for view in fields], words, numbers), fields, words) if fields else "",
        tuple(_maps(fields, book)),
        typed_title(ring_title([view.frame for view in discs], words, numbers), discs, words) if discs else "",
        tuple(_sketches(discs, book)),
    )


def _in_time(views: Sequence[View]) -> list[View]:
    """As the entry names them where any frame does not say when it was taken."""
    moments = [view.frame.taken for view in views if view.frame.taken is not None]
    if len(moments) < len(views):
        return list(views)
    return [views[index] for index in sorted(range(len(views)), key=lambda index: moments[index])]


def _maps(views: Sequence[SurveyView], book: DiaryIndex) -> list[MapShown]:
    words, numbers = book.formatter.words, book.formatter.numbers
    drawn = whisker_maps([view.frame for view in views], words, numbers)
    return [
        MapShown(
            *_heading(index, views, book),
            star_map,
            pattern_words(view.frame.pattern, words),
            evidence_words(view.frame, words, numbers),
        )
        for index, (view, star_map) in enumerate(zip(views, drawn, strict=True))
    ]


def _sketches(views: Sequence[RingView], book: DiaryIndex) -> list[SketchShown]:
    words, numbers = book.formatter.words, book.formatter.numbers
    drawn = ring_sketches([view.frame for view in views], words, numbers)
    return [
        SketchShown(
            *_heading(index, views, book),
            sketch,
            _cells(view, book),
            view.frame.ring.warnings,
        )
        for index, (view, sketch) in enumerate(zip(views, drawn, strict=True))
    ]


def _cells(view: RingView, book: DiaryIndex) -> tuple[str, ...]:
    ring, number = view.frame.ring, book.formatter.numbers.number
    direction = "—" if ring.direction_deg is None else f"{number(ring.direction_deg, 0)}°"
    px = [f"{number(value, 1)}\u202fpx" for value in (ring.outer_px, ring.inner_px)]
    offset = f"{number(ring.offset_px, 2)} ± {number(ring.uncertainty_px, 2)}\u202fpx"
    return (*px, offset, percent_words(ring, book.formatter.numbers), direction)


def _heading(index: int, views: Sequence[SurveyView | RingView], book: DiaryIndex) -> Heading:
    view = views[index]
    return _when(index, len(views), book), view.evening, _moment(view, book), PurePosixPath(view.frame.file).name, view.type


def _when(index: int, count: int, book: DiaryIndex) -> str:
    return book.formatter.words["stars.before" if index == 0 else "stars.after"] if count == 2 else ""


def _moment(view: SurveyView | RingView, book: DiaryIndex) -> str | None:
    taken = view.frame.taken
    return f"{book.formatter.numbers.clock(taken)} UTC" if taken else None


SECTION = EntrySection("stars", section, "stars")
