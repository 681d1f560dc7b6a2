"""Stacked columns of broadband and narrowband hours, which three charts share."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.charts.chart import Localizer, Table
from sitegen.charts.house_style import BROAD, DIM, INK, NARROW, PAPER
from sitegen.charts.lettering import width_of
from sitegen.charts.plot import Bar, Plot, Square, plot
from sitegen.charts.round_steps import hour_text, round_steps

HEIGHT, LEFT, RIGHT, TOP, BOTTOM = 240.0, 46.0, 4.0, 42.0, 28.0
KEY_Y, KEY_SIDE = 14.0, 11.0
NAME_GAP = 3.0
TOTAL_GAP = 8.3  # from a column's top to the middle of its number


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


def stacked(columns: Sequence[Column], voice: Localizer, totals: bool = True) -> Plot:
    """Broadband below, narrowband on top, the sum over each column; the two kinds named above the plot."""
    highest = max(column.total_s for column in columns) / 3600
    x, y = (-0.6, len(columns) - 0.4), (0.0, highest * (1.12 if totals else 1.02))
    drawing = plot(HEIGHT, LEFT, RIGHT, TOP, BOTTOM, x, y)
    marks = round_steps(0.0, highest, 4)
    drawing.label_y(marks, hour_text(marks, voice.numbers, voice.words.say("unit.h")))
    drawing.label_x(_named(columns, drawing), lambda place: columns[round(place)].label, rules=False)
    half = min(0.7, 0.14 * len(columns)) / 2
    for place, column in enumerate(columns):
        _column(drawing, column, place - half, place + half)
        if totals and column.total_s:
            _total(drawing, place, column, voice)
    _key(drawing, voice)
    return drawing


def _named(columns: Sequence[Column], drawing: Plot) -> Sequence[int]:
    """Places of the columns whose names find room beside each other: all, or every second, third and so on up to the last."""
    room = drawing.x.place(1.0) - drawing.x.place(0.0)
    step = 1 + int((max(width_of(column.label) for column in columns) + NAME_GAP) / room)
    return range((len(columns) - 1) % step, len(columns), step)


def _column(drawing: Plot, column: Column, left: float, right: float) -> None:
    broad_h, total_h = column.broad_s / 3600, column.total_s / 3600
    if column.broad_s:
        drawing.add(Bar((left, 0.0), (right, broad_h), BROAD))
    if column.narrow_s:
        drawing.add(Bar((left, broad_h), (right, total_h), NARROW, edge=PAPER))


def _total(drawing: Plot, place: float, column: Column, voice: Localizer) -> None:
    """Whole hours from ten on, else whole minutes."""
    hours = column.total_s / 3600
    text = voice.numbers.duration(3600 * round(hours) if hours >= 10 else 60 * round(60 * hours))
    drawing.write((drawing.x.place(place), drawing.y.place(hours) - TOTAL_GAP), text, INK, "middle")


def _key(drawing: Plot, voice: Localizer) -> None:
    """Above the plot, in the order of the stack read from the left."""
    left = LEFT
    for role, word in ((BROAD, voice.say("columns.broad")), (NARROW, voice.say("columns.narrow"))):
        drawing.add(Square((left + KEY_SIDE / 2, KEY_Y), KEY_SIDE, role))
        drawing.write((left + 17, KEY_Y), word, DIM)
        left += 17 + width_of(word) + 26


def as_table(first: str, columns: Sequence[Column], voice: Localizer) -> Table:
    heads = (first, voice.say("columns.broad"), voice.say("columns.narrow"), voice.say("columns.both"))
    say = voice.numbers.duration
    return Table(heads, tuple((c.label, say(c.broad_s), say(c.narrow_s), say(c.total_s)) for c in columns))
