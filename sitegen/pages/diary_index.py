"""The diary as lists see it: every entry's card, and what belongs together."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from sitegen.charts.chart import Localizer, Remember, made_now
from sitegen.diary import addresses
from sitegen.diary.public_position import PublicSite
from sitegen.diary.recalled import Recalled
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.card_groups import CardGroups, by_evening, grouped
from sitegen.pages.counted_light import CountedLight, Key, LightTotals, light_totals, light_totals_by
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.recalled_light import add_recalled, rigs_of, sites_of, targets_of, years_of


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
        """Every year with a night, an entry, or hours recalled without a log, newest first."""
        return tuple(sorted({*self.by_year, *self.published_years, *self.recalled_years}, reverse=True))

    @cached_property
    def totals(self) -> LightTotals:
        """Of the whole diary."""
        logged = light_totals((night.evening, night.light) for card in self.cards for night in card.nights)
        return add_recalled({"": logged}, self.cards, lambda *_: ("",))[""]

    @cached_property
    def totals_by_target(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda _, light: light.targets, targets_of)

    @cached_property
    def totals_by_rig(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda _, light: (light.rig,), rigs_of)

    @cached_property
    def totals_by_site(self) -> dict[str, LightTotals]:
        return self._totals_by(lambda night, _: (night.site,), sites_of)

    @cached_property
    def totals_by_year(self) -> dict[int, LightTotals]:
        """By the year of the evening; what is recalled, by the year it was in."""
        return self._totals_by(lambda night, _: (night.evening.year,), years_of)

    @cached_property
    def recalled_years(self) -> frozenset[int]:
        """Years of which an entry recalls hours without a log."""
        return frozenset(year for card in self.cards for year in card.recalled_years)

    def _totals_by(
        self,
        keys: Callable[[NightCard, CountedLight], Iterable[Key]],
        keys_of_recalled: Callable[[EntryCard, Recalled], Iterable[Key]],
    ) -> dict[Key, LightTotals]:
        nights = (night for card in self.cards for night in card.nights)
        logged = light_totals_by((night.evening, light, keys(night, light)) for night in nights for light in night.light)
        return add_recalled(logged, self.cards, keys_of_recalled)
