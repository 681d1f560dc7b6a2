"""The diary as lists see it: every entry's card, and what belongs together."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from sitegen.charts.chart import Localizer, Remember, made_now
from sitegen.diary import addresses
from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.card_groups import CardGroups, by_evening, grouped
from sitegen.pages.counted_light import CountedLight, Key, LightTotals, light_totals, light_totals_by
from sitegen.pages.fact_formatter import FactFormatter


@dataclass(frozen=True)
class DiaryIndex(CardGroups[EntryCard]):
    """`cards` newest first. Groups keep that order. `half_hours` is half the common clock of the diary's stacked ribbons."""

    settings: Settings
    sites: Mapping[str, PublicSite]
    rigs: Mapping[str, Rig]
    cards: tuple[EntryCard, ...]
    formatter: FactFormatter
    remember: Remember = made_now
    half_hours: float = 0.0

    @property
    def voice(self) -> Localizer:
        """In which charts speak."""
        return Localizer(self.formatter.words, self.formatter.numbers, self.remember)

    @cached_property
    def topic_words(self) -> dict[str, str]:
        """A topic's slug to the author's own word, the newest entry's spelling."""
        return {addresses.slug_of(topic): topic for card in reversed(self.cards) for topic in card.topics}

    @cached_property
    def by_evening(self) -> dict[date, list[NightCard]]:
        return by_evening(night for card in self.cards for night in card.nights)

    @cached_property
    def by_year(self) -> dict[int, list[NightCard]]:
        years: dict[int, list[NightCard]] = {}
        for evening, nights in self.by_evening.items():
            years.setdefault(evening.year, []).extend(nights)
        return years

    @cached_property
    def published_years(self) -> dict[int, list[EntryCard]]:
        return grouped(self.cards, lambda card: [card.published.year])

    @cached_property
    def years(self) -> tuple[int, ...]:
        """Every year with a night or an entry, newest first."""
        return tuple(sorted({*self.by_year, *self.published_years}, reverse=True))

    @cached_property
    def totals(self) -> LightTotals:
        """Of the whole diary."""
        return light_totals((night.evening, night.light) for card in self.cards for night in card.nights)

    @cached_property
    def totals_by_target(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda _, light: light.targets)

    @cached_property
    def totals_by_rig(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda _, light: (light.rig,))

    @cached_property
    def totals_by_site(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda night, _: (night.site,))

    @cached_property
    def totals_by_year(self) -> dict[int, LightTotals]:
        """By the year of the evening."""
        return self._totals_by(lambda night, _: (night.evening.year,))

    def _totals_by(self, keys: Callable[[NightCard, CountedLight], Iterable[Key]]) -> dict[Key, LightTotals]:
        nights = (night for card in self.cards for night in card.nights)
        return light_totals_by((night.evening, light, keys(night, light)) for night in nights for light in night.light)
