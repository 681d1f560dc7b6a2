"""Which usual cautions belong beside an entry."""

from typing import get_args

from sitegen.diary.rig import CautionKind
from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.views import EntryView

COLD_BELOW_C = 0.0


def cautions(view: EntryView) -> list[str]:
    """In the order of `CautionKind`: from the rigs' work since the entry before, the topics, the target, and the cold."""
    found: set[str] = {work.caution for _, work in view.work if work.caution}
    found |= set(view.entry.topics) & set(get_args(CautionKind))
    if any(target.slug == "sun" for target in view.entry.targets):
        found.add("sun")
    if any(note.temperature_c is not None and note.temperature_c < COLD_BELOW_C for note in view.entry.night_notes.values()):
        found.add("cold")
    return [kind for kind in get_args(CautionKind) if kind in found]


CAUTIONS: Fact[EntryView] = Fact(
    "Cautions",
    "",
    cautions,
    "From the work done on the rig since the entry before, the entry's topics, and nights below freezing.",
    COMMON_PRACTICE,
)
