"""What lists need to know of an entry: light enough to keep for every entry of a diary at once."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from msgspec import field
from msgspec.structs import replace

from sitegen.cautions.sources import of_sentence
from sitegen.diary.entry import Lessons
from sitegen.diary.rig import CautionKind, Filter
from sitegen.diary.rigs_used import rigs_of
from sitegen.facts.integration_dark_equivalent import sub_worths_s
from sitegen.facts.integration_totals import seconds
from sitegen.facts.night_advice import advice, followed
from sitegen.facts.night_use import covered, used_share_of_dark
from sitegen.facts.registry import EntryFacts, IntegrationFacts, OpticsFacts
from sitegen.facts.views import EntryView, NightView, RingView, SurveyView
from sitegen.pages.cautions_shown import Flags, flags_of
from sitegen.pages.counted_light import CountedLight, counted_light
from sitegen.pages.entry_summary import EntrySummary, Evening
from sitegen.pages.picture_element import PictureView
from sitegen.pages.ribbon import Ribbon, clock_span, ribbon_of


class NightCard(Evening, frozen=True):
    """One night of one entry at one site. Unknown values are None (hidden site, no darkness). Numbers are the entry's own, as its
    page shows them; `light` is what lists count of it. `exposing` are the stretches of its dark hours in which kept subs were
    exposing that no later entry tells."""

    site: str
    target: str | None
    integration_s: float
    kept: int
    discarded: int
    narrow_s: float
    dark_s: float | None
    used_share: float | None
    illuminated: float | None
    up_share: float | None
    advice: str | None
    followed: bool | None
    ribbon: Ribbon | None
    by_filter_s: Mapping[str, float] = field(default_factory=dict)
    dark: tuple[datetime, datetime] | None = None
    exposing: tuple[tuple[datetime, datetime], ...] = ()
    light: tuple[CountedLight, ...] = ()

    @property
    def counted_s(self) -> float:
        """Kept seconds as the lists of the whole diary count them."""
        return sum(light.kept_s for light in self.light if light.counts())

    @property
    def counted_narrow_s(self) -> float:
        return sum(light.narrow_s for light in self.light if light.counts())

    @property
    def counts(self) -> bool:
        """Whether lists count any frame of it here, kept or discarded."""
        return any(light.counts() for light in self.light)

    @property
    def counts_whole(self) -> bool:
        """Whether no later entry tells a frame of it."""
        return all(light.counts() for light in self.light)


class EntryCard(EntrySummary, frozen=True):
    """All that lists may show. `flags` are the cautions of the text that its words alone do not tell; `lesson_cautions` by
    lesson, of those that call for any."""

    nights: tuple[NightCard, ...]
    filters: tuple[tuple[str, Filter], ...]
    integration: IntegrationFacts
    optics: tuple[OpticsFacts, ...]
    lessons: Lessons
    flags: Flags = Flags()
    lesson_cautions: Mapping[str, tuple[CautionKind, ...]] = field(default_factory=dict)
    surveys: tuple[SurveyView, ...] = ()
    rings: tuple[RingView, ...] = ()


def summary_of(card: EntryCard) -> EntrySummary:
    """Without its nights and numbers."""
    told: dict[str, Any] = {name: getattr(card, name) for name in EntrySummary.__struct_fields__}
    return EntrySummary(**{**told, "nights": ()})


def with_ribbons(card: EntryCard, view: EntryView, half_hours: float) -> EntryCard:
    """The card with a small ribbon for each night; `half_hours` is half the common clock of the diary's stacked ribbons."""
    nights = zip(card.nights, view.nights, strict=True)
    return replace(card, nights=tuple(replace(night, ribbon=_ribbon(of, view, half_hours)) for night, of in nights))


def _ribbon(night: NightView, view: EntryView, half_hours: float) -> Ribbon | None:
    span = clock_span(night, half_hours)
    key = f"{view.entry.slug}-{night.evening:%Y%m%d}-{night.site.slug}"
    return ribbon_of(night, span, bands_of(view.filters), key, named=False) if span else None


def card_of(view: EntryView, facts: EntryFacts, picture: PictureView | None = None) -> EntryCard:
    """The card of one entry, without ribbons, whose clock only the whole diary tells."""
    entry = view.entry
    worths_s = {id(light): worth_s for light, worth_s in zip(view.lights, sub_worths_s(view), strict=True)}
    sites = {night.site.slug for night in view.nights} | ({entry.site} if entry.site else set())
    return EntryCard(
        slug=entry.slug,
        title=entry.title,
        published=entry.published,
        updated=entry.updated,
        summary=entry.summary,
        stage=entry.stage,
        targets=entry.targets,
        rigs=rigs_of(entry),
        sites=tuple(sorted(sites)),
        topics=entry.topics,
        filters=view.filters,
        nights=tuple(_night_card(night, view, worths_s) for night in view.nights),
        integration=facts.integration,
        optics=facts.optics,
        lessons=entry.lessons,
        flags=flags_of(view),
        lesson_cautions={sentence: kinds for sentence in entry.lessons.all if (kinds := of_sentence(sentence))},
        picture=picture,
        surveys=view.surveys,
        rings=view.rings,
    )


def _night_card(night: NightView, view: EntryView, worths_s: Mapping[int, float | None]) -> NightCard:
    """`worths_s` by the identity of the light."""
    kept = night.kept
    moon = night.sky.moon if night.sky else None
    return NightCard(
        evening=night.evening,
        site=night.site.slug,
        entry=view.entry.slug,
        target=night.target.name if night.target else None,
        integration_s=seconds(kept),
        kept=len(kept),
        discarded=len(night.lights) - len(kept),
        narrow_s=seconds(light for light in kept if light.narrow),
        dark_s=night.sky.dark_s if night.sky else None,
        used_share=used_share_of_dark(night),
        illuminated=moon.illuminated if moon else None,
        up_share=moon.up_share_of_dark if moon else None,
        advice=advice(night),
        followed=followed(night),
        ribbon=None,
        by_filter_s={short: total for short, _ in view.filters if (total := _through(night, short))},
        dark=(dark := _dark(night)),
        exposing=tuple(covered([(light.sub.start, light.sub.end) for light in kept if not light.later], dark)) if dark else (),
        light=counted_light((light, worths_s[id(light)]) for light in night.lights),
    )


def _dark(night: NightView) -> tuple[datetime, datetime] | None:
    sky = night.sky
    return (sky.dark_start, sky.dark_end) if sky and sky.dark_start and sky.dark_end else None


def _through(night: NightView, short: str) -> float:
    return seconds(light for light in night.kept if light.filter_key == short)


def bands_of(filters: tuple[tuple[str, Filter], ...]) -> dict[str, tuple[int, ...]]:
    """Each filter's passbands in whole nm, as the theme names its colours. Luminance and clear have none: a band wider
    than 200 nm shows no hue."""
    return {short: passbands_of(one) for short, one in filters}


def passbands_of(one: Filter) -> tuple[int, ...]:
    wide = one.width_nm is not None and one.width_nm > 200
    return () if wide else tuple(round(centre) for centre in one.centre_nm)
