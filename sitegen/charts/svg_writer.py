"""Writes SVG from computed places: short numbers, escaped text, colours as classes, and the panel around the marks.

Coordinates are written with two decimals. They come from sums, products and quotients of Python's floats alone, each of which
IEEE 754 rounds alike on every processor, so that the same values give the same bytes.
"""

from collections.abc import Iterable
from html import escape

from msgspec import Struct

from sitegen.charts.house_style import LINE, PAPER, TEXT, fill_class, line_class

Point = tuple[float, float]


class Frame(Struct, frozen=True):
    """What stands around a panel's marks: `title` and `described` are for who cannot see it, `key` starts their ids. A panel
    whose marks are links is a group to assistive technology, else a picture."""

    key: str
    title: str
    described: str
    view_box: str
    links: bool = False
    halo: bool = False


def panel_svg(frame: Frame, body: str) -> str:
    """The SVG for inside a page."""
    key = frame.key
    head = f'<title id="{key}-title">{escape(frame.title)}</title><desc id="{key}-desc">{escape(frame.described)}</desc>'
    role, classes = "group" if frame.links else "img", "panel halo" if frame.halo else "panel"
    return (
        f'<svg class="{classes}" viewBox="{frame.view_box}" role="{role}" aria-labelledby="{key}-title"'
        f' aria-describedby="{key}-desc">{head}{body}</svg>'
    )


def short(value: float) -> str:
    """At most two decimals and no idle zeros, never '-0'."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def line(points: Iterable[Point], role: str, width: float) -> str:
    """From point to point."""
    return _stroke("M" + "L".join(f"{short(x)} {short(y)}" for x, y in points), role, width, ' stroke-linejoin="round"')


def segments(ends: Iterable[tuple[Point, Point]], role: str, width: float) -> str:
    """Lines of two ends each, as one path."""
    return _stroke("".join(f"M{short(x)} {short(y)}L{short(u)} {short(v)}" for (x, y), (u, v) in ends), role, width)


def dots(points: Iterable[Point], role: str, size: float, opacity: float | None = None) -> str:
    """Round marks `size` across, as one path of points with round ends: a dozen bytes a mark."""
    path = "".join(f"M{short(x)} {short(y)}h0" for x, y in points)
    return _stroke(path, role, size, f' stroke-linecap="round"{_opacity(opacity)}')


def hollow_dots(points: Iterable[Point], role: str, size: float) -> str:
    """Rings `size` across, as subs look that were discarded."""
    places = tuple(points)
    return dots(places, role, size) + dots(places, PAPER, size - 2 * LINE)


def triangles(points: Iterable[Point], role: str, size: float, downward: bool = False) -> str:
    """Hollow triangles around their places, `size` high."""
    half = size / 2
    tip, foot = (half, -half) if downward else (-half, half)
    path = "".join(f"M{short(x)} {short(y + tip)}L{short(x - half)} {short(y + foot)}H{short(x + half)}Z" for x, y in points)
    return _stroke(path, role, LINE)


def box(corner: Point, far: Point, role: str, edge: tuple[str, float] | None = None) -> str:
    """A filled rectangle between two corners; `edge` the role and width of its line."""
    around = f' stroke-width="{short(edge[1])}"' if edge else ""
    classes = f"{fill_class(role)} {line_class(edge[0])}" if edge else fill_class(role)
    return f'<rect class="{classes}"{around}{_sides(corner, far)}/>'


def hollow_box(corner: Point, far: Point, role: str, width: float) -> str:
    return f'<rect class="{line_class(role)}" fill="none" stroke-width="{short(width)}"{_sides(corner, far)}/>'


def words(place: Point, text: str, role: str, anchor: str) -> str:
    """A line of text in the house's size, `place` on its baseline; `anchor` is 'start', 'middle' or 'end'."""
    x, y = map(short, place)
    how = f'class="{fill_class(role)}" font-size="{short(TEXT)}" text-anchor="{anchor}"'
    return f'<text {how} x="{x}" y="{y}">{escape(text)}</text>'


def _stroke(path: str, role: str, width: float, further: str = "") -> str:
    return f'<path class="{line_class(role)}" fill="none" stroke-width="{short(width)}"{further} d="{path}"/>'


def _opacity(opacity: float | None) -> str:
    return "" if opacity is None else f' opacity="{short(opacity)}"'


def _sides(corner: Point, far: Point) -> str:
    (left, right), (top, bottom) = sorted((corner[0], far[0])), sorted((corner[1], far[1]))
    return f' x="{short(left)}" y="{short(top)}" width="{short(right - left)}" height="{short(bottom - top)}"'
