"""What is written, letter by letter: SVG for inside a page."""

import pytest

from sitegen.charts import svg_writer
from sitegen.charts.house_style import passband
from sitegen.charts.svg_writer import Frame, panel_svg, short


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.0, "0"), (-0.004, "0"), (12.0, "12"), (12.5, "12.5"), (12.346, "12.35"), (-0.1 - 0.2, "-0.3"), (90.0, "90")],
)
def test_numbers_are_short(value: float, text: str) -> None:
    """Two decimals at most, no idle zeros, no negative zero, and no last bits."""
    assert short(value) == text


def test_what_an_author_wrote_is_escaped() -> None:
    """In marks, in the title and in the description."""
    assert svg_writer.words((1.0, 2.0), '<b> & "c"', "ink", "start") == (
        '<text class="f-ink" font-size="13.6" text-anchor="start" x="1" y="2">&lt;b&gt; &amp; &quot;c&quot;</text>'
    )
    assert panel_svg(Frame("k", "A < B", "C & D.", "0 0 400 9"), "") == (
        '<svg class="panel" viewBox="0 0 400 9" role="img" aria-labelledby="k-title" aria-describedby="k-desc">'
        '<title id="k-title">A &lt; B</title><desc id="k-desc">C &amp; D.</desc></svg>'
    )


def test_a_panel_of_links_is_a_group() -> None:
    """A picture would hide them from assistive technology; a halo is a class of its own."""
    svg = panel_svg(Frame("k", "T", "D.", "0 0 400 9", links=True, halo=True), "<g/>")
    assert svg.startswith('<svg class="panel halo" viewBox="0 0 400 9" role="group"')
    assert svg.endswith("</desc><g/></svg>")


def test_a_passband_is_one_class() -> None:
    """656 nm is .nm656, which the build's own stylesheet colours; a role has a class for a fill and one for a line."""
    filled = svg_writer.box((1.0, 9.0), (5.0, 2.0), passband("656-line"))
    assert filled == '<rect class="nm656-line" x="1" y="2" width="4" height="7"/>'
    edged = svg_writer.box((1.0, 2.0), (5.0, 9.0), "narrow", ("paper", 1.25))
    assert edged == '<rect class="f-narrow s-paper" stroke-width="1.25" x="1" y="2" width="4" height="7"/>'
    hollow = svg_writer.hollow_box((1.0, 2.0), (5.0, 9.0), "dim", 1.4)
    assert hollow == '<rect class="s-dim" fill="none" stroke-width="1.4" x="1" y="2" width="4" height="7"/>'


def test_lines() -> None:
    """One path a line; several of two ends each in one path."""
    assert svg_writer.line([(0.0, 1.0), (2.0, 3.005), (4.0, 5.0)], "ink", 2.2) == (
        '<path class="s-ink" fill="none" stroke-width="2.2" stroke-linejoin="round" d="M0 1L2 3L4 5"/>'
    )
    assert svg_writer.segments([((0.0, 1.0), (2.0, 1.0)), ((0.0, 4.0), (2.0, 4.0))], "rule", 1.25) == (
        '<path class="s-rule" fill="none" stroke-width="1.25" d="M0 1L2 1M0 4L2 4"/>'
    )


def test_dots_are_points_of_one_path() -> None:
    """Round ends make them dots; a hollow one has a smaller dot of paper on it."""
    one = 'fill="none" stroke-width="6" stroke-linecap="round" d="M1 2h0M3 4h0"/>'
    assert svg_writer.dots([(1.0, 2.0), (3.0, 4.0)], "broad", 6.0) == f'<path class="s-broad" {one}'
    assert svg_writer.hollow_dots([(1.0, 2.0), (3.0, 4.0)], "broad", 6.0) == (
        f'<path class="s-broad" {one}<path class="s-paper" {one.replace("6", "3.2", 1)}'
    )
    assert ' opacity="0.8" ' in svg_writer.dots([(1.0, 2.0)], "broad", 6.0, 0.8)


def test_triangles_point_beyond_their_edge() -> None:
    """Up at the top, down at the foot; y grows downwards."""
    assert svg_writer.triangles([(10.0, 20.0)], "broad", 6.0).endswith('d="M10 17L7 23H13Z"/>')
    assert svg_writer.triangles([(10.0, 20.0)], "broad", 6.0, downward=True).endswith('d="M10 23L7 17H13Z"/>')
