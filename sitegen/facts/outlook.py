"""The coming nights of an entry that is still gathering: when its target stands high in the dark, and what the Moon leaves.

No weather is known here, and none is guessed.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta

import numpy as np
from msgspec import Struct

from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import Filter, FilterKind
from sitegen.diary.settings import MoonRule
from sitegen.diary.target import Target
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.sky.advice import ANY, BROADBAND_WHILE_MOON_DOWN, NARROW_KINDS, advice
from sitegen.sky.answer import NightSky, TargetNight
from sitegen.sky.diurnal_path import positive_intervals
from sitegen.sky.engine import sky_pass
from sitegen.sky.night_time import Interval
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest

# Less than this is not worth carrying the gear out (common practice, no source).
USEFUL_S = 3600.0
DARK_KINDS = ("dark", "nautical")
SEASON_STEP, SEASON_LIMIT = 61, 366


class FilterNeed(Struct, frozen=True):
    """`missing_s` is 0 where all that was wanted is in, None where nothing was wanted."""

    short: str
    kind: FilterKind
    gathered_s: float
    wanted_s: float | None

    @property
    def missing_s(self) -> float | None:
        return None if self.wanted_s is None else max(self.wanted_s - self.gathered_s, 0.0)


class OutlookNight(Struct, frozen=True):
    """`hours` are the darkest the night has: dark, else nautical twilight, else the Sun just down; None where it never sets.

    `target` are the parts of them with the target above both the minimum altitude and the horizon; `moonless_s` is how long of
    these the Moon is below the horizon. `filters` are those still wanting hours that suit the Moon's advice.
    """

    evening: date
    dark_s: float
    dark_and_moonless_s: float
    hours_kind: str | None
    hours: Interval | None
    target: tuple[Interval, ...]
    target_s: float
    moonless_s: float
    max_altitude_deg: float | None
    illuminated: float
    phase: str
    moon_separation_deg: float
    advice: str | None
    filters: tuple[str, ...]

    @property
    def useful(self) -> bool:
        """At least an hour with the target in nautical darkness or better."""
        return self.hours_kind in DARK_KINDS and self.target_s >= USEFUL_S


class Season(Struct, frozen=True):
    """The run of useful nights that begins at or after the first evening asked for. `last` is None where it goes on for a year;
    `moonless` of the nights have at least an hour of the target without the Moon."""

    first: date
    last: date | None
    nights: int
    moonless: int


class Wish(Struct, frozen=True):
    """What an entry still wants, and of what."""

    entry: str
    title: str
    target: Target
    needs: tuple[FilterNeed, ...]


class Outlook(Struct, frozen=True):
    """`nights` is empty where the site keeps its place to itself. `season` is None where it was not asked for, or there is no
    useful night within a year."""

    wish: Wish
    site: PublicSite
    minimum_altitude_deg: float
    nights: tuple[OutlookNight, ...]
    season: Season | None = None


def needs_of(by_filter: Mapping[str, FilterTotals], filters: Iterable[tuple[str, Filter]]) -> tuple[FilterNeed, ...]:
    """From the fact `integration.by_filter` and the filters it is about; a filter that nobody defined counts as broadband.
    What is only recalled needs nothing."""
    kinds = {short: rig_filter.kind for short, rig_filter in filters}
    return tuple(
        FilterNeed(short, kinds.get(short, "broadband"), row.total_s, row.wanted_s)
        for short, row in by_filter.items()
        if short in kinds or row.wanted_s is not None
    )


def outlook_of(
    wish: Wish, site: PublicSite, first: date, nights: int, minimum_altitude_deg: float, rule: MoonRule, season: bool = False
) -> Outlook:
    """`first` is the first evening. Hours are good to some seconds (see `sky.engine`)."""
    if site.hidden or wish.target.ra_deg is None or wish.target.dec_deg is None:
        return Outlook(wish, site, minimum_altitude_deg, ())
    ahead = _Ahead(wish, site, minimum_altitude_deg, rule)
    coming = ahead.nights(first, nights)
    return Outlook(wish, site, minimum_altitude_deg, coming, _season(ahead, first, coming) if season else None)


class _Ahead:
    """Asks the sky for stretches of nights."""

    def __init__(self, wish: Wish, site: PublicSite, minimum_altitude_deg: float, rule: MoonRule) -> None:
        self.wish, self.rule, self.minimum_altitude_deg = wish, rule, minimum_altitude_deg
        self.place = Place(site.latitude_deg or 0.0, site.longitude_deg or 0.0, site.elevation_m or 0.0, horizon=site.horizon)
        self.direction = (wish.target.ra_deg or 0.0, wish.target.dec_deg or 0.0)

    def nights(self, first: date, count: int) -> tuple[OutlookNight, ...]:
        evenings = [first + timedelta(days=number) for number in range(count)]
        nothing = np.array([], dtype=np.int64)
        answer = sky_pass(
            SkyRequest(
                places=(self.place,),
                nights=tuple((0, evening) for evening in evenings),
                directions=(self.direction,),
                night_targets=tuple((number, 0) for number in range(count)),
                sub_mid_s=np.array([], dtype=float),
                sub_night=nothing,
                sub_direction=nothing,
            )
        )
        rows = zip(evenings, answer.nights, answer.night_targets, strict=True)
        return tuple(self._night(evening, sky, target) for evening, sky, target in rows)

    def _night(self, evening: date, sky: NightSky, target: TargetNight) -> OutlookNight:
        up = target.above(self.minimum_altitude_deg)
        moon = sky.moon
        advised = advice(moon.illuminated, moon.up_share_of_dark, self.rule.illuminated_above, self.rule.up_share_above)
        moonless_s = length_s(common(up, moon_down(sky)))
        return OutlookNight(
            evening=evening,
            dark_s=sky.dark_s,
            dark_and_moonless_s=moon.dark_and_moonless_s,
            hours_kind=target.hours_kind,
            hours=target.hours,
            target=up,
            target_s=length_s(up),
            moonless_s=moonless_s,
            max_altitude_deg=target.max_altitude_deg,
            illuminated=moon.illuminated,
            phase=moon.phase,
            moon_separation_deg=target.moon_separation_deg,
            advice=advised,
            filters=tuple(need.short for need in self.wish.needs if _suits(need, advised, moonless_s)) if up else (),
        )


def moon_down(sky: NightSky) -> tuple[Interval, ...]:
    """When the Moon's centre is below 0° in that night, from the ten-minute curve: 0.014° and 4 s at worst."""
    return positive_intervals(sky.curve.times_s, -sky.curve.moon_altitude_deg)


