"""How sharp the stars were, and how steady the guiding, sub by sub through the night."""

from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from statistics import median
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.charts.chart import Chart, Drawn, Localizer, Panel, Table, drawn
from sitegen.charts.house_style import (
    BROAD,
    DIM,
    INK,
    LINE,
    ROW,
    THICK,
    WIDTH,
    dots,
    figure_with_axes,
    hollow_dots,
    row_height,
    ticks,
    write,
    write_at,
)
from sitegen.charts.lettering import Lettering
from sitegen.charts.library import Axes

PLOT, TOP, LEFT = 186.0, 34.0, 60.0  # units: the plot's height and margins
AXES_WIDTH = WIDTH - LEFT - 58
MOVING = 9
GAP_H = 1.5
CHANGED = 0.1  # a tenth more or less from the night's first third to its last is worth a sentence


class QualitySub(Struct, frozen=True):
    """`start` is aware; a measurement that the log does not give is None."""

    start: datetime
    fwhm_arcsec: float | None
    guiding_rms_arcsec: float | None
    kept: bool = True


class QualityNight(Struct, frozen=True):
    """Subs in time order. `train` tells apart what was imaged at once with several trains, '' where there was one."""

    evening: date
    subs: tuple[QualitySub, ...]
    train: str = ""


class QualityValues(Struct, frozen=True):
    """Nights in order; `time_zone` the site's, an IANA name."""

    nights: tuple[QualityNight, ...]
    time_zone: str


class Measure(Struct, frozen=True):
    """One thing that a log may tell of each sub."""

    name: str
    of: Callable[[QualitySub], float | None]


MEASURES = (Measure("fwhm", lambda sub: sub.fwhm_arcsec), Measure("guiding", lambda sub: sub.guiding_rms_arcsec))


def quality_chart(nights: Sequence[QualityNight], time_zone: str, voice: Localizer, key: str) -> Drawn | None:
    """The chart of an entry's nights, None where no log tells star width or guiding. `key` starts its ids in the page."""
    return drawn(CHART, QualityValues(tuple(nights), time_zone), voice, key)


def told(values: QualityValues) -> tuple[Measure, ...]:
    """The measures that at least three subs give."""
    subs = [sub for night in values.nights for sub in night.subs]
    return tuple(measure for measure in MEASURES if sum(measure.of(sub) is not None for sub in subs) >= 3)


def offsets_of(values: QualityValues) -> list[timedelta]:
    """The site's distances from UTC over these nights; more than one where the clocks were changed between them."""
    zone = ZoneInfo(values.time_zone)
    found = [sub.start.astimezone(zone).utcoffset() or timedelta() for night in values.nights for sub in night.subs[:1]]
    return list(dict.fromkeys(found))


def hours_past_midnight(moment: datetime, evening: date, offset: timedelta) -> float:
    """On a clock that far from UTC, negative before midnight. One offset for all nights keeps the sky's hours together."""
    midnight = datetime.combine(evening + timedelta(days=1), datetime.min.time(), UTC) - offset
    return (moment - midnight).total_seconds() / 3600


def draw(values: QualityValues, voice: Localizer) -> tuple[Panel, ...]:
    return tuple(_panel(measure, values, voice) for measure in told(values))


def _panel(measure: Measure, values: QualityValues, voice: Localizer) -> Panel:
    offsets = offsets_of(values)
    bottom = 14 + ROW * (2 if len(offsets) == 1 else 1 + len(offsets))
    figure, axes = figure_with_axes(PLOT + TOP + bottom, LEFT, 58, TOP, bottom)
    points = [_points(measure, night, offsets[0]) for night in values.nights]
    _axis_range(axes, points)
    ranked = _ranked(measure, values)
    named = [ranked[0], *ranked[1:][-1:]]
    _dots(axes, points)
    for night, told_points in zip(values.nights, points, strict=True):
        _line(axes, told_points, night in named)
    _names(axes, [(points[values.nights.index(night)].kept, _name(night, voice)) for night in named])
    _clock(axes, offsets, voice)
    _widths(axes, voice)
    write_at(axes, -LEFT / AXES_WIDTH, 1.0 + 20 / PLOT, voice.say(f"quality.{measure.name}"), INK)
    return Panel(figure, voice.say("quality.desc"), voice.say(f"quality.{measure.name}"), halo=True)


def night_median(measure: Measure, night: QualityNight) -> float | None:
    """Over the kept subs that tell it."""
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    return median(told_values) if told_values else None


