"""Plans of the diary's entries: which are open, and where the others were done."""

from sitegen.diary.lesson_done import LessonDone, plain_words
from sitegen.pages.card_groups import Card, CardGroups
from sitegen.pages.entry_summary import EntrySummary

Doers = dict[tuple[str, str], EntrySummary]
"""By the planning entry's slug and the plan's plain words: the first entry that ticked it off."""


def doers_of(book: CardGroups[Card]) -> Doers:
    """Of the cards that the book knows."""
    doers: Doers = {}
    for card in book.cards:  # newest first: an earlier one overwrites a later one
        doers.update((done.key, card) for done in card.done)
    return doers


def doer_of(slug: str, plan: str, doers: Doers) -> EntrySummary | None:
    """None while the plan is open."""
    return doers.get(LessonDone(slug, plan).key) if doers else None


def as_planned(done: LessonDone, plans: tuple[str, ...]) -> str:
    """In the words of the entry that planned it."""
    return next((plan for plan in plans if plain_words(plan) == done.key[1]), done.what)
