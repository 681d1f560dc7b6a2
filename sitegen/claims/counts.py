"""'n subs', 'n hours', 'n nights' of a text, which the logs deny."""

from collections.abc import Iterator

from sitegen.claims.counted import Counted, counted_in, part_of
from sitegen.claims.denied_counts import denial
from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside, night_named
from sitegen.claims.log_counts import Part
from sitegen.claims.sentence import Sentence

ROLES = frozenset({"title", "summary", "paragraph", "lesson", "note"})


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    if sentence.passage.role not in ROLES or is_aside(sentence, evidence) or evidence.words.negations & sentence.vocabulary:
        return
    for counted in counted_in(sentence, evidence.words):
        if _is_of_the_logs(sentence, counted, evidence):
            wrong = denial(counted, _part(sentence, counted, evidence), evidence)
            if wrong:
                yield Doubt(sentence.words[counted.first].start, wrong)


def _is_of_the_logs(sentence: Sentence, counted: Counted, evidence: Evidence) -> bool:
    """Whether it tells what was gathered: by a verb of taking, by a sum, or by what it is counted of."""
    words = evidence.words
    in_all = sentence.holds(*words.whole)
    is_gathered = in_all or bool(words.gathering & sentence.vocabulary)
    if counted.unit == "subs":
        return is_gathered
    before = sentence.words[counted.first - 1].text if counted.first else ""
    if counted.unit == "nights":
        return (is_gathered or sentence.passage.role in ("title", "summary")) and (before in words.over or in_all or not before)
    behind = [word.text for word in sentence.words[counted.last + 1 : counted.last + 3]]
    of_light = len(behind) == 2 and behind[0] in words.of and (behind[1] in words.light or behind[1] in words.filters)
    return of_light or (in_all and not behind[:1])


def _part(sentence: Sentence, counted: Counted, evidence: Evidence) -> Part:
    """In one night where the sentence names one that is not the only one."""
    part = part_of(sentence, counted, evidence)
    is_single = len(evidence.evenings) == 1
    nights = [] if is_single or counted.unit == "nights" else night_named(sentence, evidence)
    return Part(part.filters, nights[0].evening if nights else None, part.discarded)


CLAIM = ClaimKind("counts", "'n subs', 'n hours' or 'n nights' in a sentence, against the logs", _find)
