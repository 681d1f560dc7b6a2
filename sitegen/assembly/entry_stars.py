"""An entry's star frames to measurements, kept by the content of the file: measuring is the slowest thing done to a frame."""

from collections.abc import Callable, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from sitegen.assembly.bench import Bench
from sitegen.assembly.jobs import STARS, Measure
from sitegen.facts.star_views import ring_view, survey_view
from sitegen.facts.views import EntryView
from sitegen.keeping.keep import hash_of_file, key_of
from sitegen.problems import Problem


class MeasuredStars(Struct, frozen=True):
    """`kept` names the measurements among the kept things."""

    view: EntryView
    problems: tuple[Problem, ...] = ()
    kept: tuple[str, ...] = ()


def with_stars(bench: Bench, view: EntryView, measure: Measure) -> MeasuredStars:
    """The view with everything measured that its entry names; what cannot be measured is a problem."""
    entry, frame = view.entry, bench.frame
    if not entry.star_survey and not entry.star_rings:
        return MeasuredStars(view)
    asked = [("survey", file) for file in entry.star_survey] + [("ring", file) for file in entry.star_rings]
    found = [_measured(bench, kind, file, measure) for kind, file in asked]
    surveys = [one for (kind, _), (_, one, _) in zip(asked, found, strict=True) if kind == "survey" and one is not None]
    rings = [one for (kind, _), (_, one, _) in zip(asked, found, strict=True) if kind == "ring" and one is not None]
    return MeasuredStars(
        replace(
            view,
            surveys=_in_view(survey_view, surveys, view, frame),
            rings=_in_view(ring_view, rings, view, frame),
        ),
        tuple(problem for _, _, problems in found for problem in problems),
        tuple(name for name, _, _ in found),
    )


def _measured(bench: Bench, kind: str, file: str, measure: Measure) -> tuple[str, Any, tuple[Problem, ...]]:
    """The name it is kept under, the measurement or None, and its problems."""
    path, shown = bench.content / file, bench.frame.folder.shown(file)
    inputs = kind, file, shown, hash_of_file(path)
    measured, problems = bench.stars.value(STARS, inputs, lambda: measure(kind, path, shown, file))
    return key_of(bench.stars.version, inputs), measured, problems


def _in_view(place: Callable[..., Any], frames: Sequence[Any], view: EntryView, frame: Any) -> tuple[Any, ...]:
    return tuple(place(one, view.entry, frame.rigs, frame.sites) for one in frames)