def _ranked(measure: Measure, values: QualityValues) -> list[QualityNight]:
    """Nights with a median, the sharpest first."""
    found = [(value, night) for night in values.nights if (value := night_median(measure, night)) is not None]
    return [night for _, night in sorted(found, key=lambda item: item[0])]


class _Points(Struct, frozen=True):
    """(hours past midnight, arcseconds) of a night's subs that tell the measure."""

    kept: list[tuple[float, float]]
    thrown: list[tuple[float, float]]


def _points(measure: Measure, night: QualityNight, offset: timedelta) -> _Points:
    found: dict[bool, list[tuple[float, float]]] = {True: [], False: []}
    for sub in night.subs:
        value = measure.of(sub)
        if value is not None:
            found[sub.kept].append((hours_past_midnight(sub.start, night.evening, offset), value))
    return _Points(found[True], found[False])


def _axis_range(axes: Axes, nights: Sequence[_Points]) -> None:
    """All hours; the widths of the kept subs, so that what was thrown away does not flatten them."""
    xs = [x for night in nights for x, _ in (*night.kept, *night.thrown)]
    ys = [y for night in nights for _, y in night.kept]
    spread = max(max(ys) - min(ys), 0.2 * max(ys), 0.1)
    axes.set_xlim(min(xs) - 0.15, max(xs) + 0.15)
    axes.set_ylim(max(0.0, min(ys) - 0.2 * spread), max(ys) + 0.3 * spread)


def _dots(axes: Axes, nights: Sequence[_Points]) -> None:
    """Subs as dots, hollow where thrown away (at the upper edge where they would lie beyond it): one path a kind."""
    top = axes.get_ylim()[1]
    thrown = [point for night in nights for point in night.thrown]
    dots(axes, *_columns([point for night in nights for point in night.kept]), 4.5, BROAD, alpha=0.8)
    hollow_dots(axes, *_columns([point for point in thrown if point[1] <= top]), 6.0, BROAD)
    if beyond := [x for x, y in thrown if y > top]:
        axes.plot(beyond, [top] * len(beyond), "^", color="none", markeredgecolor=BROAD, markersize=6, clip_on=False)


def _line(axes: Axes, points: _Points, named: bool) -> None:
    """The moving median of a night's kept subs."""
    for run in _runs(points.kept):
        medians = moving_median([y for _, y in run])
        axes.plot([x for x, _ in run], medians, color=INK if named else DIM, linewidth=THICK if named else LINE)


def _names(axes: Axes, lines: list[tuple[list[tuple[float, float]], str]]) -> None:
    """Each line's name at its end, where there is room for it."""
    lettering = Lettering((0.0, 0.0, WIDTH, 1000.0))
    for kept, name in lines:
        last = _runs(kept)[-1]
        x, y = axes.transData.transform((last[-1][0], moving_median([value for _, value in last])[-1]))
        places = [(x + 5, y + shift, "left") for shift in (0, 10, -10, 17, -17, 26, -26)]
        places += [(x, y + shift, "right") for shift in (13, -13, 26, -26, 39, -39)]
        found = lettering.first_free(places, name)
        if found:
            place = axes.transData.inverted().transform(found[:2])
            write(axes, place[0], place[1], name, INK, ha=found[2], clip_on=False)


def _name(night: QualityNight, voice: Localizer) -> str:
    return ", ".join(part for part in (voice.numbers.short_day(night.evening), night.train) if part)


def _columns(points: list[tuple[float, float]]) -> tuple[list[float], list[float]]:
    return [x for x, _ in points], [y for _, y in points]


def _runs(points: list[tuple[float, float]]) -> list[list[tuple[float, float]]]:
    """Stretches without a gap of more than an hour and a half."""
    breaks = [place for place in range(1, len(points)) if points[place][0] - points[place - 1][0] > GAP_H]
    edges = [0, *breaks, len(points)]
    return [points[start:end] for start, end in pairwise(edges) if end > start]


def moving_median(values: Sequence[float]) -> list[float]:
    """Median of nine around each, fewer at the ends."""
    half = MOVING // 2
    return [median(values[max(0, place - half) : place + half + 1]) for place in range(len(values))]


def _clock(axes: Axes, offsets: list[timedelta], voice: Localizer) -> None:
    """The site's hours, a row for each offset its clocks had, and UTC under them."""
    low, high = axes.get_xlim()
    hours = [hour for hour in range(-14, 15, 1 if high - low < 5 else 2) if low <= hour <= high]
    rows = [*offsets, timedelta()] if offsets != [timedelta()] else offsets
    ticks(axes, "x", hours, lambda hour: "\n".join(_clock_words(round(hour), offset - offsets[0]) for offset in rows))
    names = [voice.say("quality.local") if len(offsets) == 1 else _offset_words(offset) for offset in offsets]
    for row, name in enumerate([*names, "UTC"][-len(rows) :]):
        write_at(axes, -LEFT / AXES_WIDTH, row_height(axes, row), name, DIM)


