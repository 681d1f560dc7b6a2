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
    FixedLocator,
    FuncFormatter,
    MaxNLocator,
    Path,
    PathPatch,
    matplotlib,
)
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
    "axes.labelcolor": DIM,
    "xtick.color": DIM,
    "ytick.color": DIM,
    "xtick.labelsize": TEXT,
    "ytick.labelsize": TEXT,
    "xtick.major.size": 0,
    "ytick.major.size": 0,
    "axes.facecolor": "none",
    "figure.facecolor": "none",
    "axes.edgecolor": RULE,
    "grid.color": RULE,
    "grid.linewidth": THIN,
    "lines.linewidth": LINE,
    "lines.solid_capstyle": "round",
    "path.simplify": False,
    "text.parse_math": False,  # a dollar in a name is a dollar
}


@cache
def _settings() -> Any:
    defaults = {key: value for key, value in matplotlib.rcParamsDefault.items() if not key.startswith(("backend", "date."))}
    return {**defaults, **_STYLE}


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
    with matplotlib.rc_context(_settings()):
        yield


def svg_of(figure: Figure) -> str:
    """The figure as matplotlib writes it."""
    text = io.StringIO()
    FigureCanvasSVG(figure)
    figure.savefig(text, format="svg", metadata={"Date": None, "Creator": None, "Format": None, "Type": None})
    return text.getvalue()


def figure_with_axes(height: float, left: float, right: float, top: float, bottom: float) -> tuple[Figure, Axes]:
    """A panel of that height with one pair of axes, margins in units: no frame, no tick marks."""
    figure = Figure(figsize=(WIDTH / _INCH, height / _INCH), dpi=_INCH)
    axes = figure.add_axes((left / WIDTH, bottom / height, (WIDTH - left - right) / WIDTH, (height - top - bottom) / height))
    axes.spines[:].set_visible(False)
    axes.set_axisbelow(True)
    return figure, axes


def map_axes(height: float, half_width: float) -> tuple[Figure, Axes]:
    """A panel that is a map: no axes to be seen, plane coordinates from -half_width to half_width across."""
    figure, axes = figure_with_axes(height, 0, 0, 0, 0)
    axes.set_axis_off()
    axes.set_xlim(-half_width, half_width)
    axes.set_ylim(-half_width * height / WIDTH, half_width * height / WIDTH)
    return figure, axes


def nice_ticks(top: float, most: int = 4) -> list[float]:
    """Round values from 0 to `top`, no more than `most` steps."""
    return [float(tick) for tick in MaxNLocator(most, steps=[1, 2, 2.5, 5, 10]).tick_values(0.0, top) if tick <= top * 1.0001]


def ticks(axes: Axes, which: Literal["x", "y"], places: Sequence[float], text: Callable[[float], str], grid: bool = True) -> None:
    """Tick labels of one axis ('x' or 'y'), and lines of the paper's rule where they help to compare."""
    axis = axes.xaxis if which == "x" else axes.yaxis
    axis.set_major_locator(FixedLocator(list(places)))
    axis.set_major_formatter(FuncFormatter(lambda value, _: text(value).partition("\n")[0]))
    axes.tick_params(axis=which, length=0, pad=5, labelsize=TEXT, labelcolor=DIM)
    if grid:
        axes.grid(True, axis=which, color=RULE, linewidth=THIN)
    if which == "x":
        _further_rows(axes, places, text)


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
    axes.text(x, y, text, **{"color": colour, "fontsize": TEXT, "va": "center", **how})


def write_at(axes: Axes, x: float, y: float, text: str, colour: str = DIM, **how: Any) -> None:
    """Text at a share of the axes' width and height."""
    axes.text(x, y, text, **{"color": colour, "fontsize": TEXT, "va": "center", "transform": axes.transAxes, **how})


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
