"""The geometry of a night ribbon: where dusk, Moon, target and subs lie. The theme draws it.

Coordinates are percents, so that the theme may use them as they are: x from 0 at the left edge to 100 at the right, y from 0
(zenith) to 100 (horizon).
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.facts.views import NightView
from sitegen.pages.lanes import Lane, lanes_of

WIDTH, HEIGHT = 100.0, 100.0
DUSK_DEGREES = (5.0, 0.0, -6.0, -12.0, -18.0)


class Stop(Struct, frozen=True):
    """`depth` 0 (day), 1 (the Sun on the horizon) to 4 (dark) at `share` (0..1) of the width."""

    share: float
    depth: int


class Ribbon(Struct, frozen=True):
    """What the theme needs to draw one night; `moon` and `target` are SVG path data, '' where there is nothing."""

    key: str
    ground: tuple[Stop, ...]
    moon: str
    moon_strength: float
    target: str
    target_label: tuple[float, float] | None
    transit_x: float | None
    hours: tuple[tuple[float, str, str], ...]
    lanes: tuple[Lane, ...]
    midnight_x: float


class Span(Struct, frozen=True):
    """The stretch of time that the width stands for."""

    start: datetime
    end: datetime

    def x(self, moment: datetime) -> float:
        return WIDTH * ((moment - self.start) / (self.end - self.start))

    def x_of_s(self, unix_s: float) -> float:
        length_s = (self.end - self.start).total_seconds()
        return WIDTH * (unix_s - self.start.timestamp()) / length_s


def night_span(night: NightView) -> Span | None:
    """Sunset to sunrise, a quarter of an hour more on both sides; the subs' own extent where the site is hidden; in
    a night without sunset or sunrise eight hours around midnight, stretched to hold every sub."""
    starts = [light.sub.start for light in night.lights]
    ends = [light.sub.end for light in night.lights]
    if night.sky is not None:
        margin, half = timedelta(minutes=15), timedelta(hours=8)
        starts.append(night.sky.sunset - margin if night.sky.sunset else night.sky.midnight - half)
        ends.append(night.sky.sunrise + margin if night.sky.sunrise else night.sky.midnight + half)
    return Span(min(starts), max(ends)) if starts else None


def clock_span(night: NightView, half_hours: float) -> Span | None:
    """The clock that every stacked ribbon of a diary shares: so many hours before and after local mean solar midnight."""
    if night.sky is None:
        return night_span(night)
    half = timedelta(hours=half_hours)
    return Span(night.sky.midnight - half, night.sky.midnight + half)


def half_night_s(nights: Iterable[NightView]) -> float:
    """The longest stretch from midnight to sunset or sunrise, 0 where neither is known."""
    return max(
        (abs((edge - night.sky.midnight).total_seconds()) for night in nights if night.sky
         for edge in (night.sky.sunset, night.sky.sunrise) if edge),
        default=0.0,
    )  # fmt: skip


def ribbon_of(night: NightView, span: Span, bands: Mapping[str, tuple[str, ...]], key: str, named: bool = True) -> Ribbon:
    """`bands` gives each filter's passbands; lanes stand in its order. `key` keeps SVG ids apart within a page. `named`: its
    blocks know their subs."""
    curve = night.sky.curve if night.sky else None
    target = night.target_sky
    times_s = curve.times_s.tolist() if curve else []
    rising = target.altitude_deg.tolist() if target else []
    transit = target.transit if target else None
    return Ribbon(
        key=key,
        ground=_ground(times_s, curve.sun_altitude_deg.tolist(), span) if curve else (Stop(0.0, 4),),
        moon=_area(times_s, curve.moon_altitude_deg.tolist(), span) if curve else "",
        moon_strength=round(0.12 + 0.6 * night.sky.moon.illuminated, 3) if night.sky else 0.0,
        target=_line(times_s, rising, span) if rising else "",
        target_label=_label_place(times_s, rising, span) if rising else None,
        transit_x=_inside(span.x(transit)) if transit else None,
        hours=_hours(span, ZoneInfo(night.site.time_zone)),
        lanes=lanes_of(night.lights, span.x, bands, named),
        midnight_x=round(span.x(night.sky.midnight), 2) if night.sky else WIDTH / 2,
    )


def _label_place(times_s: Sequence[float], altitude_deg: Sequence[float], span: Span) -> tuple[float, float] | None:
    """Where the target's name stands, clear of its line: right of a falling line and above it, else below a rising one."""
    runs = _points(times_s, altitude_deg, span)
    if not runs:
        return None
    run = max(runs, key=lambda points: points[-1][0] - points[0][0])
    peak_x = min(run, key=lambda point: point[1])[0]
    falling = run[-1][0] - peak_x > 30
    wanted = peak_x + 0.45 * (run[-1][0] - peak_x) if falling else run[0][0] + 0.3 * (peak_x - run[0][0])
    x, y = min(run, key=lambda point: abs(point[0] - wanted))
    place_x, place_y = (x + 1.5, y - 2.0) if falling else (x + 1.5, y + 10.0)
    return round(min(max(place_x, 4.0), 86.0), 2), round(min(max(place_y, 10.0), 88.0), 1)


