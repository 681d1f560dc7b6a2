"""A panel with one pair of axes: marks in the chart's own values, which are placed when it is written."""

from collections.abc import Callable, Sequence
from typing import Literal

from msgspec import Struct, field

from sitegen.charts import svg_writer
from sitegen.charts.house_style import BASELINE, DIM, INK, LINE, ROW, RULE, THIN, WIDTH
from sitegen.charts.svg_writer import Point

LABEL_GAP = 5.0  # units between an axis and its labels
Anchor = Literal["start", "middle", "end"]


class Scale(Struct, frozen=True):
    """A straight axis: values from `low` to `high` lie at units from `start` to `end`."""

    low: float
    high: float
    start: float
    end: float

    def place(self, value: float) -> float:
        return self.start + (value - self.low) * (self.end - self.start) / (self.high - self.low)


class Rules(Struct, frozen=True):
    """Thin lines across the whole plot at values of one axis, under everything else."""

    axis: Literal["x", "y"]
    places: tuple[float, ...]


class Dots(Struct, frozen=True):
    """Round marks `size` units across; hollow ones are discarded subs."""

    points: tuple[Point, ...]
    size: float
    role: str
    hollow: bool = False
    opacity: float | None = None


class Triangles(Struct, frozen=True):
    """Hollow marks of what lies beyond an edge of the plot, at that edge."""

    points: tuple[Point, ...]
    role: str
    downward: bool = False


class Line(Struct, frozen=True):
    """From point to point."""

    points: tuple[Point, ...]
    role: str
    width: float


class Bar(Struct, frozen=True):
    """From one corner to the opposite one. `edge`: the role of a line around it; a hollow bar is that line alone."""

    corner: Point
    far: Point
    role: str
    edge: str | None = None
    hollow: bool = False


class Words(Struct, frozen=True):
    """A line of text around a place in units: its left end, middle or right end, halfway up its capitals."""

    place: Point
    text: str
    role: str
    anchor: Anchor


class Square(Struct, frozen=True):
    """A sample of a colour, its middle in units."""

    middle: Point
    side: float
    role: str


Mark = Rules | Dots | Triangles | Line | Bar | Words | Square
UNDER, OVER = Rules, Words  # drawn before and after everything else


class Plot(Struct, frozen=True):
    """Marks are drawn in the order in which they came, above the rules and below the words."""

    height: float
    x: Scale
    y: Scale
    marks: list[Mark] = field(default_factory=list)

    def add(self, mark: Mark) -> None:
        self.marks.append(mark)

    def write(self, place: Point, text: str, role: str = INK, anchor: Anchor = "start") -> None:
        self.add(Words(place, text, role, anchor))

    def label_x(self, places: Sequence[float], text: Callable[[float], str], rules: bool = True) -> None:
        """Labels under the plot, further lines of their text in rows below."""
        shown = _within(self.x, places)
        if rules:
            self.add(Rules("x", shown))
        for place in shown:
            for row, row_text in enumerate(text(place).split("\n")):
                self.write((self.x.place(place), self.row(row)), row_text, DIM, "middle")

    def label_y(self, places: Sequence[float], text: Callable[[float], str], rules: bool = True, role: str = DIM) -> None:
        """Labels left of the plot."""
        shown = _within(self.y, places)
        if rules:
            self.add(Rules("y", shown))
        for place in shown:
            self.write((self.x.start - LABEL_GAP, self.y.place(place)), text(place), role, "end")

    def row(self, row: int) -> float:
        """The middle of a row of labels under the plot, in units; row 0 the first."""
        return max(self.y.start, self.y.end) + LABEL_GAP + ROW * (row + 0.33)

    def body(self) -> str:
        """The marks as SVG."""
        layers = sorted(self.marks, key=lambda mark: isinstance(mark, OVER) - isinstance(mark, UNDER))
        return "".join(self._written(mark) for mark in layers)

    def _written(self, mark: Mark) -> str:
        match mark:
            case Rules():
                return svg_writer.segments(self._across(mark), RULE, THIN) if mark.places else ""
            case Dots():
                return self._dots(mark)
            case Triangles():
                return svg_writer.triangles(self._placed(mark.points), mark.role, 6.0, mark.downward)
            case Line():
                return svg_writer.line(self._placed(mark.points), mark.role, mark.width)
            case Bar():
                return self._bar(mark)
            case Words(place=(x, y)):
                return svg_writer.words((x, y + BASELINE), mark.text, mark.role, mark.anchor)
            case Square(middle=(x, y)):
                half = mark.side / 2
                return svg_writer.box((x - half, y - half), (x + half, y + half), mark.role)

    def _placed(self, points: Sequence[Point]) -> list[Point]:
        across, up = self.x, self.y
        return [(across.place(x), up.place(y)) for x, y in points]

    def _across(self, rules: Rules) -> list[tuple[Point, Point]]:
        if rules.axis == "x":
            return [((place, self.y.start), (place, self.y.end)) for place in map(self.x.place, rules.places)]
        return [((self.x.start, place), (self.x.end, place)) for place in map(self.y.place, rules.places)]

    def _dots(self, mark: Dots) -> str:
        places = self._placed(mark.points)
        if mark.hollow:
            return svg_writer.hollow_dots(places, mark.role, mark.size)
        return svg_writer.dots(places, mark.role, mark.size, mark.opacity)

    def _bar(self, bar: Bar) -> str:
        corner, far = self._placed((bar.corner, bar.far))
        if bar.hollow:
            return svg_writer.hollow_box(corner, far, bar.edge or bar.role, LINE)
        return svg_writer.box(corner, far, bar.role, (bar.edge, THIN) if bar.edge else None)


def plot(height: float, left: float, right: float, top: float, bottom: float, x: Point, y: Point) -> Plot:
    """A panel of that height with margins in units; `x` and `y` the values at the left and right, at the foot and top."""
    return Plot(height, Scale(*x, left, WIDTH - right), Scale(*y, height - bottom, top))


def _within(scale: Scale, places: Sequence[float]) -> tuple[float, ...]:
    low, high = sorted((scale.low, scale.high))
    return tuple(place for place in places if low <= place <= high)
