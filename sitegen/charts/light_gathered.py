"""How much light each filter gathered, and how much is still wanted."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.house_style import DIM, INK, LINE, WIDTH, figure_with_axes, hour_text, nice_ticks, passband, ticks, write
from sitegen.charts.lettering import width_of
from sitegen.charts.library import Axes

ROW, BAR = 27.0, 0.58
PLOT = 344.0  # units for the bars and the words behind them


class FilterLight(Struct, frozen=True):
    """One filter: `bands` its passbands in whole nm, none for no hue; `missing_s` what open wishes still lack."""

    short: str
    name: str
    bands: tuple[int, ...]
    gathered_s: float
    missing_s: float = 0.0


Lights = Sequence[FilterLight]


def draw(lights: Lights, voice: Localizer) -> tuple[Panel, ...]:
    scale_h = max(_whole_h(one) * PLOT / (PLOT - 8 - width_of(_words(one, voice))) for one in lights)
    figure, axes = figure_with_axes(ROW * len(lights) + 34, WIDTH - PLOT, 0, 4, 26)
    axes.set_xlim(0, scale_h)
    axes.set_ylim(len(lights) - 0.5, -0.5)
    marks = nice_ticks(max(map(_whole_h, lights)))
    ticks(axes, "x", marks, hour_text(marks, voice.numbers, voice.words.say("unit.h")))
    ticks(axes, "y", range(len(lights)), lambda row: lights[round(row)].short, grid=False, colour=INK)
    for row, one in enumerate(lights):
        _bar(axes, row, one)
        write(axes, _whole_h(one) + 5 * scale_h / PLOT, row, _words(one, voice))
    return (Panel(figure, voice.say("gathered.desc")),)


def _whole_h(one: FilterLight) -> float:
    return (one.gathered_s + one.missing_s) / 3600


def _bar(axes: Axes, row: int, one: FilterLight) -> None:
    """Passbands share the bar's height; what is missing is hollow."""
    bands = one.bands or (0,)
    height = BAR / len(bands)
    for index, band in enumerate(bands):
        axes.barh(row - BAR / 2 + index * height, one.gathered_s / 3600, height, align="edge", color=passband(band))
    if one.missing_s:
        axes.barh(row, one.missing_s / 3600, BAR, left=one.gathered_s / 3600, fill=False, edgecolor=DIM, linewidth=LINE)


def _words(one: FilterLight, voice: Localizer) -> str:
    gathered, missing = (_hours(seconds, voice) for seconds in (one.gathered_s, one.missing_s))
    return voice.say("gathered.lacking", gathered=gathered, missing=missing) if one.missing_s else gathered


def _hours(seconds: float, voice: Localizer) -> str:
    """In hours, as the axis; the table has the minutes."""
    return f"{voice.numbers.number(seconds / 3600, 1)}\u202f{voice.words.say('unit.h')}"


def title(lights: Lights, voice: Localizer) -> str:
    most = max(lights, key=lambda one: one.gathered_s)
    total_s = sum(one.gathered_s for one in lights)
    return voice.say("gathered.title", filter=most.short, most=voice.numbers.duration(most.gathered_s),
                     total=voice.numbers.duration(total_s))  # fmt: skip


def table(lights: Lights, voice: Localizer) -> Table:
    heads = tuple(voice.say(f"gathered.{name}") for name in ("filter", "hours", "missing"))
    say = voice.numbers.duration
    rows = tuple((f"{one.short}, {one.name}", say(one.gathered_s), say(one.missing_s)) for one in lights)
    return Table(heads, rows)


EXAMPLE = (
    FilterLight("L", "Luminance", (), 70_000.0),
    FilterLight("R", "Red", (635,), 20_400.0, 7_200.0),
    FilterLight("HO", "Two bands", (656, 501), 32_000.0),
)

CHART: Chart[Lights] = Chart(
    name="light_gathered",
    question="How much light did each filter gather, and what is still wanted?",
    enough=lambda lights: any(one.gathered_s for one in lights),
    draw=draw,
    title=title,
    table=table,
    example=EXAMPLE,
)
