"""An entry's star frames to measurements, kept by the content of the file: measuring is the slowest thing done to a frame."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from sitegen.build.context import STAR_WORK, BuildContext
from sitegen.build.resolve import resolve
from sitegen.build.store import hash_of_file
from sitegen.build.workers import working_on
from sitegen.diary.entry import PictureType, StarFile
from sitegen.facts.star_views import ring_view, survey_view
from sitegen.facts.views import EntryView
from sitegen.problems import Problem
from sitegen.reading.diary_config import DiaryConfig
from sitegen.reading.measurement_files import Ringed, Surveyed

MEASURED: Mapping[str, Any] = {"survey": Surveyed, "ring": Ringed}
"""What is measured, by its kind."""


class MeasuredStars(Struct, frozen=True):
    """`kept` names the measurements among the kept things."""

    view: EntryView
    problems: tuple[Problem, ...] = ()
    kept: tuple[str, ...] = ()


def with_stars(context: BuildContext, view: EntryView) -> MeasuredStars:
    """The view with everything measured that its entry names; what cannot be measured is a problem."""
    entry, config = view.entry, context.config
    if not entry.star_survey and not entry.star_rings:
        return MeasuredStars(view)
    surveys = [_measured(context, "survey", star) for star in entry.star_survey]
    rings = [_measured(context, "ring", star) for star in entry.star_rings]
    with_both = replace(
        view,
        surveys=_in_view(survey_view, surveys, view, config),
        rings=_in_view(ring_view, rings, view, config),
    )
    problems = tuple(problem for measured in (*surveys, *rings) for problem in measured.problems)
    return MeasuredStars(with_both, problems, tuple(measured.name for measured in (*surveys, *rings)))


class _Measured(Struct, frozen=True):
    """`name` of the record in the store; `shape` None where it could not be measured, `type` as its author calls the frame."""

    name: str
    shape: Any
    type: PictureType
    problems: tuple[Problem, ...]


def _measured(context: BuildContext, kind: str, star: StarFile) -> _Measured:
    """The type is none of the inputs: no pixel is measured otherwise for it."""
    file = star.file
    path, shown = context.content / file, context.config.folder.shown(file)
    inputs = kind, file, shown, hash_of_file(path)
    cache = context.cache_of(STAR_WORK)

    def measure() -> Any:
        working_on(path)
        return resolve(STAR_WORK)(kind, path, shown, file)

    shape, problems = cache.value(inputs, MEASURED[kind], measure)
    return _Measured(cache.name_of(inputs), shape, star.type, problems)


def _in_view(place: Callable[..., Any], frames: Sequence[_Measured], view: EntryView, config: DiaryConfig) -> tuple[Any, ...]:
    shaped = (frame for frame in frames if frame.shape is not None)
    return tuple(place(frame.shape, view.entry, config.rigs, config.sites, frame.type) for frame in shaped)
