"""What belongs together in a diary: entries with the same target, rig, site or topic, and of the same evening."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Generic, TypeVar

from sitegen.diary import addresses
from sitegen.pages.entry_summary import EntrySummary, Evening

Card = TypeVar("Card", bound=EntrySummary)
Night = TypeVar("Night", bound=Evening)
Key = TypeVar("Key", str, int)


class CardGroups(Generic[Card]):
    """`cards` newest first. Groups keep that order."""

    cards: tuple[Card, ...]

    @cached_property
    def by_slug(self) -> dict[str, Card]:
        return {card.slug: card for card in self.cards}

    @cached_property
    def by_target(self) -> dict[str, list[Card]]:
        return grouped(self.cards, lambda card: [target.slug for target in card.targets])

    @cached_property
    def by_rig(self) -> dict[str, list[Card]]:
        return grouped(self.cards, lambda card: card.rigs)

    @cached_property
    def by_site(self) -> dict[str, list[Card]]:
        return grouped(self.cards, lambda card: card.sites)

    @cached_property
    def by_topic(self) -> dict[str, list[Card]]:
        return grouped(self.cards, lambda card: [addresses.slug_of(topic) for topic in card.topics])


@dataclass(frozen=True)
class SummaryIndex(CardGroups[EntrySummary]):
    """The diary as the page of one entry may know it."""

    cards: tuple[EntrySummary, ...]

    @cached_property
    def by_evening(self) -> dict[date, list[Evening]]:
        return by_evening(night for card in self.cards for night in card.nights)


def by_evening(nights: Iterable[Night]) -> dict[date, list[Night]]:
    """In the order of evenings."""
    evenings: dict[date, list[Night]] = {}
    for night in nights:
        evenings.setdefault(night.evening, []).append(night)
    return dict(sorted(evenings.items()))


def grouped(cards: Iterable[Card], keys: Callable[[Card], Iterable[Key]]) -> dict[Key, list[Card]]:
    groups: dict[Key, list[Card]] = {}
    for card in cards:
        for key in dict.fromkeys(keys(card)):
            groups.setdefault(key, []).append(card)
    return groups
