"""A year as a cloth: every night of it under the other, whether anything was done or not, on the common clock.

Dusk and darkness are four areas, one in the other, so that the summer's missing darkness is seen at a glance; the Moon lies pale
on the nights it was up; what was gathered is a thread in its night. Coordinates: x 0 to 100 across the clock, y one unit a day.
"""

from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta
from itertools import groupby

import numpy as np
from msgspec import Struct

from sitegen.charts.filter_colour import passbands_of
from sitegen.diary.public_position import PublicSite
from sitegen.facts.sky_request import place_of
from sitegen.pages.card import NightCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.sky.answer import NightSky
from sitegen.sky.engine import sky_pass
from sitegen.sky.request import SkyRequest

MOON_STEPS = 5
THREAD = 1.7
"""Height in days: a night that is told by a thread is seen among 365."""

MOST_NAMED = 400
"""Threads that say their evening and hours. Of more each evening is one thread, without words: the months below lead to it."""


class Thread(Struct, frozen=True):
    """The kept subs of one night: from x over width, in the light of the filter that gathered most."""

    evening: date
    counted_s: float

    y: int
    x: float
    width: float
    band: str


Woven = tuple[tuple[tuple[int, str], ...], tuple[tuple[float, str], ...]]
"""Areas and Moon of a cloth."""


class YearCloth(Struct, frozen=True):
    """`areas` are (depth 1 to 4, SVG path data), the widest first; `moon` (strength, path data). `elsewhere`: nights with light
    at other places, whose dusk is another."""

    year: int
    days: int
    site: str
    areas: tuple[tuple[int, str], ...]
    moon: tuple[tuple[float, str], ...]
    threads: tuple[Thread, ...]
    elsewhere: int
    months: tuple[tuple[float, date], ...]
    hours: tuple[tuple[float, str], ...]
    thread_height: float = THREAD

    @property
    def names_threads(self) -> bool:
        return len(self.threads) <= MOST_NAMED

    @property
    def thread_paths(self) -> tuple[tuple[str, str], ...]:
        """All threads of one passband as one path, for a small drawing."""
        paths: dict[str, str] = {}
        for thread in self.threads if self.names_threads else _of_evenings(self.threads):
            paths[thread.band] = f"{paths.get(thread.band, '')}M{thread.x} {thread.y}h{thread.width}v{THREAD}h-{thread.width}z"
        return tuple(sorted(paths.items()))


def _of_evenings(threads: Sequence[Thread]) -> Iterable[Thread]:
    """One for each evening, from its first to its last kept sub, in the light of what gathered most."""
    for y, group in groupby(sorted(threads, key=lambda thread: thread.y), key=lambda thread: thread.y):
        same = list(group)
        most, start = max(same, key=lambda thread: thread.counted_s), min(thread.x for thread in same)
        end = max(thread.x + thread.width for thread in same)
        yield Thread(most.evening, sum(thread.counted_s for thread in same), y, start, round(end - start, 2), most.band)


def year_cloth(year: int, book: DiaryIndex) -> YearCloth | None:
    """The cloth of the site with the most nights that year, of those that are not hidden; None where there is none."""
    nights = book.by_year.get(year, [])
    in_sight = [night for night in nights if not book.sites[night.site].hidden and night.ribbon_bytes]
    if not in_sight:
        return None
    slugs = sorted({night.site for night in in_sight})
    slug = max(slugs, key=lambda slug: sum(night.site == slug for night in in_sight))
    home = book.sites[slug]
    gathered = [night for night in nights if night.kept and night.counted_s]
    half_h = book.half_hours
    areas, moon = book.remember(("year cloth", year, home, half_h), Woven, lambda: _woven(year, home, half_h))
    days = _days(year)
    return YearCloth(
        year=year,
        days=len(days),
        site=home.name,
        areas=areas,
        moon=moon,
        threads=tuple(_thread(night, days[0], book) for night in gathered if night.site == slug and night.thread),
        elsewhere=len({night.evening for night in gathered if night.site != slug}),
        months=tuple((round(100 * (day - days[0]).days / len(days), 2), day) for day in days if day.day == 1),
        hours=tuple(_hour(hour, half_h) for hour in range(-int(half_h) + 1, int(half_h), 2)),
    )


def _days(year: int) -> list[date]:
    first = date(year, 1, 1)
    return [first + timedelta(days=index) for index in range((date(year + 1, 1, 1) - first).days)]


def _hour(hour: int, half_h: float) -> tuple[float, str]:
    return round(50 + 50 * hour / half_h, 2), f"{hour % 24:02d}"