def _inside(x: float) -> float | None:
    return round(x, 2) if 0 <= x <= WIDTH else None


def _ground(times_s: Sequence[float], sun_deg: Sequence[float], span: Span) -> tuple[Stop, ...]:
    """The Sun's depth as gradient stops: one wherever it crosses 5, 0, −6, −12, −18 degrees, and the two edges."""
    samples = list(zip(times_s, sun_deg, strict=True))
    stops = [Stop(0.0, _depth(_at(samples, span.start.timestamp())))]
    for (before_s, before), (after_s, after) in pairwise(samples):
        for depth, limit in enumerate(DUSK_DEGREES):
            if (before - limit) * (after - limit) < 0:
                moment_s = before_s + (after_s - before_s) * (limit - before) / (after - before)
                share = span.x_of_s(moment_s) / WIDTH
                if 0.0 < share < 1.0:
                    stops.append(Stop(round(share, 4), depth))
    stops.append(Stop(1.0, _depth(_at(samples, span.end.timestamp()))))
    return tuple(stops)


def _depth(sun_deg: float) -> int:
    return sum(sun_deg <= limit for limit in DUSK_DEGREES[1:])


def _at(samples: Sequence[tuple[float, float]], unix_s: float) -> float:
    """Linear between samples; the end values beyond them."""
    for (before_s, before), (after_s, after) in pairwise(samples):
        if before_s <= unix_s <= after_s:
            return before + (after - before) * (unix_s - before_s) / (after_s - before_s)
    return samples[0][1] if unix_s < samples[0][0] else samples[-1][1]


def _points(times_s: Sequence[float], altitude_deg: Sequence[float], span: Span) -> list[list[tuple[float, float]]]:
    """Stretches of (x, y) above the horizon and inside the span, clipped where they cross either."""
    start_s, end_s = span.start.timestamp(), span.end.timestamp()
    samples = [(float(time), float(altitude)) for time, altitude in zip(times_s, altitude_deg, strict=True)]
    inner = [(start_s, _at(samples, start_s)), *(s for s in samples if start_s < s[0] < end_s), (end_s, _at(samples, end_s))]
    runs: list[list[tuple[float, float]]] = [[]]
    for (before_s, before), (after_s, after) in pairwise(inner):
        if before >= 0 and not runs[-1]:
            runs[-1].append(_xy(before_s, before, span))
        if (before < 0) != (after < 0):
            runs[-1].append(_xy(before_s + (after_s - before_s) * before / (before - after), 0.0, span))
            if after < 0:
                runs.append([])
        if after >= 0:
            runs[-1].append(_xy(after_s, after, span))
    return [run for run in runs if len(run) > 1]


def _xy(unix_s: float, altitude_deg: float, span: Span) -> tuple[float, float]:
    return span.x_of_s(unix_s), HEIGHT * (1 - altitude_deg / 90)


def _line(times_s: Sequence[float], altitude_deg: Sequence[float], span: Span) -> str:
    return "".join(_path(_thinned(run)) for run in _points(times_s, altitude_deg, span))


def _area(times_s: Sequence[float], altitude_deg: Sequence[float], span: Span) -> str:
    """The same curve closed along the horizon."""
    return "".join(f"{_path(_thinned(run))}V{HEIGHT:.0f}H{run[0][0]:.2f}Z" for run in _points(times_s, altitude_deg, span))


def _path(points: Sequence[tuple[float, float]]) -> str:
    first, *rest = (f"{x:.2f} {y:.1f}" for x, y in points)
    return f"M{first}L{' '.join(rest)}"


def _thinned(points: list[tuple[float, float]], tolerance: float = 0.35) -> list[tuple[float, float]]:
    """Douglas–Peucker: fewer points, nowhere further from the curve than a third of a unit."""
    if len(points) < 3:
        return points
    (x0, y0), (x1, y1) = points[0], points[-1]
    slope = (y1 - y0) / (x1 - x0) if x1 > x0 else 0.0
    gaps = [abs(y - (y0 + slope * (x - x0))) for x, y in points]
    widest = max(range(len(points)), key=gaps.__getitem__)
    if gaps[widest] <= tolerance:
        return [points[0], points[-1]]
    return _thinned(points[: widest + 1])[:-1] + _thinned(points[widest:])


def _hours(span: Span, zone: ZoneInfo) -> tuple[tuple[float, str, str], ...]:
    """The site's whole hours inside the span: x, the hour by the site's clock, the hour in UTC."""
    local = span.start.astimezone(zone)
    past_hour = timedelta(minutes=local.minute, seconds=local.second, microseconds=local.microsecond)
    moment, hours = span.start - past_hour + timedelta(hours=1), []
    while moment < span.end:
        hours.append((round(span.x(moment), 2), moment.astimezone(zone).strftime("%H"), _utc_hour(moment)))
        moment += timedelta(hours=1)
    return tuple(hours)


def _utc_hour(moment: datetime) -> str:
    """With minutes where the zone is off by a part of an hour."""
    utc = moment.astimezone(UTC)
    return utc.strftime("%H" if utc.minute == 0 else "%H:%M")
