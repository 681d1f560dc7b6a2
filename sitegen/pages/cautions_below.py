"""The cautions of what an entry's page shows below its text: further pictures, nights, rigs and work on them, lessons, links."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from msgspec import Struct

from sitegen.cautions.sources import in_order, of_change, of_design, of_links, of_night, of_work
from sitegen.diary.rig import CautionKind
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.entry_pictures import Figure
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.text_parts import CautionInText

Shown = tuple[CautionInText, ...]


class CautionsBelow(Struct, frozen=True):
    """`figures` and `steps` by the figure's key, `ribbon` of the large one, `nights` by evening, `train` of all trains, `work` by
    the rig's slug, `lessons` as written; what calls for none is not in them."""

    figures: Mapping[str, Shown]
    steps: Mapping[str, Shown]
    ribbon: Shown
    nights: Mapping[date, Shown]
    train: Shown
    work: Mapping[str, Shown]
    lessons: Mapping[str, Shown]
    links: Shown


def cautions_below(
    prepared: PreparedEntry,
    page: CautionsSaid,
    main: Figure | None = None,
    more: Sequence[Figure] = (),
    sections: Mapping[str, Any] | None = None,
) -> CautionsBelow:
    """In the order of the page, so that each is said in full where it comes first."""
    view, card = prepared.view, prepared.card
    main_steps = _steps([main] if main else [], page)
    figures = {figure.key: page.shown(figure.cautions) for figure in more if figure.cautions}
    steps = main_steps | _steps(more, page)
    nights = (sections or {}).get("nights")
    ribbon = page.shown(nights.fullest.cautions) if nights and nights.fullest else ()
    notes = nights.notes if nights else [(night, night.note) for night in view.nights if night.note]
    noted = {night.evening: of_night(note) for night, note in notes}
    return CautionsBelow(
        figures=figures,
        steps=steps,
        ribbon=ribbon,
        nights={evening: page.shown(kinds) for evening, kinds in noted.items() if kinds},
        train=page.shown(in_order(kind for row in view.optics for kind in of_design(row.train))),
        work={slug: page.shown(kinds) for slug in card.rigs if (kinds := _kinds_of_work(prepared, slug))},
        lessons=_lessons(prepared, page),
        links=page.shown(of_links(view.entry.links)),
    )


def _steps(figures: Sequence[Figure], page: CautionsSaid) -> dict[str, Shown]:
    return {figure.key: page.shown(figure.cautions_of_steps) for figure in figures if figure.cautions_of_steps}


def _lessons(prepared: PreparedEntry, page: CautionsSaid) -> dict[str, Shown]:
    lessons = prepared.card.lesson_cautions
    return {lesson: page.shown(lessons[lesson]) for lesson in prepared.card.lessons.all if lesson in lessons}


def _kinds_of_work(prepared: PreparedEntry, slug: str) -> tuple[CautionKind, ...]:
    """Of work on the rig, and of notes on how it was changed."""
    work = [kind for rig, work in prepared.view.work if rig.slug == slug for kind in of_work(work)]
    changes = [kind for rig, train in prepared.view.changes if rig.slug == slug for kind in of_change(train)]
    return in_order((*work, *changes))
