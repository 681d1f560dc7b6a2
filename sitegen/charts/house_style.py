"""How every chart looks: its sizes, and colours that stand for roles until the reader's lamp gives them.

A role is written into the figure as a colour of its own that no screen is meant to show; `clean_svg` turns it into a class, and
the theme's stylesheet gives the class its colour. Lengths are units of a panel 400 wide: on a phone of 360 px one is 0.82 px.
"""

import io
import logging
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from functools import cache
from typing import Any, Literal

from sitegen.charts.library import (
    Axes,
    Figure,
    FigureCanvasSVG,
    MaxNLocator,
    Path,
    PathPatch,
    matplotlib,
)
from sitegen.charts.plain_letters import plain_letters
from sitegen.number_text import NumberText

# the first run on a machine finds its fonts, and would say so among the words of the command
logging.getLogger("matplotlib.font_manager").setLevel(logging.ERROR)

WIDTH = 400.0
TEXT = 13.6  # 11.1 px where the panel is 328 px wide, a phone of 360 px less its margins
THIN, LINE, THICK = 1.25, 1.4, 2.2  # the thinnest is 1 px on that phone
ROW = 16.4  # from one line of text to the next
_INCH = 72.0

ROLES = ("paper", "ink", "dim", "rule", "link", "broad", "narrow", "milky", "wash", "wish", "star")
PAPER, INK, DIM, RULE, LINK, BROAD, NARROW, MILKY, WASH, WISH, STAR = (f"#0101{index:02x}" for index in range(len(ROLES)))

_STYLE: dict[str, Any] = {
    "svg.fonttype": "none",
    "svg.hashsalt": "chart",
    "font.size": TEXT,
    "text.color": INK,
    "axes.facecolor": "none",
    "figure.facecolor": "none",
    "lines.linewidth": LINE,
    "lines.solid_capstyle": "round",
    "path.simplify": False,
    "text.parse_math": False,  # a dollar in a name is a dollar
}


@cache
def _settings() -> Any:
    """Checked once: checking three hundred settings takes as long as drawing."""
    chosen: Any = {key: value for key, value in matplotlib.rcParamsDefault.items() if not key.startswith(("backend", "date."))}
    chosen.update(_STYLE)
    with matplotlib.rc_context(chosen):
        return {key: matplotlib.rcParams[key] for key in chosen}


def passband(nanometres: int) -> str:
    """The stand-in colour of a passband in whole nm; 0 for no hue."""
    return f"#02{nanometres:04x}"


def class_of(colour: str) -> str:
    """What the stylesheet calls a stand-in colour: 'ink', 'nm656'. ValueError for a colour from elsewhere."""
    if colour.startswith("#0101") and int(colour[5:], 16) < len(ROLES):
        return ROLES[int(colour[5:], 16)]
    if colour.startswith("#02"):
        return f"nm{int(colour[3:], 16)}"
    raise ValueError(f"{colour} is no colour of the house; use a role or a passband of house_style.py")


@contextmanager
def house() -> Iterator[None]:
    """The house's settings alone, whatever the machine's own matplotlib settings are. `drawn` works inside it."""
    settings = _settings()
    with matplotlib.rc_context():
        dict.update(matplotlib.rcParams, settings)
        yield


def svg_of(figure: Figure) -> str:
    """The figure as matplotlib writes it."""
    text = io.StringIO()
    figure.savefig(text, format="svg", metadata={"Date": None, "Creator": None, "Format": None, "Type": None})
    return text.getvalue()


_empty: list[Figure] = []


def figure_with_axes(height: float, left: float, right: float, top: float, bottom: float) -> tuple[Figure, Axes]:
    """A panel of that height with one pair of axes, margins in units: no frame, no tick marks."""
    figure = _empty.pop() if _empty else _new_figure()
    figure.set_size_inches(WIDTH / _INCH, height / _INCH)
    axes = figure.axes[0]
    axes.set_position((left / WIDTH, bottom / height, (WIDTH - left - right) / WIDTH, (height - top - bottom) / height))
    return figure, axes


def _new_figure() -> Figure:
    figure = Figure(dpi=_INCH)
    FigureCanvasSVG(figure)
    figure.add_axes((0.0, 0.0, 1.0, 1.0)).set_axis_off()
    return figure


def hand_back(figure: Figure) -> None:
    """A figure that was drawn, emptied for the next panel: making axes takes longer than drawing in them."""
    axes = figure.axes[0]
    for artists in (axes.lines, axes.patches, axes.texts, axes.artists, figure.artists, figure.texts):
        for artist in list(artists):
            artist.remove()
    axes.containers.clear()
    axes.relim()
    axes.set_xlim(0.0, 1.0, auto=True)
    axes.set_ylim(0.0, 1.0, auto=True)
    _empty.append(figure)


