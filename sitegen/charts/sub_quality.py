"""How sharp the stars were, and how steady the guiding, sub by sub through the night."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from statistics import median
from zoneinfo import ZoneInfo

from matplotlib.axes import Axes

from sitegen.charts.chart import Chart, Drawn, Panel, Table, Voice, drawn
from sitegen.charts.house_style import BROAD, DIM, INK, LINE, THICK, dots, figure_with_axes, hollow_dots, ticks, write, write_at

PLOT = 186.0  # height of the plot in units
MOVING = 9
GAP_H = 1.5
MOST_NAMED = 4
CHANGED = 0.1  # a tenth more or less from the night's first third to its last is worth a sentence


@dataclass(frozen=True, slots=True)
class QualitySub:
    """`start` is aware; a measurement that the log does not give is None."""

    start: datetime
    fwhm_arcsec: float | None
    guiding_rms_arcsec: float | None
    kept: bool = True


@dataclass(frozen=True, slots=True)
class QualityNight:
    """Subs in time order."""

    evening: date
    subs: tuple[QualitySub, ...]


@dataclass(frozen=True, slots=True)
class QualityValues:
    """Nights in order; `time_zone` the site's, an IANA name."""

    nights: tuple[QualityNight, ...]
    time_zone: str


@dataclass(frozen=True, slots=True)
class Measure:
    """One thing that a log may tell of each sub."""

    name: str
    of: Callable[[QualitySub], float | None]


MEASURES = (Measure("fwhm", lambda sub: sub.fwhm_arcsec), Measure("guiding", lambda sub: sub.guiding_rms_arcsec))


def quality_chart(nights: Sequence[QualityNight], time_zone: str, voice: Voice, key: str) -> Drawn | None:
    """The chart of an entry's nights, None where no log tells star width or guiding. `key` starts its ids in the page."""
    return drawn(CHART, QualityValues(tuple(nights), time_zone), voice, key)


def told(values: QualityValues) -> tuple[Measure, ...]:
    """The measures that at least three subs give."""
    subs = [sub for night in values.nights for sub in night.subs]
    return tuple(measure for measure in MEASURES if sum(measure.of(sub) is not None for sub in subs) >= 3)


def hours_past_midnight(moment: datetime, evening: date, zone: ZoneInfo) -> float:
    """On the site's clock, negative before midnight."""
    local = moment.astimezone(zone).replace(tzinfo=None)
    midnight = datetime.combine(evening + timedelta(days=1), datetime.min.time())
    return (local - midnight).total_seconds() / 3600


def draw(values: QualityValues, voice: Voice) -> tuple[Panel, ...]:
    return tuple(_panel(measure, values, voice) for measure in told(values))


def _panel(measure: Measure, values: QualityValues, voice: Voice) -> Panel:
    figure, axes = figure_with_axes(PLOT + 84, 46, 58, 34, 50)
    zone = ZoneInfo(values.time_zone)
    _axis_range(axes, measure, values, zone)
    ranked = _ranked(measure, values)
    named = ranked if len(ranked) <= MOST_NAMED else [ranked[0], ranked[-1]]
    for night in values.nights:
        _night(axes, measure, night, zone, night in named)
    _names(axes, [_line_end(measure, night, zone, voice) for night in named])
    _clock(axes, values, zone, voice)
    write_at(axes, -0.13, 1.0 + 20 / PLOT, voice.say(f"quality.{measure.name}"), INK)
    return Panel(figure, voice.say("quality.desc"), voice.say(f"quality.{measure.name}"))


def night_median(measure: Measure, night: QualityNight) -> float | None:
    """Over the kept subs that tell it."""
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    return median(told_values) if told_values else None


def _ranked(measure: Measure, values: QualityValues) -> list[QualityNight]:
    """Nights with a median, the sharpest first."""
    found = [(value, night.evening, night) for night in values.nights if (value := night_median(measure, night)) is not None]
    return [night for _, _, night in sorted(found, key=lambda item: item[:2])]


def _points(measure: Measure, night: QualityNight, zone: ZoneInfo, kept: bool) -> list[tuple[float, float]]:
    return [
        (hours_past_midnight(sub.start, night.evening, zone), value)
        for sub in night.subs
        if sub.kept is kept and (value := measure.of(sub)) is not None
    ]


