"""The nights: the fullest one as a large ribbon, all of them as a cloth on a common clock.

Beyond a dozen the page shows the fullest one alone and leads to the pages of all others, month by month.
"""

from collections.abc import Sequence
from datetime import date, datetime
from itertools import groupby
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.cautions.sources import of_discarded
from sitegen.diary.rig import CautionKind
from sitegen.facts.views import NightView
from sitegen.pages.card import NightCard, bands_of
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.ribbon import Ribbon, night_span, ribbon_of


class LargeRibbon(Struct, frozen=True):
    """A night drawn whole. `title` is a sentence; `zone` names the local clock of its axis; `cautions` are those of the reasons
    why subs were discarded. `lane_totals` and `lane_names` by the ribbon's lanes; `trains`: name and total of each by its rig's
    slug, where several have lanes."""

    night: NightCard
    ribbon: Ribbon
    title: str
    zone: str
    target: str | None
    lane_totals: tuple[str, ...]
    lane_names: tuple[str, ...]
    trains: dict[str, tuple[str, str]]
    moon_word: str | None
    transit_word: str | None
    description: str
    cautions: tuple[CautionKind, ...] = ()


MOST_NIGHTS = 12
"""So many nights stand on the page of their entry."""


class MonthOfNights(Struct, frozen=True):
    """`nights`: each evening with the light that it gathered."""

    first_day: date
    nights: tuple[tuple[date, float], ...]


class Nights(Struct, frozen=True):
    """`cards`: of the nights that the page shows. `months` hold all nights where those are not all of them, else none."""

    fullest: LargeRibbon | None
    cards: tuple[NightCard, ...]
    notes: tuple[tuple[NightCard, object], ...]
    hidden: bool
    title: str
    reasons: dict[str, str]
    months: tuple[MonthOfNights, ...] = ()


def shown_nights(cards: Sequence[NightCard]) -> list[int]:
    """Which nights the page shows: all of a dozen, of more the fullest one."""
    return list(range(len(cards))) if len(cards) <= MOST_NIGHTS else [_fullest(cards)]


def _fullest(cards: Sequence[NightCard]) -> int:
    return max(range(len(cards)), key=lambda index: (cards[index].integration_s, -index))


def section(prepared: PreparedEntry, book: DiaryIndex) -> Nights | None:
    nights = prepared.view.nights
    if not nights:
        return None
    cards = prepared.card.nights
    fullest, shown = _fullest(cards), shown_nights(cards)
    months, evenings = months_of(cards) if len(shown) < len(cards) else (), len({night.evening for night in nights})
    return Nights(
        fullest=large_ribbon(nights[fullest], cards[fullest], prepared, book),
        cards=tuple(cards[index] for index in shown),
        notes=tuple((cards[index], note) for index in shown if (note := nights[index].note)),
        hidden=any(night.site.hidden for night in nights),
        title=book.formatter.words.count("nights.by_month" if months else "nights.stack", evenings),
        reasons={f"{cards[index].evening}-{cards[index].site}": advice_words(cards[index], book) for index in shown},
        months=months,
    )


def months_of(cards: Sequence[NightCard]) -> tuple[MonthOfNights, ...]:
    """Each evening once, with the light of all its cards."""
    gathered_s: dict[date, float] = {}
    for card in cards:
        gathered_s[card.evening] = gathered_s.get(card.evening, 0.0) + card.integration_s
    by_month = groupby(sorted(gathered_s.items()), key=lambda item: item[0].replace(day=1))
    return tuple(MonthOfNights(first_day, tuple(nights)) for first_day, nights in by_month)


