"""An entry's valid values -> Entry."""

from sitegen.diary.entry import Entry, Link, NightNote, Picture, PointingSolution, ProcessStep, StarFile
from sitegen.diary.panel import Panel
from sitegen.diary.recalled import Recalled
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.reading.entry_lessons import lessons_of
from sitegen.reading.front_matter import EntryText
from sitegen.reading.value_types.group import Values, bare

_AS_THEY_ARE = ("title", "published", "updated", "summary", "rig", "site", "stage", "unlisted")
# What a picture is that does not say: one of telescope and people is a photograph.
TYPES_OF_ROLES = {"setup": "photographic"}


def entry_of(
    slug: str,
    values: Values,
    text: EntryText,
    targets: tuple[Target, ...],
    subs: tuple[Sub, ...],
    recalled: tuple[Recalled, ...] = (),
    panels: tuple[Panel, ...] | None = None,
) -> Entry:
    """Only for values without an error among them."""
    plain = {name: values.get(name) for name in _AS_THEY_ARE if values.get(name) is not None}
    return Entry(
        slug=slug,
        body=text.body,
        body_line=text.body_line,
        targets=targets,
        subs=subs,
        pictures=tuple(_picture(item.value) for item in values.items_of("pictures")),
        wanted_hours={name: hours.value for name, hours in (values.get("wanted") or {}).items()},
        night_notes={day: note.value.into(NightNote) for day, note in sorted((values.get("nights") or {}).items())},
        links=tuple(item.value.into(Link) for item in values.items_of("links")),
        topics=tuple(dict.fromkeys(bare(values.items_of("topics")))),
        lessons=lessons_of(values),
        recalled=recalled,
        panels=panels,
        star_survey=tuple(_star_file(item.value) for item in values.items_of("star_survey")),
        star_rings=tuple(_star_file(item.value) for item in values.items_of("star_rings")),
        **plain,
    )


def _picture(values: Values) -> Picture:
    solution, stretch = values.get("solution"), values.get("stretch")
    return values.into(
        Picture,
        type=values.get("type") or TYPES_OF_ROLES.get(values.get("role"), "observation"),
        solution=_solution(solution) if solution else None,
        steps=tuple(_step(item.value) for item in values.items_of("steps")),
        stretch={name: float(value) for name, value in stretch.values.items()} if stretch else {},
    )


def _solution(values: Values) -> PointingSolution:
    return PointingSolution(
        ra_deg=values.get("ra"),
        dec_deg=values.get("dec"),
        scale_arcsec_px=values.get("scale_arcsec_px"),
        rotation_deg=values.get("rotation_deg"),
        mirrored=bool(values.get("mirrored")),
    )


def _star_file(value: str | Values) -> StarFile:
    return value.into(StarFile) if isinstance(value, Values) else StarFile(value)


def _step(value: str | Values) -> ProcessStep:
    return value.into(ProcessStep) if isinstance(value, Values) else ProcessStep(value)
