"""The contract of a caution: its name, what it rests on, and the vocabulary that calls for it, by language.

A word alone is no danger: a laser printer, a sunny day, the weight of evidence. So a danger names several things that must all
stand near each other, most often an object, what is done with it and in which circumstances.
"""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.cautions.phrases import Phrases
from sitegen.diary.rig import CautionKind

Danger = tuple[Phrases, ...]
"""Each must be met in one sentence; where the last is NEXT or NEARBY, in two or three that follow each other."""
NEXT: Phrases = "… next"
NEARBY: Phrases = "… nearby"
REACH = {NEXT: 2, NEARBY: 3}
COMMON_PRACTICE = "common practice, no source"


class Vocabulary(Struct, frozen=True):
    """What stands in `harmless` is overlooked, in every language: a diary may mix them, and they share words."""

    dangers: tuple[Danger, ...]
    harmless: Phrases = ""


class Caution(Struct, frozen=True):
    """`basis`: the standards that it rests on, or COMMON_PRACTICE. `from_memory`: those of them that were cited from memory;
    of the others the title and the scope were read, not the whole text."""

    name: CautionKind
    basis: tuple[str, ...]
    languages: Mapping[str, Vocabulary]
    from_memory: tuple[str, ...] = ()


def needs_of(danger: Danger) -> tuple[tuple[Phrases, ...], int]:
    """What must be met, and in how many sentences."""
    reach = REACH.get(danger[-1], 1)
    return (danger[:-1] if reach > 1 else danger), reach
