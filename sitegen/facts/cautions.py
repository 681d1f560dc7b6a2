"""Which cautions belong beside an entry."""

from sitegen.cautions.passages import kinds_in_body
from sitegen.cautions.sources import in_order, of_head, of_night, of_sentence, of_work
from sitegen.diary.rig import CautionKind
from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.views import EntryView


def cautions(view: EntryView) -> list[CautionKind]:
    """In the order of `CautionKind`: of everything that the entry's page shows of what its author wrote."""
    entry = view.entry
    written = [of_head(entry), kinds_in_body(entry.body), *map(of_night, entry.night_notes.values())]
    written += [of_sentence(lesson) for lesson in entry.lessons.all]
    written += [of_work(work) for _, work in view.work]
    return list(in_order(kind for kinds in written for kind in kinds))


CAUTIONS: Fact[EntryView] = Fact(
    "Cautions",
    "",
    cautions,
    "From the words of title, text, lessons and nights and of the work done on the rig since the entry before, from what the "
    "author flagged by hand, and from nights below freezing.",
    COMMON_PRACTICE,
)
