"""One measure of the subs over the hours of the night: a dot a sub, a line a night."""

from bisect import bisect_left, insort
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from sitegen.charts.chart import Localizer, Panel
from sitegen.charts.house_style import BROAD, DIM, INK, LINE, ROW, THICK, WIDTH
from sitegen.charts.lettering import Lettering
from sitegen.charts.plot import Anchor, Dots, Line, Plot, Triangles, plot
from sitegen.charts.quality_values import Measure, QualityNight, QualityValues, hours_past_midnight, offsets_of, ranked
from sitegen.charts.round_steps import round_steps
from sitegen.charts.svg_writer import Point
from sitegen.charts.thinning import MOST_A_NIGHT, MOST_A_PANEL, Marks, apart, shortened, thinned, together

PLOT, TOP, LEFT, RIGHT = 186.0, 34.0, 60.0, 58.0  # units: the plot's height and margins
DOT, RING = 4.5, 6.0
MOVING = 9
GAP_H = 1.5
SIDES: dict[str, Anchor] = {"left": "start", "right": "end"}


class NightPoints(Struct, frozen=True):
    """(hours past midnight, arcseconds) of a night's subs that tell the measure, and the kept ones' moving median: a run for
    each stretch without a long pause."""

    kept: list[Point]
    discarded: list[Point]
    runs: list[list[Point]]


