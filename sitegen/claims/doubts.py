"""An entry's passages, sentence by sentence, under every kind of claim."""

from collections.abc import Iterable, Iterator

from sitegen.claims.doubt import Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.passage import Passage
from sitegen.claims.registry import CLAIMS
from sitegen.claims.sentence import sentences_of

REMEDY = "correct the one that is wrong"
REMEDY_BY_MARK = "correct the one that is wrong; if both are right, put [](no_doubt:) at the end of the paragraph"


def doubts_of(passages: Iterable[Passage], evidence: Evidence) -> Iterator[tuple[Passage, Doubt]]:
    for passage in passages:
        if passage.undoubted:
            continue
        for sentence in sentences_of(passage):
            for kind in CLAIMS:
                for doubt in kind.find(sentence, evidence):
                    yield passage, doubt


def remedy_for(passage: Passage) -> str:
    """The mark stands in the body alone."""
    return REMEDY if passage.key else REMEDY_BY_MARK
