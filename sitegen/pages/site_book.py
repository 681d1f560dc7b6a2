"""The diary as lists see it: every entry's card, and what belongs together."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from sitegen.charts.chart import Remember, Voice, made_now
from sitegen.diary import addresses
from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.card_groups import CardGroups, by_evening, grouped
from sitegen.pages.shown import Shower


@dataclass(frozen=True)
class SiteBook(CardGroups[EntryCard]):
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
    def topic_words(self) -> dict[str, str]:
        """A topic's slug to the author's own word, the newest entry's spelling."""
        return {addresses.slug_of(topic): topic for card in reversed(self.cards) for topic in card.topics}

    @cached_property
    def by_evening(self) -> dict[date, list[NightCard]]:
        return by_evening(night for card in self.cards for night in card.nights)

    @cached_property
    def by_year(self) -> dict[int, list[NightCard]]:
        found: dict[int, list[NightCard]] = {}
        for evening, nights in self.by_evening.items():
            found.setdefault(evening.year, []).extend(nights)
        return found

    @cached_property
    def published_years(self) -> dict[int, list[EntryCard]]:
        return grouped(self.cards, lambda card: [card.published.year])

    @cached_property
    def years(self) -> tuple[int, ...]:
        """Every year with a night or an entry, newest first."""
        return tuple(sorted({*self.by_year, *self.published_years}, reverse=True))
