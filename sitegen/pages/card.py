"""What lists need to know of an entry: light enough to keep for every entry of a diary at once."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from msgspec import field, msgpack
from msgspec.structs import replace

from sitegen.cautions.sources import of_sentence
from sitegen.charts.filter_colour import passbands_of
from sitegen.diary.entry import Lessons
from sitegen.diary.recalled import Recalled
from sitegen.diary.rig import CautionKind, Filter
from sitegen.diary.rigs_used import rigs_of
from sitegen.facts.integration_dark_equivalent import sub_worths_s
from sitegen.facts.integration_totals import seconds
from sitegen.facts.night_advice import advice, followed
from sitegen.facts.night_use import covered, used_share_of_dark
from sitegen.facts.registry import EntryFacts, IntegrationFacts, OpticsFacts
from sitegen.facts.views import EntryView, NightView, RingView, SurveyView
from sitegen.markdown.marks import without_marks
from sitegen.pages.cautions_shown import Flags, flags_of
from sitegen.pages.counted_light import CountedLight, counted_light
from sitegen.pages.entry_summary import EntrySummary, Evening
from sitegen.pages.picture_element import PictureView
from sitegen.pages.ribbon import Ribbon, clock_span, ribbon_of


class NightCard(Evening, frozen=True):
    """One night of one entry at one site. Unknown values are None (hidden site, no darkness). Numbers are the entry's own, as its
    page shows them; `light` is what lists count of it. `exposing` are the stretches of its dark hours in which kept subs were
    exposing that no later entry tells. `thread` is where on the common clock kept subs begin and end, in percents of it.

    `counted_s`, `counted_narrow_s`: kept seconds as the lists of the whole diary count them; `counts`: whether they count any
    frame of it here, kept or discarded; `counts_whole`: whether no later entry tells a frame of it."""

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
    ribbon_bytes: bytes | None = None
    thread: tuple[float, float] | None = None
    by_filter_s: Mapping[str, float] = field(default_factory=dict)
    dark: tuple[datetime, datetime] | None = None
    exposing: tuple[tuple[datetime, datetime], ...] = ()
    light: tuple[CountedLight, ...] = ()
    counted_s: float = 0.0
    counted_narrow_s: float = 0.0
    counts: bool = False
    counts_whole: bool = True

    @property
    def ribbon(self) -> Ribbon | None:
        """Kept as bytes: lists read the cards of all nights, and draw few."""
        return msgpack.decode(self.ribbon_bytes, type=Ribbon) if self.ribbon_bytes else None


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
    recalled: tuple[Recalled, ...] = ()


def summary_of(card: EntryCard) -> EntrySummary:
    """Without its nights and numbers."""
    values: dict[str, Any] = {name: getattr(card, name) for name in EntrySummary.__struct_fields__}
    return EntrySummary(**{**values, "nights": ()})


def without_words(card: EntryCard) -> EntryCard:
    """Its nights and numbers alone: a title or a lesson that changes leaves it as it was."""
    return replace(
        card, title="", updated=None, summary=None, picture=None, lessons=Lessons(), flags=Flags(), lesson_cautions={},
        surveys=(), rings=(), done=(),
    )  # fmt: skip


def with_ribbons(card: EntryCard, view: EntryView, half_hours: float) -> EntryCard:
    """The card with a small ribbon for each night; `half_hours` is half the common clock of the diary's stacked ribbons."""
    nights = zip(card.nights, view.nights, strict=True)
    return replace(card, nights=tuple(_with_ribbon(night, of, view, half_hours) for night, of in nights))


def _with_ribbon(card: NightCard, night: NightView, view: EntryView, half_hours: float) -> NightCard:
    span = clock_span(night, half_hours)
    if span is None:
        return card
    key = f"{view.entry.slug}-{night.evening:%Y%m%d}-{night.site.slug}"
    ribbon = ribbon_of(night, span, bands_of(view.filters), key, named=False)
    return replace(card, ribbon_bytes=msgpack.encode(ribbon), thread=_thread(ribbon))


def _thread(ribbon: Ribbon) -> tuple[float, float] | None:
    blocks = [block for lane in ribbon.lanes for block in lane.blocks if block.kept]
    return (min(block.x for block in blocks), max(block.x + block.width for block in blocks)) if blocks else None


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
        summary=without_marks(entry.summary or "") or None,
        stage=entry.stage,
        targets=tuple(replace(target, positions=None) for target in entry.targets),
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
        recalled_years=tuple(sorted({item.when.year for item in entry.recalled if item.when})),
        done=entry.lessons.done,
        surveys=view.surveys,
        rings=view.rings,
        recalled=entry.recalled,
    )


def _night_card(night: NightView, view: EntryView, worths_s: Mapping[int, float | None]) -> NightCard:
    """`worths_s` by the identity of the light."""
    kept = night.kept
    light = counted_light((light, worths_s[id(light)]) for light in night.lights)
    here = [counted for counted in light if counted.counts()]
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
        by_filter_s={short: total for short, _ in view.filters if (total := _through(night, short))},
        dark=(dark := _dark(night)),
        exposing=tuple(covered([(light.sub.start, light.sub.end) for light in kept if not light.later], dark)) if dark else (),
        light=light,
        counted_s=sum(counted.kept_s for counted in here),
        counted_narrow_s=sum(counted.narrow_s for counted in here),
        counts=bool(here),
        counts_whole=len(here) == len(light),
    )


def _dark(night: NightView) -> tuple[datetime, datetime] | None:
    sky = night.sky
    return (sky.dark_start, sky.dark_end) if sky and sky.dark_start and sky.dark_end else None


def _through(night: NightView, short: str) -> float:
    return seconds(light for light in night.kept if light.filter_key == short)


def bands_of(filters: tuple[tuple[str, Filter], ...]) -> dict[str, tuple[str, ...]]:
    """Each filter's passbands, as the theme names its colours."""
    return {short: passbands_of(rig_filter) for short, rig_filter in filters}