def quality_panel(measure: Measure, values: QualityValues, voice: Localizer) -> Panel:
    """The sharpest night and the softest are named."""
    offsets = offsets_of(values)
    nights = [night_points(measure, night, offsets[0]) for night in values.nights]
    bottom = 14 + ROW * (2 if len(offsets) == 1 else 1 + len(offsets))
    drawing = plot(PLOT + TOP + bottom, LEFT, RIGHT, TOP, bottom, *_ranges(nights))
    by_width = ranked(measure, values)
    named = [values.nights.index(night) for night in (by_width[0], *by_width[1:][-1:])]
    _dots(drawing, nights)
    for place, night in enumerate(nights):
        _lines(drawing, night, place in named, MOST_A_PANEL // len(nights))
    _names(drawing, [(nights[place].runs[-1][-1], night_name(values.nights[place], voice)) for place in named])
    _clock(drawing, offsets, voice)
    _widths(drawing, voice)
    drawing.write((0.0, TOP - 20), voice.say(f"quality.{measure.name}"))
    return Panel(drawing, voice.say("quality.desc"), voice.say(f"quality.{measure.name}"), halo=True)


def night_points(measure: Measure, night: QualityNight, offset: timedelta) -> NightPoints:
    by_state: dict[bool, list[Point]] = {True: [], False: []}
    for sub in night.subs:
        value = measure.of(sub)
        if value is not None:
            by_state[sub.kept].append((hours_past_midnight(sub.start, night.evening, offset), value))
    runs = [_moving(run) for run in _runs(by_state[True])]
    return NightPoints(by_state[True], by_state[False], runs)


def _runs(points: list[Point]) -> list[list[Point]]:
    """Stretches without a gap of more than an hour and a half."""
    breaks = [place for place in range(1, len(points)) if points[place][0] - points[place - 1][0] > GAP_H]
    edges = [0, *breaks, len(points)]
    return [points[start:end] for start, end in pairwise(edges) if end > start]


def _moving(run: list[Point]) -> list[Point]:
    return [(x, middle) for (x, _), middle in zip(run, moving_median([y for _, y in run]), strict=True)]


def moving_median(values: Sequence[float]) -> list[float]:
    """Median of nine around each, fewer at the ends."""
    half = MOVING // 2
    window = sorted(values[:half])
    medians = []
    for place in range(len(values)):
        if place + half < len(values):
            insort(window, values[place + half])
        if place > half:
            del window[bisect_left(window, values[place - half - 1])]
        middle = len(window) // 2
        medians.append(window[middle] if len(window) % 2 else (window[middle - 1] + window[middle]) / 2)
    return medians


def _ranges(nights: Sequence[NightPoints]) -> tuple[Point, Point]:
    """All hours; the widths of the kept subs, so that what was discarded does not flatten them."""
    xs = [x for night in nights for x, _ in (*night.kept, *night.discarded)]
    ys = [y for night in nights for _, y in night.kept]
    spread = max(max(ys) - min(ys), 0.2 * max(ys), 0.1)
    return (min(xs) - 0.15, max(xs) + 0.15), (max(0.0, min(ys) - 0.2 * spread), max(ys) + 0.3 * spread)


def _dots(drawing: Plot, nights: Sequence[NightPoints]) -> None:
    """Subs as dots, hollow where discarded, triangles at the edge beyond which those would lie."""
    low, top = drawing.y.low, drawing.y.high
    marks = shown_marks(drawing, nights)
    drawing.add(Dots(marks.kept, DOT, BROAD, opacity=0.8))
    drawing.add(Dots(tuple(point for point in marks.discarded if low < point[1] < top), RING, BROAD, hollow=True))
    for edge in (low, top):
        if beyond := tuple(point for point in marks.discarded if point[1] == edge):
            drawing.add(Triangles(beyond, BROAD, downward=edge == low))


def shown_marks(drawing: Plot, nights: Sequence[NightPoints]) -> Marks:
    """By the rule of `thinning`: no more than 400 a night and 1,200 in the panel."""

    def units(point: Point) -> Point:
        return drawing.x.place(point[0]), drawing.y.place(point[1])

    by_night = [thinned(_marks(drawing, night), units, MOST_A_NIGHT) for night in nights]
    return thinned(together(by_night), units, MOST_A_PANEL)


def _marks(drawing: Plot, night: NightPoints) -> Marks:
    """What was discarded, at the edge of the plot where it lies beyond."""
    low, top = drawing.y.low, drawing.y.high
    kept = apart(night.kept, [middle for run in night.runs for _, middle in run])
    return Marks(kept.plain, kept.outliers, [(x, min(max(y, low), top)) for x, y in night.discarded])


def _lines(drawing: Plot, night: NightPoints, named: bool, most: int) -> None:
    """The moving median of a night's kept subs; `most` points for all of its runs."""
    subs = len(night.kept)
    for run in night.runs:
        share = max(2, min(MOST_A_NIGHT, most) * len(run) // subs)
        drawing.add(Line(tuple(shortened(run, share)), INK if named else DIM, THICK if named else LINE))


def _names(drawing: Plot, lines: list[tuple[Point, str]]) -> None:
    """Each line's name at its end, where there is room for it."""
    lettering = Lettering((0.0, 0.0, WIDTH, drawing.height))
    for end, name in lines:
        x, y = drawing.x.place(end[0]), drawing.y.place(end[1])
        places = [(x + 5, y + shift, "left") for shift in (0, -10, 10, -17, 17, -26, 26)]
        places += [(x, y + shift, "right") for shift in (-13, 13, -26, 26, -39, 39)]
        if place := lettering.first_free(places, name):
            drawing.write(place[:2], name, INK, SIDES[place[2]])


def night_name(night: QualityNight, voice: Localizer) -> str:
    return ", ".join(part for part in (voice.numbers.short_day(night.evening), night.train) if part)


def _clock(drawing: Plot, offsets: list[timedelta], voice: Localizer) -> None:
    """The site's hours, a row for each offset its clocks had, and UTC under them."""
    low, high = drawing.x.low, drawing.x.high
    hours = [hour for hour in range(-14, 15, 1 if high - low < 5 else 2) if low <= hour <= high]
    rows = [*offsets, timedelta()] if offsets != [timedelta()] else offsets
    drawing.label_x(hours, lambda hour: "\n".join(_clock_words(round(hour), offset - offsets[0]) for offset in rows))
    names = [voice.say("quality.local") if len(offsets) == 1 else _offset_words(offset) for offset in offsets]
    for row, name in enumerate([*names, "UTC"][-len(rows) :]):
        drawing.write((0.0, drawing.row(row)), name, DIM)


def _clock_words(hour: int, later: timedelta) -> str:
    moment = datetime(2000, 1, 2, tzinfo=UTC) + timedelta(hours=hour) + later
    return f"{moment:%H}" if moment.minute == 0 else f"{moment:%H:%M}"


def _offset_words(offset: timedelta) -> str:
    """'+10:30', as a zone's clock is named by its distance from UTC."""
    minutes = round(offset.total_seconds() / 60)
    return f"{'−' if minutes < 0 else '+'}{abs(minutes) // 60}:{abs(minutes) % 60:02d}"


def _widths(drawing: Plot, voice: Localizer) -> None:
    """None so near the foot that it would run into the hours."""
    low, high = drawing.y.low, drawing.y.high
    places = round_steps(low, high, 5, above=low + 0.06 * (high - low))
    drawing.label_y(places, lambda value: f"{voice.numbers.number(value, 1)}″")