def common(intervals: Sequence[Interval], others: Sequence[Interval]) -> tuple[Interval, ...]:
    """What lies in both, either being in order and without overlaps."""
    pairs = ((max(a[0], b[0]), min(a[1], b[1])) for a in intervals for b in others)
    return tuple((start, end) for start, end in pairs if end > start)


def length_s(intervals: Iterable[Interval]) -> float:
    return sum((end - start).total_seconds() for start, end in intervals)


def _suits(need: FilterNeed, advised: str | None, moonless_s: float) -> bool:
    """Whether the filter still wants hours, and the advice lets it have some of this night's."""
    if need.missing_s == 0.0:
        return False
    if need.kind in NARROW_KINDS or advised == ANY:
        return True
    return advised == BROADBAND_WHILE_MOON_DOWN and moonless_s > 0


def _season(ahead: _Ahead, first: date, coming: tuple[OutlookNight, ...]) -> Season | None:
    run: list[OutlookNight] = []
    for night in _all_ahead(ahead, first, coming):
        if night.useful:
            run.append(night)
        elif run:
            return _season_of(run, ended=True)
    return _season_of(run, ended=False) if run else None


def _season_of(run: Sequence[OutlookNight], ended: bool) -> Season:
    moonless = sum(night.moonless_s >= USEFUL_S for night in run)
    return Season(run[0].evening, run[-1].evening if ended else None, len(run), moonless)


def _all_ahead(ahead: _Ahead, first: date, coming: tuple[OutlookNight, ...]) -> Iterator[OutlookNight]:
    """A year of nights, asked for only as far as they are looked at."""
    yield from coming[:SEASON_LIMIT]
    done = len(coming)
    while done < SEASON_LIMIT:
        step = min(SEASON_STEP, SEASON_LIMIT - done)
        yield from ahead.nights(first + timedelta(days=done), step)
        done += step
