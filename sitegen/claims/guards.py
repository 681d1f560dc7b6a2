"""Sentences that are not to be doubted, and the night that a sentence speaks of."""

from datetime import date
from itertools import pairwise

from sitegen.claims.dates import dates_of
from sitegen.claims.evidence import Evidence
from sitegen.claims.sentence import Sentence
from sitegen.facts.views import NightView

QUOTES = frozenset('"“”„»«')
SILENT_ROLES = frozenset({"quotation", "table"})


def is_aside(sentence: Sentence, evidence: Evidence) -> bool:
    """It asks, quotes, leads to another entry, or speaks of a plan, of what is usual, of another time, of somebody else."""
    return (
        sentence.passage.role in SILENT_ROLES
        or bool(sentence.links)
        or sentence.text.rstrip(")”\"' ").endswith("?")
        or bool(QUOTES & sentence.vocabulary)
        or bool((evidence.words.aside | evidence.words.seasons) & sentence.vocabulary)
        or _is_of_another_month(sentence, evidence)
    )


def _is_of_another_month(sentence: Sentence, evidence: Evidence) -> bool:
    """'It passes overhead in November', in an entry of September."""
    months = {evidence.words.months[word] for word in sentence.vocabulary if word in evidence.words.months}
    return bool(months) and not months & {evening.month for evening in evidence.evenings}


def night_named(sentence: Sentence, evidence: Evidence) -> list[NightView]:
    """The one night (at each site used in it) that the sentence speaks of: a note's own, the one that a number or a date, an
    ordinal or a weekday in it names, else the only one of the entry; empty where there may be several."""
    if sentence.passage.evening is not None:
        return evidence.nights_of(sentence.passage.evening)
    if evidence.words.several & sentence.vocabulary:
        return []
    named = _named(sentence, evidence)
    evenings = evidence.evenings
    if named is None:
        named = set(evenings)
    return evidence.nights_of(named.pop()) if len(named) == 1 else []


def _named(sentence: Sentence, evidence: Evidence) -> set[date] | None:
    """None where no night is named at all; a date that is none of the entry's nights is kept, so that it leads to none."""
    named: set[date] = {mark.evening for mark in sentence.nights}
    is_other = False
    for day in dates_of(sentence, evidence.words):
        evenings = {
            evening for evening in evidence.evenings if day.in_year(evening.year) == evening and day.year in (None, evening.year)
        }
        named |= evenings
        is_other |= not evenings
    named |= _by_ordinal(sentence, evidence) | _by_weekday(sentence, evidence)
    return named if named else (set() if is_other else None)


def _by_ordinal(sentence: Sentence, evidence: Evidence) -> set[date]:
    """'the second night', in the order of the evenings."""
    evenings, words = evidence.evenings, evidence.words
    places = [
        words.ordinals[word.text]
        for word, after in pairwise(sentence.words)
        if word.text in words.ordinals and after.text in words.night
    ]
    return {evenings[place] if place < len(evenings) else date.max for place in places}


def _by_weekday(sentence: Sentence, evidence: Evidence) -> set[date]:
    days = {evidence.words.weekdays[word] for word in sentence.vocabulary if word in evidence.words.weekdays}
    evenings = {evening for evening in evidence.evenings if evening.weekday() in days}
    return evenings if evenings or not days else {date.max}
