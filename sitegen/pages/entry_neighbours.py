"""Where to read on: the entries before and after, in time and with the same target, rig or topic."""

from bisect import bisect_left
from collections.abc import Sequence

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex


class Along(Struct, frozen=True):
    """One thread through the diary. `label` says which (a target's name); '' for time itself."""

    kind: str
    label: str
    earlier: tuple[str, str] | None
    later: tuple[str, str] | None


def neighbours(card: EntryCard, book: DiaryIndex) -> tuple[Along, ...]:
    """Time first; then threads that have something to offer."""
    threads = [Along("time", "", *_around(card, book.cards))]
    threads += [Along("target", target.name, *_around(card, book.by_target[target.slug])) for target in card.targets]
    threads += [Along("rig", book.rigs[slug].name, *_around(card, book.by_rig[slug])) for slug in card.rigs]
    threads += [Along("topic", topic, *_around(card, book.by_topic[addresses.slug_of(topic)])) for topic in card.topics]
    return tuple(thread for thread in threads if thread.earlier or thread.later)


def beside(card: EntryCard, cards: Sequence[EntryCard]) -> tuple[EntryCard | None, EntryCard | None]:
    """(earlier, later) of a card among `cards`, which stand newest first."""
    place = bisect_left(cards, _newness(card), key=_newness)
    earlier = cards[place + 1] if place + 1 < len(cards) else None
    return earlier, cards[place - 1] if place else None


def _newness(card: EntryCard) -> tuple[int, str]:
    """The order of a diary: newest first, of one day by name."""
    return -card.published.toordinal(), card.slug


def _around(card: EntryCard, cards: Sequence[EntryCard]) -> tuple[tuple[str, str] | None, tuple[str, str] | None]:
    """(earlier, later) as (slug, title)."""
    earlier, later = beside(card, cards)
    return _named(earlier), _named(later)


def _named(card: EntryCard | None) -> tuple[str, str] | None:
    return (card.slug, card.title) if card else None