def _axis_range(axes: Axes, measure: Measure, values: QualityValues, zone: ZoneInfo) -> None:
    points = [p for night in values.nights for kept in (True, False) for p in _points(measure, night, zone, kept)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    spread = max(max(ys) - min(ys), 0.2 * max(ys), 0.1)
    axes.set_xlim(min(xs) - 0.3, max(xs) + 0.3)
    axes.set_ylim(max(0.0, min(ys) - 0.15 * spread), max(ys) + 0.1 * spread)


def _night(axes: Axes, measure: Measure, night: QualityNight, zone: ZoneInfo, named: bool) -> None:
    """Dots for its subs, hollow where thrown away; the moving median of the kept ones as a line with the night's date."""
    kept, thrown = (_points(measure, night, zone, state) for state in (True, False))
    dots(axes, *_columns(kept), 4.5, BROAD, alpha=0.8)
    hollow_dots(axes, *_columns(thrown), 6.0, BROAD)
    for run in _runs(kept):
        smooth = moving_median([y for _, y in run])
        axes.plot([x for x, _ in run], smooth, color=INK if named else DIM, linewidth=THICK if named else LINE)


def _line_end(measure: Measure, night: QualityNight, zone: ZoneInfo, voice: Voice) -> tuple[float, float, str]:
    """Where the night's line ends, and its name."""
    last = _runs(_points(measure, night, zone, kept=True))[-1]
    return last[-1][0], moving_median([y for _, y in last])[-1], voice.numbers.short_day(night.evening)


def _names(axes: Axes, ends: list[tuple[float, float, str]]) -> None:
    """Names at the lines' ends, pushed apart where lines end together."""
    low, high = axes.get_ylim()
    apart, reached = (high - low) * 15 / PLOT, -float("inf")
    for x, y, name in sorted(ends, key=lambda end: end[1]):
        reached = max(y, reached + apart)
        write(axes, x + 0.12, reached, name, INK, ha="left", clip_on=False)


def _columns(points: list[tuple[float, float]]) -> tuple[list[float], list[float]]:
    return [x for x, _ in points], [y for _, y in points]


def _runs(points: list[tuple[float, float]]) -> list[list[tuple[float, float]]]:
    """Stretches without a gap of more than an hour and a half."""
    runs: list[list[tuple[float, float]]] = []
    for point in points:
        if runs and point[0] - runs[-1][-1][0] <= GAP_H:
            runs[-1].append(point)
        else:
            runs.append([point])
    return runs


def moving_median(values: Sequence[float]) -> list[float]:
    """Median of nine around each, fewer at the ends."""
    half = MOVING // 2
    return [median(values[max(0, place - half) : place + half + 1]) for place in range(len(values))]


def _clock(axes: Axes, values: QualityValues, zone: ZoneInfo, voice: Voice) -> None:
    """The site's hours, and UTC under them where all nights have one offset from it."""
    low, high = axes.get_xlim()
    step = 1 if high - low < 5 else 2
    hours = [hour for hour in range(-14, 15, step) if low <= hour <= high]
    offsets = {night.subs[0].start.astimezone(zone).utcoffset() for night in values.nights if night.subs}
    offset = next(iter(offsets)) if len(offsets) == 1 else None
    ticks(axes, "x", hours, lambda hour: _hour_words(round(hour), offset), grid=True)
    write_at(axes, -0.155, -15 / PLOT, voice.say("quality.local"), DIM)
    if offset is not None:
        write_at(axes, -0.155, -33 / PLOT, "UTC", DIM)
    low_y, high_y = axes.get_ylim()
    places = [tick for tick in _steps(low_y, high_y) if low_y <= tick <= high_y]
    ticks(axes, "y", places, lambda value: f"{voice.numbers.number(value, 1)}″")


def _steps(low: float, high: float) -> list[float]:
    step = next(step for step in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 1e9) if (high - low) / step <= 5)
    return [step * number for number in range(int(high / step) + 1)]


def _hour_words(hour: int, offset: timedelta | None) -> str:
    local = f"{hour % 24:02d}"
    if offset is None:
        return local
    utc = datetime(2000, 1, 2, tzinfo=UTC) + timedelta(hours=hour) - offset
    return f"{local}\n{utc:%H}" if utc.minute == 0 else f"{local}\n{utc:%H:%M}"


def title(values: QualityValues, voice: Voice) -> str:
    measure = told(values)[0]
    ranked = _ranked(measure, values)
    if len(ranked) > 1:
        best, worst = ranked[0], ranked[-1]
        sharp, soft = (voice.numbers.short_day(night.evening) for night in (best, worst))
        least, most = (_width(measure, night, voice) for night in (best, worst))
        return voice.say(f"quality.{measure.name}_nights", best=sharp, least=least, worst=soft, most=most)
    return _one_night(measure, ranked[0], voice)


def _width(measure: Measure, night: QualityNight, voice: Voice) -> str:
    return voice.numbers.quantity(night_median(measure, night), "″")


def _one_night(measure: Measure, night: QualityNight, voice: Voice) -> str:
    """Whether it grew, shrank or stayed, from the first third of the night to the last."""
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    third = max(1, len(told_values) // 3)
    first, last = median(told_values[:third]), median(told_values[-third:])
    change = "grew" if last > first * (1 + CHANGED) else "shrank" if last < first * (1 - CHANGED) else "stayed"
    numbers = voice.numbers
    return voice.say(f"quality.{measure.name}_{change}", day=numbers.day(night.evening), first=numbers.quantity(first, "″"),
                     last=numbers.quantity(last, "″"), middle=numbers.quantity(median(told_values), "″"))  # fmt: skip


def table(values: QualityValues, voice: Voice) -> Table:
    """One row a sub would be long: one row a night and measure, its median and range over the kept subs."""
    heads = tuple(voice.say(f"quality.{name}") for name in ("evening", "measure", "subs", "median", "least", "most"))
    measured = [(measure, night) for night in values.nights for measure in told(values)]
    rows = [_row(*one, voice) for one in measured if night_median(*one) is not None]
    return Table(heads, tuple(rows))


def _row(measure: Measure, night: QualityNight, voice: Voice) -> tuple[str, ...]:
    told_values = [value for sub in night.subs if sub.kept and (value := measure.of(sub)) is not None]
    numbers = [voice.numbers.quantity(value, "″") for value in (median(told_values), min(told_values), max(told_values))]
    return (voice.numbers.day(night.evening), voice.say(f"quality.{measure.name}"), str(len(told_values)), *numbers)


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
