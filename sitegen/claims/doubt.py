"""The contract of a kind of claim: how it is found in a sentence, and how it is held against what is known."""

from collections.abc import Callable, Iterator

from msgspec import Struct

from sitegen.claims.evidence import Evidence
from sitegen.claims.sentence import Sentence


class Doubt(Struct, frozen=True):
    """`start` is the offset in the passage of the words that are doubted; `wrong` names both values: what the text says, and
    what is known."""

    start: int
    wrong: str


class ClaimKind(Struct, frozen=True):
    """`doubted` says for the author what is doubted; `find` gives the doubts of one sentence, none where it is not sure."""

    key: str
    doubted: str
    find: Callable[[Sentence, Evidence], Iterator[Doubt]]