def _clock_words(hour: int, later: timedelta) -> str:
    moment = datetime(2000, 1, 2, tzinfo=UTC) + timedelta(hours=hour) + later
    return f"{moment:%H}" if moment.minute == 0 else f"{moment:%H:%M}"


def _offset_words(offset: timedelta) -> str:
    """'+10:30', as a zone's clock is named by its distance from UTC."""
    minutes = round(offset.total_seconds() / 60)
    return f"{'−' if minutes < 0 else '+'}{abs(minutes) // 60}:{abs(minutes) % 60:02d}"


def _widths(axes: Axes, voice: Localizer) -> None:
    low, high = axes.get_ylim()
    step = next(step for step in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 1e9) if (high - low) / step <= 5)
    places = [step * number for number in range(int(high / step) + 1) if step * number >= low + 0.06 * (high - low)]
    ticks(axes, "y", places, lambda value: f"{voice.numbers.number(value, 1)}″")


def title(values: QualityValues, voice: Localizer) -> str:
    measure = told(values)[0]
    ranked = _ranked(measure, values)
    if len(ranked) > 1:
        best, worst = ranked[0], ranked[-1]
        sharp, soft = (_name(night, voice) for night in (best, worst))
        least, most = (_width(measure, night, voice) for night in (best, worst))
        return voice.say(f"quality.{measure.name}_nights", best=sharp, least=least, worst=soft, most=most)
    return _one_night(measure, ranked[0], voice)


def _width(measure: Measure, night: QualityNight, voice: Localizer) -> str:
    return voice.numbers.quantity(night_median(measure, night), "″")


def _one_night(measure: Measure, night: QualityNight, voice: Localizer) -> str:
    """Whether it grew, shrank or stayed, from the first third of the night to the last."""
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    third = max(1, len(told_values) // 3)
    first, last = median(told_values[:third]), median(told_values[-third:])
    change = "grew" if last > first * (1 + CHANGED) else "shrank" if last < first * (1 - CHANGED) else "stayed"
    told_as = {"first": first, "last": last, "middle": median(told_values)}
    widths = {name: voice.numbers.quantity(value, "″") for name, value in told_as.items()}
    return voice.say(f"quality.{measure.name}_{change}", day=voice.numbers.day(night.evening), **widths)


def table(values: QualityValues, voice: Localizer) -> Table:
    """One row a sub would be long: one row a night and measure, its median and range over the kept subs."""
    heads = tuple(voice.say(f"quality.{name}") for name in ("evening", "measure", "subs", "median", "least", "most"))
    measured = [(measure, night) for night in values.nights for measure in told(values)]
    rows = [_row(*one, voice) for one in measured if night_median(*one) is not None]
    return Table(heads, tuple(rows))


def _row(measure: Measure, night: QualityNight, voice: Localizer) -> tuple[str, ...]:
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    numbers = [voice.numbers.quantity(value, "″") for value in (median(told_values), min(told_values), max(told_values))]
    when = ", ".join(part for part in (voice.numbers.day(night.evening), night.train) if part)
    return (when, voice.say(f"quality.{measure.name}"), str(len(told_values)), *numbers)


def _example_night(evening: date, worse: float) -> QualityNight:
    start = datetime(evening.year, evening.month, evening.day, 10, tzinfo=UTC)
    subs = []
    for step in range(70):
        fwhm_arcsec = 2.2 + worse + 0.01 * step + 0.1 * (step * 7 % 5)
        subs.append(QualitySub(start + timedelta(minutes=6 * step), fwhm_arcsec, 0.5 + 0.04 * (step * 3 % 7), step % 9 > 0))
    return QualityNight(evening, tuple(subs))


EXAMPLE = QualityValues((_example_night(date(2026, 10, 12), 0.0), _example_night(date(2026, 10, 18), 0.6)), "Australia/Adelaide")

CHART: Chart[QualityValues] = Chart(
    name="sub_quality",
    question="Did the stars stay sharp through the night?",
    enough=lambda values: any(_ranked(measure, values) for measure in told(values)[:1]),
    draw=draw,
    title=title,
    table=table,
    example=EXAMPLE,
)