def map_axes(height: float, half_width: float) -> tuple[Figure, Axes]:
    """A panel that is a map: no axes to be seen, plane coordinates from -half_width to half_width across."""
    figure, axes = figure_with_axes(height, 0, 0, 0, 0)
    axes.set_xlim(-half_width, half_width)
    axes.set_ylim(-half_width * height / WIDTH, half_width * height / WIDTH)
    return figure, axes


def nice_ticks(top: float, most: int = 4) -> list[float]:
    """Round values from 0 to `top`, no more than `most` steps."""
    return [float(tick) for tick in MaxNLocator(most, steps=[1, 2, 2.5, 5, 10]).tick_values(0.0, top) if tick <= top * 1.0001]


def ticks(
    axes: Axes, which: Literal["x", "y"], places: Sequence[float], text: Callable[[float], str], grid: bool = True,
    colour: str = DIM,
) -> None:  # fmt: skip
    """Tick labels of one axis ('x' or 'y'), and lines of the paper's rule where they help to compare. The axes have their limits.

    Drawn as plain text and one path: matplotlib's own ticks, which can be moved, cost more than everything else in a panel.
    """
    low, high = sorted(axes.get_xlim() if which == "x" else axes.get_ylim())
    shown = [place for place in places if low <= place <= high]
    if grid:
        _rules(axes, which, shown)
    for place in shown:
        _tick_label(axes, which, place, text(place).partition("\n")[0], colour)
    if which == "x":
        _further_rows(axes, shown, text)


def _rules(axes: Axes, which: Literal["x", "y"], places: Sequence[float]) -> None:
    """Under everything in the axes."""
    if not places:
        return
    ends = [(place, side) if which == "x" else (side, place) for place in places for side in (0.0, 1.0)]
    across = axes.get_xaxis_transform() if which == "x" else axes.get_yaxis_transform()
    path = Path(ends, [Path.MOVETO, Path.LINETO] * len(places))
    axes.figure.add_artist(PathPatch(path, fill=False, edgecolor=RULE, linewidth=THIN, transform=across, zorder=-1))


def _tick_label(axes: Axes, which: Literal["x", "y"], place: float, words: str, colour: str) -> None:
    across, va, ha = axes.get_xaxis_text1_transform(5.0) if which == "x" else axes.get_yaxis_text1_transform(5.0)
    x, y = (place, 0.0) if which == "x" else (0.0, place)
    axes.figure.text(x, y, plain_letters(words), transform=across, va=va, ha=ha, color=colour, fontsize=TEXT)


def _further_rows(axes: Axes, places: Sequence[float], text: Callable[[float], str]) -> None:
    """Lines after the first, each a text of its own, so that it stays centred in whatever face the reader has."""
    for place in places:
        for row, line in enumerate(text(place).split("\n")[1:], start=1):
            write(axes, place, row_height(axes, row), line, DIM, ha="center", transform=axes.get_xaxis_transform())


def row_height(axes: Axes, row: int) -> float:
    """The middle of a row of tick labels under the axes, row 0 the first, as a share of the axes' height."""
    return -(5.0 + ROW * (row + 0.42)) / float(axes.bbox.height)


def hour_text(places: Sequence[float], numbers: NumberText, hour: str) -> Callable[[float], str]:
    """Tick labels in hours, with a decimal only where a step needs it."""
    decimals = 0 if all(float(place).is_integer() for place in places) else 1
    return lambda hours: f"{numbers.number(hours, decimals)}\u202f{hour}"


def write(axes: Axes, x: float, y: float, text: str, colour: str = INK, **how: Any) -> None:
    """Text in data coordinates, in the house's size."""
    axes.text(x, y, plain_letters(text), **{"color": colour, "fontsize": TEXT, "va": "center", **how})


def write_at(axes: Axes, x: float, y: float, text: str, colour: str = DIM, **how: Any) -> None:
    """Text at a share of the axes' width and height."""
    how = {"transform": axes.transAxes, **how}
    write(axes, x, y, text, colour, **how)


def dots(axes: Axes, xs: Sequence[float], ys: Sequence[float], size: float, colour: str, **how: Any) -> None:
    """Round marks `size` units across as one path of points with round ends: ten bytes a mark. The axes keep their limits."""
    if not len(xs):
        return
    vertices = [point for x, y in zip(xs, ys, strict=True) for point in ((x, y), (x, y))]
    path = Path(vertices, [Path.MOVETO, Path.LINETO] * len(xs))
    axes.add_artist(PathPatch(path, fill=False, edgecolor=colour, linewidth=size, capstyle="round", **how))


def hollow_dots(axes: Axes, xs: Sequence[float], ys: Sequence[float], size: float, colour: str, **how: Any) -> None:
    """Rings `size` units across, as subs look that were thrown away."""
    dots(axes, xs, ys, size, colour, **how)
    dots(axes, xs, ys, size - 2 * LINE, PAPER, **how)
