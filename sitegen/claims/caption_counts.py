"""A caption that counts subs, hours or nights otherwise than the logs do."""

from collections.abc import Iterator

from sitegen.claims.counted import counted_in, part_of
from sitegen.claims.denied_counts import denial
from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside
from sitegen.claims.sentence import Sentence


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    """A picture is made of what was taken: a verb that says so is not needed."""
    if sentence.passage.role != "caption" or evidence.view.entry.recalled or is_aside(sentence, evidence):
        return
    for counted in counted_in(sentence, evidence.words):
        wrong = denial(counted, part_of(sentence, counted, evidence), evidence)
        if wrong:
            yield Doubt(sentence.words[counted.first].start, wrong)


CLAIM = ClaimKind("caption-counts", "a caption's number of subs, hours or nights, against the logs", _find)
