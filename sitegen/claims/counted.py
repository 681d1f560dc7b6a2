"""Numbers of subs, hours and nights in a sentence, and what it restricts them to."""

from collections.abc import Iterator, Sequence
from typing import Literal

from msgspec import Struct

from sitegen.claims.evidence import Evidence
from sitegen.claims.log_counts import Part
from sitegen.claims.sentence import Sentence, Word
from sitegen.claims.vocabulary import Vocabulary

Unit = Literal["subs", "hours", "nights"]


class Counted(Struct, frozen=True):
    """`number` of a unit, whose words are those from `first` to `last`."""

    number: float
    unit: Unit
    first: int
    last: int


def counted_in(sentence: Sentence, words: Vocabulary) -> Iterator[Counted]:
    """Exact numbers from two on: 'about forty', 'the last six' and 'one more' are left alone."""
    for index in range(len(sentence.words)):
        number = number_at(sentence.words, index, words)
        if number is None or number <= 1:
            continue
        after = _after_half(sentence.words, index + 1, words)
        if after != index + 1:
            number += 0.5
        unit = _unit_at(sentence.words, after, words)
        if unit is not None and not _is_inexact(sentence.words, index, unit[0], words):
            yield Counted(number, unit[0], index, unit[1])


def number_at(sentence: Sequence[Word], index: int, words: Vocabulary) -> float | None:
    """'12', '2.5', '2,5' and 'twelve'; not '22:30', nor '1,200', which is one thing here and another there."""
    text = sentence[index].text
    if text in words.numbers:
        return float(words.numbers[text])
    if not text[:1].isdigit() or ":" in text:
        return None
    whole, mark, decimals = text.replace(",", ".").partition(".")
    if not mark:
        return float(whole)
    return float(f"{whole}.{decimals}") if decimals.isdigit() and len(decimals) < 3 else None


def _is_inexact(sentence: Sequence[Word], index: int, unit: Unit, words: Vocabulary) -> bool:
    """By the word before: a hedge, an ordinal, another number. 'Over five nights' are five, 'over fifty subs' more."""
    before = sentence[index - 1].text if index else ""
    if unit == "nights" and before in words.over:
        return False
    return (
        before in words.hedges or before in words.parts or before in words.ordinals
        or (index > 0 and number_at(sentence, index - 1, words) is not None)
    )  # fmt: skip


def _after_half(sentence: Sequence[Word], index: int, words: Vocabulary) -> int:
    """Behind 'and a half'."""
    for phrase in words.half_more:
        if tuple(word.text for word in sentence[index : index + len(phrase)]) == phrase:
            return index + len(phrase)
    return index


def _unit_at(sentence: Sequence[Word], index: int, words: Vocabulary) -> tuple[Unit, int] | None:
    """With up to two words between: 'forty good subs', 'six luminance subs'."""
    allowed = words.between | words.filters.keys()
    for place in range(index, min(index + 3, len(sentence))):
        text = sentence[place].text
        if text in words.subs:
            return "subs", place
        if text in words.hours:
            return "hours", place
        if text in words.nights:
            return "nights", place
        if text not in allowed:
            return None
    return None


def part_of(sentence: Sentence, counted: Counted, evidence: Evidence) -> Part:
    """What the words beside the number restrict it to: a filter, kept or discarded."""
    words, near = evidence.words, sentence.words
    inside = {word.text for word in near[counted.first : counted.last + 2]}
    before = near[counted.first - 1].text if counted.first else ""
    discarded = None
    if (inside | {before}) & words.discarded:
        discarded = True
    elif (inside | {before}) & words.kept:
        discarded = False
    return Part(filters=_filters(sentence, counted, evidence), discarded=discarded)


def _filters(sentence: Sentence, counted: Counted, evidence: Evidence) -> frozenset[str]:
    """Of this entry: inside ('six oxygen subs') or right behind ('six subs of oxygen'); none where two are joined."""
    near, words = sentence.words, evidence.words
    shorts = {light.filter_key.casefold() for light in evidence.view.lights}
    behind = near[counted.last + 1 : counted.last + 3]
    names = [word.text for word in near[counted.first : counted.last]]
    if len(behind) == 2 and behind[0].text in words.of:
        names.append(behind[1].text)
    after = near[counted.last + 3].text if len(near) > counted.last + 3 else ""
    named = {short for name in names for short in words.filters.get(name, ()) if short in shorts}
    return frozenset() if after in words.joining else frozenset(named)