def _woven(year: int, site: PublicSite, half_h: float) -> Woven:
    """The areas and the Moon of every night of the year at one site: one pass of the sky."""
    days = _days(year)
    nothing = np.array([], dtype=float)
    none = np.array([], dtype=int)
    request = SkyRequest((place_of(site),), tuple((0, day) for day in days), (), (), nothing, none, none)
    skies = sky_pass(request).nights
    edges: tuple[Callable[[NightSky], tuple[float, float] | None], ...] = (
        lambda sky: _across(sky, sky.sunset, sky.sunrise, half_h, always=False),
        lambda sky: _across(sky, sky.nautical_start, sky.nautical_end, half_h),
        lambda sky: _across(sky, sky.dark_start, sky.dark_end, half_h),
    )
    depths = (1, 3, 4)
    areas = tuple((depth, _area([edge(sky) for sky in skies])) for depth, edge in zip(depths, edges, strict=True))
    return areas, _moon(skies, half_h)


def _x(sky: NightSky, seconds: float, half_h: float) -> float:
    return min(max(50 + 50 * (seconds - sky.midnight.timestamp()) / (half_h * 3600), 0.0), 100.0)


def _across(sky: NightSky, start: object, end: object, half_h: float, always: bool = True) -> tuple[float, float] | None:
    """The stretch of one night in x; a night without sunset is whole where the Sun stays down, nothing where it stays up."""
    if start is None or end is None:
        return None if always or sky.sun_never_sets else (0.0, 100.0)
    return _x(sky, start.timestamp(), half_h), _x(sky, end.timestamp(), half_h)  # type: ignore[attr-defined]


def _area(rows: Sequence[tuple[float, float] | None]) -> str:
    """One closed shape for each run of nights that have the stretch."""
    path, run = "", []
    for y, row in enumerate([*rows, None]):
        if row is not None:
            run.append((y, row))
            continue
        if run:
            first, (left, _) = run[0]
            path += f"M{left:.1f} {first}{_stairs((x for _, (x, _) in run), 1)}{_stairs((x for _, (_, x) in reversed(run)), -1)}Z"
        run = []
    return path


def _stairs(xs: Iterable[float], step: int) -> str:
    """Down or up the nights, one row each; rows of the same x in one stroke."""
    return "".join(f"H{x}v{step * len(list(rows))}" for x, rows in groupby(f"{x:.1f}" for x in xs))


def _moon(skies: Sequence[NightSky], half_h: float) -> tuple[tuple[float, str], ...]:
    """Bars where the Moon was up between sunset and sunrise, gathered by how much of it was lit."""
    paths = [""] * MOON_STEPS
    for y, sky in enumerate(skies):
        step = min(int(sky.moon.illuminated * MOON_STEPS), MOON_STEPS - 1)
        for start, end in _up(sky, half_h):
            paths[step] += f"M{start:.1f} {y}H{end:.1f}V{y + 1}H{start:.1f}Z"
    return tuple((round(0.08 + 0.5 * (step + 0.5) / MOON_STEPS, 2), path) for step, path in enumerate(paths) if path)


def _up(sky: NightSky, half_h: float) -> list[tuple[float, float]]:
    """Stretches of the night in x with the Moon's centre above the horizon and the Sun below it."""
    both = (sky.curve.moon_altitude_deg > 0) & (sky.curve.sun_altitude_deg < 0)
    steps = np.flatnonzero(np.diff(np.concatenate(([False], both, [False])).astype(int)))
    times = sky.curve.times_s
    stretches = [
        (_x(sky, times[start], half_h), _x(sky, times[min(end, len(times) - 1)], half_h))
        for start, end in zip(steps[::2], steps[1::2], strict=True)
    ]
    first, last = _across(sky, sky.sunset, sky.sunrise, half_h, always=False) or (0.0, 0.0)
    inside = ((max(start, first), min(end, last)) for start, end in stretches)
    return [(start, end) for start, end in inside if end > start]


def _thread(night: NightCard, first: date, book: DiaryIndex) -> Thread:
    assert night.thread is not None
    start, end = night.thread
    filters = dict(book.by_slug[night.entry].filters)
    most = max(night.by_filter_s, key=lambda short: (night.by_filter_s[short], short))
    bands = passbands_of(filters[most]) if most in filters else ()
    y, x, width = (night.evening - first).days, round(start, 2), round(end - start, 2)
    return Thread(night.evening, night.counted_s, y, x, width, bands[0] if bands else "")
