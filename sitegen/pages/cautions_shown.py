"""Cautions as pages show them: in full before what they are of, and in short where the page has said them before."""

from collections.abc import Iterable, Mapping, Sequence

from markdown_it.token import Token
from msgspec import Struct, field

from sitegen.cautions.passages import Part, parts_of
from sitegen.cautions.sources import is_told, of_head, words_of_work
from sitegen.diary.rig import CautionKind
from sitegen.facts.views import EntryView
from sitegen.pages.text_parts import CautionInText

CautionsByPart = Mapping[int, tuple[CautionInText, ...]]
"""By the index of the token that they stand before."""


class Flags(Struct, frozen=True):
    """Cautions of an entry's text that do not come from its own words: `head` from title, summary, topics and target; `work` what
    the author flagged by hand on the rig, each with the words of that work; `pictures` those of figures in the text, by their
    name. `above` is what the page has said in full before the text begins."""

    head: tuple[CautionKind, ...] = ()
    work: tuple[tuple[CautionKind, str], ...] = ()
    pictures: Mapping[str, tuple[CautionKind, ...]] = field(default_factory=dict)
    above: tuple[CautionKind, ...] = ()


def flags_of(view: EntryView) -> Flags:
    """Where nothing was exposed, the entry is about its gear: what was flagged on it stands at the top."""
    flagged = tuple((work.caution, words_of_work(work)) for _, work in view.work if work.caution)
    gear = () if view.lights else tuple(kind for kind, _ in flagged)
    return Flags(tuple(dict.fromkeys((*of_head(view.entry), *gear))), flagged)


class CautionsSaid:
    """What one page has said in full, from its top on."""

    def __init__(self, kinds: Iterable[CautionKind] = ()) -> None:
        self.in_full = set(kinds)

    def shown(self, kinds: Iterable[CautionKind]) -> tuple[CautionInText, ...]:
        """To stand before what calls for these; whatever follows on the page has them said."""
        cautions = tuple(CautionInText(kind, kind in self.in_full) for kind in kinds)
        self.in_full |= {caution.caution for caution in cautions}
        return cautions


def cautions_in_text(tokens: Sequence[Token], flags: Flags) -> CautionsByPart:
    """What no part calls for stands at the top. A part repeats, in short, what was said under another heading."""
    read = tuple(parts_of(tokens))
    by_words = {kind for part in read for kind in part.kinds}
    flagged = [flag for flag in flags.work if flag[0] not in by_words]
    parts = [(part, _kinds_of(part, flagged, flags.pictures)) for part in read]
    called_for = {kind for _, kinds in parts for kind in kinds}
    page = CautionsSaid(flags.above)
    before = {0: page.shown(kind for kind in flags.head if kind not in called_for)}
    in_section: set[CautionKind] = set()
    for part, kinds in parts:
        in_section = set() if part.in_new_section else in_section
        shown = page.shown(kind for kind in kinds if kind not in in_section)
        before[part.index] = (*before.get(part.index, ()), *shown)
        in_section |= set(kinds)
    return before


def _kinds_of(
    part: Part, flagged_work: Sequence[tuple[CautionKind, str]], pictures: Mapping[str, tuple[CautionKind, ...]]
) -> tuple[CautionKind, ...]:
    """Of its words, of the pictures that it shows, and of the flagged work that it tells of; only such work counts as no part's
    words call for."""
    pictured = (kind for name in part.figures for kind in pictures.get(name, ()))
    flagged = (kind for kind, work in flagged_work if is_told(work, part.words))
    return tuple(dict.fromkeys((*part.kinds, *pictured, *flagged)))
