"""What every chart promises, whatever it shows: a new one is covered by its line in the registry."""

import re
from collections import Counter
from functools import cache
from typing import Any
from xml.etree.ElementTree import Element, fromstring

import matplotlib
import pytest

from sitegen.charts import map_figure, sky_map
from sitegen.charts.chart import Chart, Drawn, drawn
from sitegen.charts.house_style import WIDTH
from sitegen.charts.lettering import box_of
from sitegen.charts.registry import CHARTS
from tests.charts.speaking import THEME, VOICE

PHONE_PX = 360 - 2 * 16  # the narrowest page less its margins of a rem each
SIDES = {"start": "left", "middle": "center", "end": "right"}

pytestmark = pytest.mark.parametrize("chart", CHARTS, ids=lambda chart: chart.name)


def made(chart: Chart[Any]) -> Drawn:
    found = drawn(chart, chart.example, VOICE, "k")
    assert found is not None
    return found


@cache
def kept(name: str) -> Drawn:
    """Drawn once for all promises but the first."""
    return made(next(chart for chart in CHARTS if chart.name == name))


def elements(chart: Chart[Any]) -> list[Element]:
    return [element for svg in kept(chart.name).svgs for element in fromstring(svg).iter()]


def test_the_same_values_give_the_same_bytes(chart: Chart[Any]) -> None:
    """Whatever matplotlib is set to on this machine."""
    first = made(chart)
    with matplotlib.rc_context({"font.size": 31.0, "svg.fonttype": "path", "axes.grid": True, "lines.linewidth": 9.0}):
        assert made(chart) == first


def test_a_figure_that_served_before_leaves_no_trace(chart: Chart[Any]) -> None:
    """Figures are handed back and used again; a new one gives the same bytes."""
    made(sky_map.CHART)
    used = made(chart)
    map_figure._empty.clear()
    assert made(chart) == used


def test_nothing_that_the_site_forbids(chart: Chart[Any]) -> None:
    """No style attribute, style element, metadata, colour of its own, or target of a link."""
    for element in elements(chart):
        assert element.tag not in ("style", "metadata", "script")
        assert not {"style", "target", "font-family"} & set(element.attrib)
        assert not any("#" in value for key, value in element.attrib.items() if key in ("fill", "stroke"))


def test_colours_are_classes_of_the_stylesheet(chart: Chart[Any]) -> None:
    """Every class has a rule in charts.css, or is a passband, which the build gives one."""
    known = set(re.findall(r"\.([\w-]+)", (THEME / "look" / "charts.css").read_text("utf-8")))
    used = {name for element in elements(chart) for name in element.get("class", "").split()}
    assert {name for name in used if not re.fullmatch(r"nm(\d+-(broad|line|doublet))?", name)} - known == set()


def test_ids_are_its_own(chart: Chart[Any]) -> None:
    """All start with the key of the chart, none occurs twice, and every reference meets one."""
    ids = [element.get("id", "") for element in elements(chart) if element.get("id")]
    assert max(Counter(ids).values()) == 1
    assert all(name.startswith("k-") for name in ids)
    text = "".join(kept(chart.name).svgs)
    referred = re.findall(r'url\(#([^)]+)\)|<use href="#([^"]+)"|aria-\w+="([^"]+)"', text)
    assert {name for found in referred for name in found if name} <= set(ids)


def test_it_says_what_it_shows(chart: Chart[Any]) -> None:
    """A sentence as its title, and a title and a description in every panel."""
    found = kept(chart.name)
    assert len(found.title.split()) >= 4
    for svg in found.svgs:
        title, described = fromstring(svg)[:2]
        assert title.tag == "title" and title.text
        assert described.tag == "desc" and described.text and described.text.endswith(".")


def test_the_table_has_its_numbers(chart: Chart[Any]) -> None:
    """Rows as wide as their heads; a link for each row or for none."""
    table = kept(chart.name).table
    assert table.rows
    assert {len(row) for row in table.rows} == {len(table.heads)}
    assert len(table.links) in (0, len(table.rows))
    assert all(cell for row in table.rows for cell in row)


def test_text_is_large_enough_on_a_phone(chart: Chart[Any]) -> None:
    """11 px where a panel is as wide as a phone of 360 px lets it be."""
    sizes = [float(element.get("font-size", 0)) for element in elements(chart) if element.tag == "text"]
    assert sizes
    assert min(sizes) * PHONE_PX / WIDTH >= 11.0


def test_lines_are_thick_enough_on_a_phone(chart: Chart[Any]) -> None:
    """One pixel, for every line that is drawn."""
    widths = [float(element.get("stroke-width", 1)) for element in elements(chart) if "s-" in element.get("class", "")]
    assert min(width for width in widths if width) * PHONE_PX / WIDTH >= 1.0


def test_text_stays_in_its_panel(chart: Chart[Any]) -> None:
    """No label runs out of the panel, even in a wide face."""
    for svg in kept(chart.name).svgs:
        root = fromstring(svg)
        height = float(root.attrib["viewBox"].split()[3])
        for element in root.iter("text"):
            x, y = float(element.attrib["x"]), float(element.attrib["y"])
            words = (element.text or "").replace("\u202f", "")
            left, _, right, _ = box_of(x, y, SIDES[element.get("text-anchor", "start")], words)
            assert left >= -6.0 and right <= WIDTH + 6.0, words
            assert 8.0 <= y <= height, element.text


def test_links_have_names(chart: Chart[Any]) -> None:
    """Each link in a panel leads to an address of the table and says where; a panel with links is no plain picture."""
    for svg in kept(chart.name).svgs:
        root = fromstring(svg)
        links = list(root.iter("a"))
        assert root.get("role") == ("group" if links else "img")
        for link in links:
            assert link.get("href") in kept(chart.name).table.links
            assert link[0].tag == "title" and link[0].text


def test_a_panel_is_light(chart: Chart[Any]) -> None:
    """A page may hold several: none is heavier than 45 kB."""
    assert max(len(svg.encode()) for svg in kept(chart.name).svgs) < 45_000
