"""Where to read on: the entries before and after, in time and with the same target, rig or topic."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.site_book import SiteBook


@dataclass(frozen=True, slots=True)
class Along:
    """One thread through the diary. `label` says which (a target's name); '' for time itself."""

    kind: str
    label: str
    earlier: tuple[str, str] | None
    later: tuple[str, str] | None


def neighbours(card: EntryCard, book: SiteBook) -> tuple[Along, ...]:
    """Time first; then threads that have something to offer."""
    threads = [Along("time", "", *_around(card, book.cards))]
    threads += [Along("target", one.name, *_around(card, book.by_target[one.slug])) for one in card.targets]
    threads += [Along("rig", book.rigs[slug].name, *_around(card, book.by_rig[slug])) for slug in card.rigs]
    threads += [Along("topic", topic, *_around(card, book.by_topic[addresses.slug_of(topic)])) for topic in card.topics]
    return tuple(thread for thread in threads if thread.earlier or thread.later)


def _around(card: EntryCard, cards: Sequence[EntryCard]) -> tuple[tuple[str, str] | None, tuple[str, str] | None]:
    """(earlier, later) as (slug, title); `cards` stand newest first."""
    place = next(index for index, one in enumerate(cards) if one.slug == card.slug)
    earlier = cards[place + 1] if place + 1 < len(cards) else None
    later = cards[place - 1] if place else None
    return _named(earlier), _named(later)


def _named(card: EntryCard | None) -> tuple[str, str] | None:
    return (card.slug, card.title) if card else None
