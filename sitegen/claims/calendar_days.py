"""A weekday or a date that the calendar denies, and a night's weekday."""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise

from sitegen.claims.dates import NamedDate, dates_of
from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside
from sitegen.claims.sentence import Sentence

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
DAY = timedelta(days=1)


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    dates = list(dates_of(sentence, evidence.words))
    for named in dates:
        yield from _of_date(sentence, named, evidence)
    if evidence.words.weekdays.keys() & sentence.vocabulary:
        yield from _beside_numbers(sentence, evidence)
        if not dates and not sentence.nights:
            yield from _of_taking(sentence, evidence)


def _of_date(sentence: Sentence, named: NamedDate, evidence: Evidence) -> Iterator[Doubt]:
    text = " ".join(sentence.passage.text[named.start : named.end].split())
    if not named.exists:
        yield Doubt(named.start, f"the text says '{text}', and the calendar has no such day")
        return
    if named.weekday is None:
        return
    days = _possible(named, evidence)
    if days and all(day.weekday() != named.weekday for day in days):
        yield Doubt(named.start, f"the text says '{text}', and {days[0]} was a {DAYS[days[0].weekday()]}")


def _possible(named: NamedDate, evidence: Evidence) -> list[date]:
    """The day itself; without its year that of the entry's night of this day, else this day of every year near the entry."""
    entry = evidence.view.entry
    if named.year:
        years = [named.year]
    else:
        nights = [day.year for day in evidence.evenings if (day.month, day.day) == (named.month, named.day)]
        around = {entry.published.year + offset for offset in (0, -1, 1)} | {day.year for day in evidence.evenings}
        years = nights or sorted(around, key=lambda year: abs(year - entry.published.year))
    return [day for year in years if (day := named.in_year(year))]


def _beside_numbers(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    """'[](fact:nights.moon.illuminated@2025-08-08) lit on Friday': the weekday behind a number of one night, before the next."""
    marks = sentence.nights
    ends = [mark.start for mark in marks[1:]] + [sentence.end]
    for mark, end in zip(marks, ends, strict=False):
        words = [word for word in sentence.words if mark.start < word.start < end][:4]
        for before, word in pairwise(words):
            weekday = evidence.words.weekdays.get(word.text)
            if before.text in evidence.words.on_a_day and weekday is not None and weekday != mark.evening.weekday():
                says = f"the text says {DAYS[weekday]} beside a number of the night of {mark.evening}"
                yield Doubt(word.start, f"{says}, which was a {DAYS[mark.evening.weekday()]}")


def _of_taking(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    """'On Friday we took …' in an entry without a night that begins or ends on one."""
    passage, words = sentence.passage, evidence.words
    of_note = passage.evening is not None
    if is_aside(sentence, evidence) or not (
        of_note or (words.gathering & sentence.vocabulary and words.subs & sentence.vocabulary)
    ):
        return
    evenings = [passage.evening] if passage.evening else evidence.evenings
    days = {day.weekday() for evening in evenings for day in (evening, evening + DAY)}
    for before, word in pairwise(sentence.words):
        weekday = words.weekdays.get(word.text)
        if days and weekday is not None and weekday not in days and before.text in words.on_a_day:
            nights = ", ".join(f"{evening} was a {DAYS[evening.weekday()]}" for evening in evenings[:5])
            yield Doubt(word.start, f"the text says {DAYS[weekday]}, and no night of its logs lies on one: {nights}")


CLAIM = ClaimKind("calendar-days", "a weekday or a date that the calendar denies, also that of a night", _find)
