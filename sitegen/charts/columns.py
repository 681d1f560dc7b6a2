"""Stacked columns of broadband and narrowband hours, which three charts share."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.charts.chart import Localizer, Table
from sitegen.charts.house_style import (
    BROAD,
    DIM,
    INK,
    NARROW,
    PAPER,
    TEXT,
    THIN,
    WIDTH,
    figure_with_axes,
    hour_text,
    nice_ticks,
    ticks,
    write,
    write_at,
)
from sitegen.charts.lettering import width_of
from sitegen.charts.library import Axes, Figure, Rectangle

HEIGHT, LEFT, RIGHT, TOP, BOTTOM = 240.0, 46.0, 4.0, 42.0, 28.0


class Column(Struct, frozen=True):
    """Light of one class, in seconds of exposure."""

    label: str
    broad_s: float
    narrow_s: float

    @property
    def total_s(self) -> float:
        return self.broad_s + self.narrow_s


def any_light(columns: Sequence[Column]) -> bool:
    return any(column.total_s for column in columns)


def stacked(columns: Sequence[Column], voice: Localizer, totals: bool = True) -> Figure:
    """Broadband below, narrowband on top, the sum over each column; the two kinds named above the plot."""
    figure, axes = figure_with_axes(HEIGHT, LEFT, RIGHT, TOP, BOTTOM)
    places = [float(place) for place in range(len(columns))]
    broad, narrow = [column.broad_s / 3600 for column in columns], [column.narrow_s / 3600 for column in columns]
    sums = [column.total_s / 3600 for column in columns]
    highest = max(sums)
    axes.set_xlim(-0.6, len(columns) - 0.4)
    axes.set_ylim(0, highest * (1.12 if totals else 1.02))
    marks = nice_ticks(highest)
    ticks(axes, "y", marks, hour_text(marks, voice.numbers, voice.words.say("unit.h")))
    ticks(axes, "x", places, lambda place: columns[round(place)].label, grid=False)
    width = min(0.7, 0.14 * len(columns))
    axes.bar(places, broad, width, color=BROAD)
    axes.bar(places, narrow, width, bottom=broad, color=NARROW, edgecolor=PAPER, linewidth=THIN)
    if totals:
        _totals(axes, places, sums, voice)
    _key(axes, voice)
    return figure


def _totals(axes: Axes, places: Sequence[float], hours: Sequence[float], voice: Localizer) -> None:
    for place, height in zip(places, hours, strict=True):
        if height:
            write(axes, place, height, voice.numbers.duration(3600 * round(height) if height >= 10 else 60 * round(60 * height)),
                  INK, ha="center", va="bottom", fontsize=TEXT)  # fmt: skip


def _key(axes: Axes, voice: Localizer) -> None:
    """Above the plot, in the order of the stack read from the left."""
    plot_width, plot_height = WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM
    y, side = 1 + (TOP - 14) / plot_height, 11.0
    x = 0.0
    for colour, word in ((BROAD, voice.say("columns.broad")), (NARROW, voice.say("columns.narrow"))):
        square = (x, y - side / 2 / plot_height)
        size = (side / plot_width, side / plot_height)
        axes.add_patch(Rectangle(square, *size, facecolor=colour, linewidth=0, transform=axes.transAxes, clip_on=False))
        write_at(axes, x + 17 / plot_width, y, word, DIM)
        x += (17 + width_of(word) + 26) / plot_width


def as_table(first: str, columns: Sequence[Column], voice: Localizer) -> Table:
    heads = (first, voice.say("columns.broad"), voice.say("columns.narrow"), voice.say("columns.both"))
    say = voice.numbers.duration
    return Table(heads, tuple((c.label, say(c.broad_s), say(c.narrow_s), say(c.total_s)) for c in columns))
