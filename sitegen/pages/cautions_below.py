"""The cautions of what an entry's page shows below its text: conditions, work on the rigs, lessons."""

from collections.abc import Mapping
from datetime import date

from msgspec import Struct

from sitegen.cautions.sources import in_order, of_night, of_work
from sitegen.diary.rig import CautionKind
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.text_parts import CautionInText

Shown = tuple[CautionInText, ...]


class CautionsBelow(Struct, frozen=True):
    """`nights` by evening, `work` by the rig's slug, `lessons` as written; what calls for none is not in them."""

    nights: Mapping[date, Shown]
    work: Mapping[str, Shown]
    lessons: Mapping[str, Shown]


def cautions_below(prepared: PreparedEntry, page: CautionsSaid) -> CautionsBelow:
    """In the order of the sections, so that each is said in full where it comes first."""
    view, card, lessons = prepared.view, prepared.card, prepared.card.lesson_cautions
    noted = {night.evening: of_night(night.note) for night in view.nights if night.note}
    return CautionsBelow(
        nights={evening: page.shown(kinds) for evening, kinds in noted.items() if kinds},
        work={slug: page.shown(kinds) for slug in card.rigs if (kinds := _kinds_of_work(prepared, slug))},
        lessons={lesson: page.shown(lessons[lesson]) for lesson in card.lessons.all if lesson in lessons},
    )


def _kinds_of_work(prepared: PreparedEntry, slug: str) -> tuple[CautionKind, ...]:
    return in_order(kind for rig, work in prepared.view.work if rig.slug == slug for kind in of_work(work))
