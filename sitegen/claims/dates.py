"""Days of the calendar named in a text: 'Friday 12 June 2026', 'Freitag, den 12. Juni', '2026-06-12', '12.6.2026'."""

import re
from calendar import monthrange
from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct

from sitegen.claims.passage import Passage
from sitegen.claims.sentence import Sentence, Word, sentences_of
from sitegen.claims.vocabulary import Vocabulary

_ISO = re.compile(r"\b(\d{4})-(\d\d)-(\d\d)\b")
_DOTTED = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})")
YEARS = range(1900, 2101)
LEAP_YEAR = 2024
# A higher number beside a month is a day only where a year follows ('October 32, 2026'): 'in June 31 frames were lost'.
LAST_DAY = 31


class NamedDate(Struct, frozen=True):
    """`day` or `year` are None where the text leaves them out; `weekday` counts from Monday, 0. `start` and `end` are offsets in
    the passage, the weekday's among them."""

    month: int
    day: int | None
    year: int | None
    weekday: int | None
    start: int
    end: int

    @property
    def exists(self) -> bool:
        """29 February without a year does."""
        return 1 <= self.month <= 12 and (self.day is None or 1 <= self.day <= monthrange(self.year or LEAP_YEAR, self.month)[1])

    def in_year(self, year: int) -> date | None:
        """None without a day, and where that year has no such day."""
        if self.day is None or not 1 <= self.month <= 12 or not 1 <= self.day <= monthrange(year, self.month)[1]:
            return None
        return date(year, self.month, self.day)


def dates_in(text: str, words: Vocabulary) -> list[NamedDate]:
    return [named for sentence in sentences_of(Passage(text, "paragraph")) for named in dates_of(sentence, words)]


def dates_of(sentence: Sentence, words: Vocabulary) -> Iterator[NamedDate]:
    """In words first, then in figures alone."""
    for index, word in enumerate(sentence.words):
        if word.text in words.months:
            yield from _in_words(sentence.words, index, words)
        elif match := _DOTTED.fullmatch(word.text):
            day, month, year = map(int, match.groups())
            yield _named(sentence.words, index, index, (month, day, year), words)
    if "-" in sentence.text:
        yield from _iso(sentence, words)


def _in_words(sentence: Sequence[Word], index: int, words: Vocabulary) -> Iterator[NamedDate]:
    """A month alone is one only beside a day or a year: 'may', 'march' and 'sun' are also other words."""
    month = words.months[sentence[index].text]
    first, day = _day_before(sentence, index, words)
    last, after = index, _number(sentence, index + 1)
    if day is None and after is not None and 1 <= after <= 99 and not _is_time(sentence, index + 2):
        last, day = index + 1, after
        last += 1 if last + 1 < len(sentence) and sentence[last + 1].text in ("st", "nd", "rd", "th") else 0
    year_at = last + 2 if last + 1 < len(sentence) and sentence[last + 1].text in (",", ".") else last + 1
    year = _number(sentence, year_at)
    if year in YEARS:
        last = year_at
    else:
        year = None
    is_behind = day is not None and first == index
    if day is not None and year is None and (day > LAST_DAY or (is_behind and day > monthrange(LEAP_YEAR, month)[1])):
        return
    if day is not None or year is not None:
        yield _named(sentence, first, last, (month, day, year), words)


def _day_before(sentence: Sequence[Word], index: int, words: Vocabulary) -> tuple[int, int | None]:
    """Where the day stands before the month, and which it is: '12', '12th of', 'the 12.'."""
    place = index - 1
    while place >= 0 and index - place < 4 and sentence[place].text in words.before_day:
        place -= 1
    day = _number(sentence, place)
    return (place, day) if day is not None and 1 <= day <= 99 and not _is_time(sentence, place + 1) else (index, None)


def _number(sentence: Sequence[Word], index: int) -> int | None:
    if not 0 <= index < len(sentence):
        return None
    return int(sentence[index].text) if sentence[index].text.isdecimal() and len(sentence[index].text) <= 4 else None


def _is_time(sentence: Sequence[Word], index: int) -> bool:
    return index < len(sentence) and sentence[index].text in ("subs", "hours", "nights", "%", "°")


def _named(
    sentence: Sequence[Word], first: int, last: int, day: tuple[int, int | None, int | None], words: Vocabulary
) -> NamedDate:
    """With the weekday that stands up to three words before."""
    place = first - 1
    while place >= 0 and first - place < 4 and sentence[place].text in words.before_day:
        place -= 1
    weekday = words.weekdays.get(sentence[place].text) if place >= 0 else None
    start = sentence[place if weekday is not None else first].start
    return NamedDate(*day, weekday, start, sentence[last].end)


def _iso(sentence: Sentence, words: Vocabulary) -> Iterator[NamedDate]:
    for match in _ISO.finditer(sentence.passage.text, sentence.start, sentence.end):
        year, month, day = map(int, match.groups())
        before = [word for word in sentence.words if word.end <= match.start() and word.text not in words.before_day]
        weekday = words.weekdays.get(before[-1].text) if before else None
        start = before[-1].start if before and weekday is not None else match.start()
        yield NamedDate(month, day, year, weekday, start, match.end())
