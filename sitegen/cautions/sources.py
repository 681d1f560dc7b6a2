"""Which cautions each thing that an author wrote calls for: by its words, and flagged by hand."""

import re
from collections.abc import Iterable
from typing import get_args

from sitegen.cautions.finding import kinds_in
from sitegen.cautions.mark import is_denied
from sitegen.diary.entry import Entry, NightNote
from sitegen.diary.rig import CautionKind, Work

COLD_BELOW_C = 0.0
WORDS_IN_COMMON, LONGER_WORD = 3, 5
"""Common practice, no source: enough that 'camera' alone makes no passage one about the work on it."""


def in_order(kinds: Iterable[CautionKind]) -> tuple[CautionKind, ...]:
    """Each once, as facts.json lists them."""
    wanted = set(kinds)
    return tuple(kind for kind in get_args(CautionKind) if kind in wanted)


def of_sentence(sentence: str) -> tuple[CautionKind, ...]:
    """A lesson, or another text of one paragraph."""
    return () if is_denied(sentence) else kinds_in(sentence)


def of_work(work: Work) -> tuple[CautionKind, ...]:
    """The author's own flag also where the words are denied."""
    flagged = (work.caution,) if work.caution else ()
    return in_order((*flagged, *of_sentence(words_of_work(work))))


def words_of_work(work: Work) -> str:
    return "\n".join(text for text in (work.part, work.what, work.note) if text)


def is_told(work: str, passage: str) -> bool:
    """Whether a passage speaks of that work: it shares three of its longer words."""
    return len(_longer_words(work) & _longer_words(passage)) >= WORDS_IN_COMMON


def _longer_words(text: str) -> set[str]:
    return {word for word in re.findall(r"\w+", text.lower()) if len(word) >= LONGER_WORD}


def of_night(note: NightNote) -> tuple[CautionKind, ...]:
    """A night below freezing is cold, whatever is said of it."""
    words = "\n".join(text for text in (note.note, note.clouds, note.wind, note.ended_by) if text)
    is_cold = note.temperature_c is not None and note.temperature_c < COLD_BELOW_C
    return in_order((*of_sentence(words), *(("cold",) if is_cold else ())))


def of_head(entry: Entry) -> tuple[CautionKind, ...]:
    """Title and summary, topics that name a caution, and the Sun as target."""
    topics = [kind for kind in get_args(CautionKind) if kind in entry.topics]
    target: tuple[CautionKind, ...] = ("sun",) if any(target.slug == "sun" for target in entry.targets) else ()
    return in_order((*of_sentence("\n".join(text for text in (entry.title, entry.summary) if text)), *topics, *target))
