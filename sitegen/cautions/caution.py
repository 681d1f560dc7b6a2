"""The contract of a caution: its name, what it rests on, and the vocabulary that calls for it, by language.

A word alone is no danger: a laser printer, a sunny day, the weight of evidence. So a danger names several things that must all
stand in one sentence, most often an object and what is done with it.
"""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.cautions.phrases import Phrases, has_stem, stands_in, without
from sitegen.diary.rig import CautionKind

Danger = tuple[Phrases, ...]
"""Each must be met in one sentence; where the last is NEXT, in two that follow each other."""
NEXT: Phrases = ""
COMMON_PRACTICE = "common practice, no source"


class Vocabulary(Struct, frozen=True):
    """`stems`: parts of words, with ` | ` between them, one of which stands in every text in danger; no phrase is compiled before
    one of them is met. `harmless` is overlooked."""

    stems: str
    dangers: tuple[Danger, ...]
    harmless: Phrases = ""

    def is_met(self, singles: tuple[str, ...]) -> bool:
        """`singles`: the sentences of one text, in lower case, without what is harmless in any language."""
        if not has_stem(self.stems, singles):
            return False
        pairs = tuple(map(" ".join, zip(singles, (*singles[1:], ""), strict=True)))
        return any(_is_met(danger, singles, pairs) for danger in self.dangers)


class Caution(Struct, frozen=True):
    """`basis`: the standards that it rests on, or COMMON_PRACTICE. `from_memory`: those of them that were cited from memory;
    of the others the title and the scope were read, not the whole text."""

    name: CautionKind
    basis: tuple[str, ...]
    languages: Mapping[str, Vocabulary]
    from_memory: tuple[str, ...] = ()

    def is_called_for(self, sentences: tuple[str, ...]) -> bool:
        """A diary may mix languages, and they share words: each overlooks what is harmless in another."""
        vocabularies = self.languages.values()
        if not any(vocabulary.is_met(sentences) for vocabulary in vocabularies):
            return False
        for vocabulary in vocabularies:
            sentences = tuple(without(vocabulary.harmless, sentence) for sentence in sentences)
        return any(vocabulary.is_met(sentences) for vocabulary in vocabularies)


def _is_met(danger: Danger, singles: tuple[str, ...], pairs: tuple[str, ...]) -> bool:
    passages, wanted = (pairs, danger[:-1]) if danger[-1] == NEXT else (singles, danger)
    return any(all(stands_in(phrases, passage) for phrases in wanted) for passage in passages)
