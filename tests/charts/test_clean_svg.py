"""What becomes of matplotlib's SVG."""

import pytest

from sitegen.charts.clean_svg import clean_svg
from sitegen.charts.map_figure import INK, LINK, MILKY

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 400 100">'


def cleaned(inside: str, **how: object) -> str:
    """What stands between the description and the end."""
    text = clean_svg(f"{OPEN}{inside}</svg>", "key", "Title", "Described.", **{"links": {}, **how})  # type: ignore[arg-type]
    return text.partition("</desc>")[2].removesuffix("</svg>")


def test_styles_become_attributes_and_colours_classes() -> None:
    """A role gives a class for fill and one for stroke; what else the style said stands as attributes."""
    path = f'<path d="M 1.04 2 L 3 4.96" style="fill: {INK}; stroke: {LINK}; stroke-width: 1.25; font-family: Some"/>'
    assert cleaned(path) == '<path class="f-ink s-link" stroke-width="1.25" d="M1 2L3 5"/>'


def test_a_colour_from_elsewhere_is_refused() -> None:
    """A chart that brings its own colour would be wrong in two lamps of three."""
    with pytest.raises(ValueError, match="#1f77b4 is no colour of the house"):
        cleaned('<path d="M 0 0" style="fill: #1f77b4"/>')


def test_the_milky_way_is_filled_between_its_rings() -> None:
    """Even-odd, since rings lie inside each other."""
    assert 'fill-rule="evenodd"' in cleaned(f'<path d="M 0 0" style="fill: {MILKY}"/>')


def test_ids_get_the_key_and_idle_ones_go() -> None:
    """Only what is referred to keeps a name, and it starts with the chart's key."""
    text = cleaned('<defs><path id="m1" d="M 0 0"/></defs><g id="figure_1"><use xlink:href="#m1" x="5" y="6"/></g>')
    assert text == '<defs><path id="key-0" d="M0 0"/></defs><use href="#key-0" x="5" y="6"/>'


def test_mark_and_label_are_one_named_link() -> None:
    """Two neighbours with one address become one link with a title; text and names are escaped."""
    inside = (
        f'<a xlink:href="a/?b&amp;c" target="_blank"><path d="M 0 0" style="fill: {INK}"/></a>'
        f'<a xlink:href="a/?b&amp;c"><text x="1" y="2" transform="rotate(-0 1 2)">M &lt; 1</text></a>'
    )
    assert cleaned(inside, links={"a/?b&c": "M & 1"}) == (
        '<a href="a/?b&amp;c"><title>M &amp; 1</title><path class="f-ink" d="M0 0"/><text x="1" y="2">M &lt; 1</text></a>'
    )


def test_what_leaves_no_mark_goes() -> None:
    """Metadata, style elements, empty groups and paths without paint."""
    assert cleaned('<metadata>x</metadata><defs><style>*{}</style></defs><g><path d="M 0 0" style="fill: none"/></g>') == ""


def test_short_numbers_keep_opacity() -> None:
    """Coordinates have one decimal, opacities two."""
    path = f'<path d="M -0.04 -12.26" style="fill: {INK}; fill-opacity: 0.28"/>'
    assert cleaned(path) == '<path class="f-ink" fill-opacity="0.28" d="M0 -12.3"/>'
