"""Which cautions each thing that an author wrote calls for: by its words, and flagged by hand.

Every text that is published is read, but for names: of the diary and its author, of rigs, cameras, filters, sites, targets and
topics. A name tells nobody how to do a thing, and could not carry the mark that denies a caution. A topic that is called like a
caution flags it, and so does the Sun as a target.
"""

import re
from collections.abc import Iterable
from typing import get_args

from sitegen.cautions.finding import kinds_in
from sitegen.cautions.mark import is_denied
from sitegen.diary.entry import Entry, Link, NightNote, Picture, ProcessStep
from sitegen.diary.rig import CautionKind, Rig, Train, Work
from sitegen.diary.sub import Sub

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


def of_texts(texts: Iterable[str | None]) -> tuple[CautionKind, ...]:
    """Of several, each by itself: what stands in one is not done to what stands in another, and one may be denied alone."""
    return in_order(kind for text in texts if text for kind in of_sentence(text))


def of_picture(picture: Picture) -> tuple[CautionKind, ...]:
    """Caption and alternative text speak of the same thing: they are read together, and the mark in one denies for both."""
    return of_sentence("\n".join(text for text in (picture.caption, picture.alt) if text))


def of_steps(steps: Iterable[ProcessStep]) -> tuple[CautionKind, ...]:
    return of_texts("\n".join(text for text in (step.what, step.alt) if text) for step in steps)


def of_links(links: Iterable[Link]) -> tuple[CautionKind, ...]:
    return of_texts(link.title for link in links)


def of_discarded(subs: Iterable[Sub]) -> tuple[CautionKind, ...]:
    """Of why subs were discarded, which their ribbon shows; a log's notes are published nowhere."""
    return of_texts({sub.reason for sub in subs if not sub.kept})


def of_design(train: Train) -> tuple[CautionKind, ...]:
    return of_texts((train.telescope.design,))


def of_change(train: Train) -> tuple[CautionKind, ...]:
    """Of the note on what was changed to this train."""
    return of_texts((train.note,))


def of_rig(rig: Rig) -> tuple[CautionKind, ...]:
    """Of what describes it, and of the notes on all its trains."""
    trains = (kind for train in rig.trains for kind in (*of_design(train), *of_change(train)))
    return in_order((*of_texts((rig.mount, rig.guiding, rig.other)), *trains))


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
