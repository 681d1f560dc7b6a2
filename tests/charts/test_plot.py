"""Marks in a chart's own values, placed in the panel."""

from xml.etree.ElementTree import Element, fromstring

import pytest

from sitegen.charts.plot import Bar, Dots, Line, Square, Triangles, plot
from sitegen.charts.round_steps import round_steps

DRAWING = (200.0, 50.0, 30.0, 20.0, 40.0, (0.0, 10.0), (0.0, 4.0))


def marks(drawing: object) -> list[Element]:
    return list(fromstring(f"<svg>{drawing.body()}</svg>"))  # type: ignore[attr-defined]


def test_the_plot_lies_within_its_margins() -> None:
    """Left 50, right 30 of 400; the foot 40 above the panel's, the top 20 below its: values grow upwards."""
    drawing = plot(*DRAWING)
    assert (drawing.x.place(0.0), drawing.x.place(10.0)) == (50.0, 370.0)
    assert (drawing.y.place(0.0), drawing.y.place(4.0)) == (160.0, 20.0)
    assert drawing.y.place(2.0) == 90.0


def test_a_bar_stands_on_its_foot() -> None:
    """Half of the height, from the foot up."""
    drawing = plot(*DRAWING)
    drawing.add(Bar((0.0, 0.0), (5.0, 2.0), "broad"))
    (bar,) = marks(drawing)
    assert [bar.get(key) for key in ("x", "y", "width", "height")] == ["50", "90", "160", "70"]


def test_every_kind_of_mark_is_drawn_where_its_values_are() -> None:
    """(5, 2) is the middle of the plot, 210 units across and 90 down."""
    drawing = plot(*DRAWING)
    drawing.add(Dots(((5.0, 2.0),), 4.0, "ink"))
    drawing.add(Triangles(((5.0, 2.0),), "ink"))
    drawing.add(Line(((5.0, 2.0), (10.0, 4.0)), "ink", 1.4))
    drawing.add(Bar((5.0, 2.0), (10.0, 4.0), "dim", hollow=True))
    drawing.add(Square((210.0, 90.0), 10.0, "broad"))
    dots, triangle, line, bar, square = marks(drawing)
    assert dots.get("d") == "M210 90h0"
    assert triangle.get("d") == "M210 87L207 93H213Z"
    assert line.get("d") == "M210 90L370 20"
    assert (bar.get("x"), bar.get("y"), bar.get("fill")) == ("210", "20", "none")
    assert (square.get("x"), square.get("y"), square.get("width")) == ("205", "85", "10")


def test_rules_lie_under_all_and_words_over_all() -> None:
    """Whatever the order in which they were asked for."""
    drawing = plot(*DRAWING)
    drawing.write((10.0, 10.0), "above")
    drawing.add(Dots(((5.0, 2.0),), 4.0, "ink"))
    drawing.label_y([0.0, 2.0, 9.0], str)
    assert [mark.get("class") for mark in marks(drawing)] == ["s-rule", "s-ink", "f-ink", "f-dim", "f-dim"]
    assert marks(drawing)[0].get("d") == "M50 160L370 160M50 90L370 90"


def test_labels_stand_at_their_values_within_the_plot() -> None:
    """Left of the plot at their height; under it in rows, one for each line of the text."""
    drawing = plot(*DRAWING)
    drawing.label_y([2.0], lambda value: f"{value:.0f} h")
    drawing.label_x([5.0, 11.0], lambda value: "23\n13:30")
    _, _, left, hour, utc = marks(drawing)
    assert (left.text, left.get("text-anchor"), left.get("x")) == ("2 h", "end", "45")
    assert float(left.attrib["y"]) == pytest.approx(90.0 + 0.36 * 13.6, abs=0.01)  # half of a digit below the rule
    assert [(row.text, row.get("x")) for row in (hour, utc)] == [("23", "210"), ("13:30", "210")]
    assert 160.0 < float(hour.attrib["y"]) < float(utc.attrib["y"]) < 200.0


@pytest.mark.parametrize(
    ("high", "places"),
    [
        (63.9, [0, 20, 40, 60]),
        (45.0, [0, 20, 40]),
        (9.0, [0, 2.5, 5, 7.5]),
        (1.0, [0, 0.5, 1.0]),
        (0.3, [0, 0.1, 0.2, 0.3]),
        (4000.0, [0, 1000, 2000, 3000, 4000]),
    ],
)
def test_steps_are_round(high: float, places: list[float]) -> None:
    """1, 2, 2.5 or 5 times a power of ten, the least of which four reach the top; tenths without last bits."""
    assert round_steps(0.0, high, 4) == places


def test_steps_begin_above_the_foot() -> None:
    """The step goes by the whole stretch, the first label by where it may stand."""
    assert round_steps(1.9, 3.1, 4) == [2.0, 2.5, 3.0]
    assert round_steps(1.9, 3.1, 4, above=2.1) == [2.5, 3.0]
