"""Which cautions belong beside an entry."""

from sitegen.cautions.passages import kinds_in_body
from sitegen.cautions.sources import (
    in_order,
    of_change,
    of_design,
    of_discarded,
    of_head,
    of_links,
    of_night,
    of_picture,
    of_steps,
    of_texts,
    of_work,
)
from sitegen.diary.rig import CautionKind
from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.views import EntryView


def cautions(view: EntryView) -> list[CautionKind]:
    """In the order of `CautionKind`: of all that the entry's page and those of its nights show of what its author wrote."""
    entry = view.entry
    written = [of_head(entry), kinds_in_body(entry.body), of_texts(entry.lessons.all), of_links(entry.links)]
    written += [kinds for picture in entry.pictures for kinds in (of_picture(picture), of_steps(picture.steps))]
    written += [*map(of_night, entry.night_notes.values()), of_discarded(light.sub for light in view.lights)]
    written += [of_design(row.train) for row in view.optics]
    written += [of_change(train) for _, train in view.changes]
    written += [of_work(work) for _, work in view.work]
    return list(in_order(kind for kinds in written for kind in kinds))


CAUTIONS: Fact[EntryView] = Fact(
    "Cautions",
    "",
    cautions,
    "From the words of title, text, pictures, lessons, nights and links, of the rig and of the work done on it since the entry "
    "before, from what the author flagged by hand, and from nights below freezing.",
    COMMON_PRACTICE,
)
