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
WHOLE = ("title", "summary")
FEW = 12


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    if evidence.view.entry.recalled:  # the sentence may count what no log tells
        return
    if sentence.passage.role not in ROLES or is_aside(sentence, evidence) or evidence.words.negations & sentence.vocabulary:
        return
    for counted in counted_in(sentence, evidence.words):
        if _is_of_the_logs(sentence, counted, evidence):
            wrong = denial(counted, _part(sentence, counted, evidence), evidence)
            if wrong:
                yield Doubt(sentence.words[counted.first].start, wrong)


def _is_of_the_logs(sentence: Sentence, counted: Counted, evidence: Evidence) -> bool:
    """Whether it tells what was gathered: by a verb of taking, by a sum, or by what it is counted of."""
    in_all = sentence.holds(*evidence.words.whole)
    behind = [word.text for word in sentence.words[counted.last + 1 : counted.last + 3]]
    if counted.unit == "subs":
        return (in_all or _are_subs(sentence, counted, evidence)) and not _are_of_something_else(behind, evidence)
    if counted.unit == "hours":
        return _are_of_light(behind, evidence) or (in_all and not behind)
    return _are_nights(sentence, counted, evidence, in_all) and not set(behind[:1]) & evidence.words.of


def _are_subs(sentence: Sentence, counted: Counted, evidence: Evidence) -> bool:
    """A few are often some of more ('we took three subs, and changed the filter'), unless the sentence says which."""
    is_clear = counted.number > FEW or part_of(sentence, counted, evidence) != Part() or sentence.passage.role in WHOLE
    return is_clear and bool(evidence.words.gathering & sentence.vocabulary)


def _are_of_something_else(behind: list[str], evidence: Evidence) -> bool:
    """'13 subs of the Moon', not 'of hydrogen', nor 'of five minutes'."""
    words = evidence.words
    of_these = words.light | words.target | words.filters.keys() | words.numbers.keys()
    return bool(set(behind[:1]) & words.belonging) and not any(word in of_these or word[0].isdigit() for word in behind[1:])


def _are_of_light(behind: list[str], evidence: Evidence) -> bool:
    """'hours of light', 'Stunden Belichtung'."""
    words = evidence.words
    return bool(set(behind[:1]) & words.of and set(behind[1:]) & (words.light | words.filters.keys()))


def _are_nights(sentence: Sentence, counted: Counted, evidence: Evidence, in_all: bool) -> bool:
    """'Over five nights', 'aus fünf Nächten', in a sentence of light or subs."""
    words = evidence.words
    before = sentence.words[counted.first - 1].text if counted.first else ""
    is_taken = in_all or bool((words.taking | words.light | words.subs) & sentence.vocabulary) or sentence.passage.role in WHOLE
    return is_taken and (before in words.over or in_all or not before)


def _part(sentence: Sentence, counted: Counted, evidence: Evidence) -> Part:
    """In one night where the sentence names one that is not the only one."""
    part = part_of(sentence, counted, evidence)
    is_single = len(evidence.evenings) == 1
    nights = [] if is_single or counted.unit == "nights" else night_named(sentence, evidence)
    return Part(part.filters, nights[0].evening if nights else None, part.discarded)


CLAIM = ClaimKind("counts", "'n subs', 'n hours' or 'n nights' in a sentence, against the logs", _find)
