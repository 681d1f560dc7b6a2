"""The diary as lists see it: every entry's card, and what belongs together."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import TypeVar

from sitegen.charts.chart import Remember, Voice, made_now
from sitegen.diary import addresses
from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.shown import Shower

Key = TypeVar("Key", str, int)


@dataclass(frozen=True)
class SiteBook:
    """`cards` newest first. Groups keep that order."""

    settings: Settings
    sites: Mapping[str, PublicSite]
    rigs: Mapping[str, Rig]
    cards: tuple[EntryCard, ...]
    shower: Shower
    remember: Remember = made_now

    @property
    def voice(self) -> Voice:
        """In which charts speak."""
        return Voice(self.shower.words, self.shower.numbers, self.remember)

    @cached_property
    def by_slug(self) -> dict[str, EntryCard]:
        return {card.slug: card for card in self.cards}

    @cached_property
    def by_target(self) -> dict[str, list[EntryCard]]:
        return _grouped(self.cards, lambda card: [target.slug for target in card.targets])

    @cached_property
    def by_rig(self) -> dict[str, list[EntryCard]]:
        return _grouped(self.cards, lambda card: card.rigs)

    @cached_property
    def by_site(self) -> dict[str, list[EntryCard]]:
        return _grouped(self.cards, lambda card: card.sites)

    @cached_property
    def by_topic(self) -> dict[str, list[EntryCard]]:
        return _grouped(self.cards, lambda card: [addresses.slug_of(topic) for topic in card.topics])

    @cached_property
    def topic_words(self) -> dict[str, str]:
        """A topic's slug to the author's own word, the newest entry's spelling."""
        return {addresses.slug_of(topic): topic for card in reversed(self.cards) for topic in card.topics}

    @cached_property
    def by_evening(self) -> dict[date, list[NightCard]]:
        found: dict[date, list[NightCard]] = {}
        for card in self.cards:
            for night in card.nights:
                found.setdefault(night.evening, []).append(night)
        return dict(sorted(found.items()))

    @cached_property
    def by_year(self) -> dict[int, list[NightCard]]:
        found: dict[int, list[NightCard]] = {}
        for evening, nights in self.by_evening.items():
            found.setdefault(evening.year, []).extend(nights)
        return found

    @cached_property
    def published_years(self) -> dict[int, list[EntryCard]]:
        return _grouped(self.cards, lambda card: [card.published.year])

    @cached_property
    def years(self) -> tuple[int, ...]:
        """Every year with a night or an entry, newest first."""
        return tuple(sorted({*self.by_year, *self.published_years}, reverse=True))


def _grouped(cards: Iterable[EntryCard], keys: Callable[[EntryCard], Iterable[Key]]) -> dict[Key, list[EntryCard]]:
    found: dict[Key, list[EntryCard]] = {}
    for card in cards:
        for key in dict.fromkeys(keys(card)):
            found.setdefault(key, []).append(card)
    return found