def large_ribbon(night: NightView, card: NightCard, prepared: PreparedEntry, book: DiaryIndex) -> LargeRibbon | None:
    span = night_span(night)
    if span is None:
        return None
    numbers, words = book.formatter.numbers, book.formatter.words
    bands = bands_of(prepared.view.filters)
    ribbon = ribbon_of(night, span, bands, f"large-{prepared.card.slug}-{night.evening:%Y%m%d}-{night.site.slug}")
    moon = night.sky.moon if night.sky else None
    transit = night.target_sky
    zone = ZoneInfo(night.site.time_zone)
    return LargeRibbon(
        night=card,
        ribbon=ribbon,
        title=night_title(card, book),
        zone=night.site.time_zone.rpartition("/")[2].replace("_", " "),
        target=night.target.name if night.target else None,
        lane_totals=tuple(numbers.duration(_kept_s(night, lane.rig, lane.short)) for lane in ribbon.lanes),
        lane_names=tuple(f"{lane.short}, {book.rigs[lane.rig].name}" if lane.rig else lane.short for lane in ribbon.lanes),
        trains={lane.rig: (book.rigs[lane.rig].name, numbers.duration(_kept_s(night, lane.rig)))
                for lane in ribbon.lanes if lane.heads},
        moon_word=words.say("ribbon.moon", lit=numbers.percent(moon.illuminated)) if moon else None,
        transit_word=_transit_word(transit.transit, zone, book) if transit and transit.transit else None,
        description=ribbon_description(night, card, book),
        cautions=of_discarded(light.sub for light in night.lights),
    )


def _kept_s(night: NightView, rig: str, short: str = "") -> float:
    """Of one train, or of all where none is named; through one filter, or all."""
    kept = (light for light in night.kept if rig in ("", light.sub.rig) and short in ("", light.filter_key))
    return sum((light.sub.exposure_s for light in kept), 0.0)


def _transit_word(transit: datetime, zone: ZoneInfo, book: DiaryIndex) -> str:
    return book.formatter.words.say("ribbon.transit", clock=book.formatter.numbers.clock(transit, zone))


def night_title(card: NightCard, book: DiaryIndex) -> str:
    """One sentence that answers how the night was used."""
    numbers, words = book.formatter.numbers, book.formatter.words
    day = numbers.day(card.evening)
    if not card.kept:
        return words.say("nights.kept_nothing", day=day, subs=words.count("entry.subs", card.discarded))
    if card.used_share is not None:
        return words.say("nights.used", day=day, share=numbers.percent(card.used_share))
    if card.dark_s == 0:
        return words.say("nights.without_darkness", day=day, total=numbers.duration(card.integration_s))
    return words.say("nights.gathered", day=day, total=numbers.duration(card.integration_s))


def advice_words(card: NightCard, book: DiaryIndex) -> str:
    """The rule's advice with its reasons: '62 % lit and up for 71 % of the dark hours: narrowband'."""
    numbers, words = book.formatter.numbers, book.formatter.words
    if card.illuminated is None:
        return words["nights.hidden"]
    lit = numbers.percent(card.illuminated)
    if card.up_share is None:
        return words.say("nights.reason_no_dark", lit=lit)
    reason = words.say("nights.reason", lit=lit, up=numbers.percent(card.up_share))
    advice = words[f"advice.{card.advice}"] if card.advice else ""
    kept_to = {True: words["nights.followed"], False: words["nights.not_followed"], None: ""}[card.followed]
    return " ".join(part for part in (f"{reason}: {advice}.", kept_to) if part)


def ribbon_description(night: NightView, card: NightCard, book: DiaryIndex) -> str:
    """The picture in words, for who cannot see it."""
    numbers, words = book.formatter.numbers, book.formatter.words
    zone = ZoneInfo(night.site.time_zone)
    parts = [words.say("ribbon.desc_subs", subs=words.count("entry.subs", card.kept), discarded=card.discarded,
                       total=numbers.duration(card.integration_s))]  # fmt: skip
    if night.sky and night.sky.sunset and night.sky.sunrise:
        parts.append(words.say("ribbon.desc_sun", sunset=numbers.clock(night.sky.sunset, zone),
                               sunrise=numbers.clock(night.sky.sunrise, zone)))  # fmt: skip
    if night.sky and night.sky.dark_start and night.sky.dark_end:
        parts.append(words.say("ribbon.desc_dark", start=numbers.clock(night.sky.dark_start, zone),
                               end=numbers.clock(night.sky.dark_end, zone)))  # fmt: skip
    if night.sky:
        parts.append(advice_words(card, book))
    return " ".join(parts)


SECTION = EntrySection("nights", section, "nights")
