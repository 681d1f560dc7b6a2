"""The figure that a map is drawn in by matplotlib, and the house's colours and settings there.

A role is written into the figure as a colour of its own that no screen is meant to show; `clean_svg` turns it into a class.
"""

import io
import logging
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import cache
from typing import Any

from sitegen.charts.house_style import LINE, ROLES, TEXT, WIDTH
from sitegen.charts.library import Axes, Figure, FigureCanvasSVG, Path, PathPatch, matplotlib
from sitegen.charts.plain_letters import plain_letters

# the first run on a machine finds its fonts, and would say so among the words of the command
logging.getLogger("matplotlib.font_manager").setLevel(logging.ERROR)

_INCH = 72.0
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


def class_of(colour: str) -> str:
    """The role of a stand-in colour: 'ink'. ValueError for a colour from elsewhere."""
    if colour.startswith("#0101") and int(colour[5:], 16) < len(ROLES):
        return ROLES[int(colour[5:], 16)]
    raise ValueError(f"{colour} is no colour of the house; use a role of map_figure.py")


@contextmanager
def house() -> Iterator[None]:
    """The house's settings alone, whatever the machine's own matplotlib settings are. Maps are drawn inside it."""
    settings = _settings()
    with matplotlib.rc_context():
        dict.update(matplotlib.rcParams, settings)
        yield


@house()
def svg_of(figure: Figure) -> str:
    """The figure as matplotlib writes it."""
    text = io.StringIO()
    figure.savefig(text, format="svg", metadata={"Date": None, "Creator": None, "Format": None, "Type": None})
    return text.getvalue()


_empty: list[Figure] = []


def map_axes(height: float, half_width: float) -> tuple[Figure, Axes]:
    """A panel that is a map: no axes to be seen, plane coordinates from -half_width to half_width across."""
    figure = _empty.pop() if _empty else _new_figure()
    figure.set_size_inches(WIDTH / _INCH, height / _INCH)
    axes = figure.axes[0]
    axes.set_xlim(-half_width, half_width)
    axes.set_ylim(-half_width * height / WIDTH, half_width * height / WIDTH)
    return figure, axes


def _new_figure() -> Figure:
    figure = Figure(dpi=_INCH)
    FigureCanvasSVG(figure)
    figure.add_axes((0.0, 0.0, 1.0, 1.0)).set_axis_off()
    return figure


def release(figure: Figure) -> None:
    """A figure that was drawn, emptied for the next panel: making axes takes longer than drawing in them."""
    axes = figure.axes[0]
    for artists in (axes.lines, axes.patches, axes.texts, axes.artists):
        for artist in list(artists):
            artist.remove()
    _empty.append(figure)


def write(axes: Axes, x: float, y: float, text: str, colour: str = INK, **how: Any) -> None:
    """Text in the map's coordinates, in the house's size."""
    axes.text(x, y, plain_letters(text), **{"color": colour, "fontsize": TEXT, "va": "center", **how})


def dots(axes: Axes, xs: Sequence[float], ys: Sequence[float], size: float, colour: str, **how: Any) -> None:
    """Round marks `size` units across as one path of points with round ends: ten bytes a mark. The axes keep their limits."""
    if not len(xs):
        return
    vertices = [point for x, y in zip(xs, ys, strict=True) for point in ((x, y), (x, y))]
    path = Path(vertices, [Path.MOVETO, Path.LINETO] * len(xs))
    axes.add_artist(PathPatch(path, fill=False, edgecolor=colour, linewidth=size, capstyle="round", **how))
