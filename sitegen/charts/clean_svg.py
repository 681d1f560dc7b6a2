"""From matplotlib's SVG to one that may stand in a page: no style attributes or elements (the site's policy forbids them),
colours as classes, ids that start with the chart's key, short numbers, a title and a description."""

import re
from collections.abc import Iterator, Mapping
from html import escape, unescape
from xml.etree.ElementTree import Element, fromstring

from sitegen.charts.house_style import fill_class, line_class
from sitegen.charts.map_figure import class_of
from sitegen.charts.plain_letters import as_written
from sitegen.charts.svg_writer import Frame, panel_svg

_HREF = "{http://www.w3.org/1999/xlink}href"
_DROPPED = {"metadata", "style"}
_KEPT_STYLES = (
    "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-dasharray", "stroke-dashoffset", "fill-rule",
    "font-size", "font-style", "font-weight", "text-anchor", "opacity", "fill-opacity", "stroke-opacity",
)  # fmt: skip
_KEPT_ATTRIBUTES = ("d", "x", "y", "width", "height", "r", "cx", "cy", "transform", "clip-path", "points")
_NUMBER = re.compile(r"-?\d+\.\d+")
_NO_TURN = re.compile(r"rotate\(-?0(\.0+)? [^)]*\)")
_SAME_LINK = re.compile(r'(<a href="([^"]*)">(?:(?!</a>).)*)</a><a href="\2">')
_LINK = re.compile(r'<a href="([^"]*)">')
_POINT = re.compile(r"M([^ML]+)L\1(?![^M])")
_REFERENCE = re.compile(r"#([\w.-]+)")


def clean_svg(text: str, key: str, title: str, described: str, links: Mapping[str, str], halo: bool = False) -> str:
    """The SVG for inside a page. `key` starts every id; `links` names what its marks lead to."""
    root = fromstring(text)
    names = _names(root, key)
    body = _named(_one_link("".join(_inside(root, names))), links)
    return panel_svg(Frame(key, title, described, root.attrib["viewBox"], bool(links), halo), body)


def _names(root: Element, key: str) -> dict[str, str]:
    """New ids for those that something refers to; the others go."""
    used: dict[str, str] = {}
    for element in root.iter():
        for value in (element.get(_HREF, ""), element.get("clip-path", "")):
            reference = _REFERENCE.search(value)
            if reference and _local(element) != "a":
                used.setdefault(reference[1], f"{key}-{len(used)}")
    return used


def _local(element: Element) -> str:
    return element.tag.rpartition("}")[2]


def _inside(element: Element, names: dict[str, str]) -> Iterator[str]:
    for child in element:
        yield from _written(child, names)


def _written(element: Element, names: dict[str, str]) -> Iterator[str]:
    name = _local(element)
    if name in _DROPPED or (name == "path" and not _shows(element)):
        return
    inner = "".join(_inside(element, names)) + (escape(as_written(element.text)) if name == "text" and element.text else "")
    attributes = dict(_attributes(element, names))
    if name in ("g", "defs") and not inner:
        return
    if name == "g" and not attributes:
        yield inner
        return
    opened = name + "".join(f' {key}="{escape(value)}"' for key, value in attributes.items())
    yield f"<{opened}>{inner}</{name}>" if inner else f"<{opened}/>"


def _shows(element: Element) -> bool:
    """Whether a path leaves a mark: it has paint, or waits in <defs> to be used."""
    style = _style(element)
    return element.get("id") is not None or style.get("fill") != "none" or "stroke" in style


def _attributes(element: Element, names: dict[str, str]) -> Iterator[tuple[str, str]]:
    if (old := element.get("id")) in names:
        yield "id", names[old or ""]
    if href := element.get(_HREF):
        yield "href", href if _local(element) == "a" else f"#{names[href[1:]]}"
    style = _style(element)
    classes = [class_name for paint in ("fill", "stroke") if (class_name := _class(paint, style.get(paint)))]
    if classes:
        yield "class", " ".join(classes)
    if style.get("fill") == "none":
        yield "fill", "none"
    if "f-milky" in classes:
        yield "fill-rule", "evenodd"  # its edges are rings inside each other, which matplotlib has no word for
    for key in _KEPT_STYLES:
        if key in style:
            yield key, _short(style[key].removesuffix("px"), 2)
    for key in _KEPT_ATTRIBUTES:
        if key in element.attrib and (value := _NO_TURN.sub("", element.attrib[key])):
            yield key, _REFERENCE.sub(lambda reference: f"#{names[reference[1]]}", value) if key == "clip-path" else _short(value)


def _style(element: Element) -> dict[str, str]:
    pairs = (part.partition(":") for part in element.get("style", "").split(";"))
    return {key.strip(): value.strip() for key, _, value in pairs if key.strip()}


def _class(paint: str, colour: str | None) -> str | None:
    """'f-ink' for a fill, 's-ink' for a stroke."""
    if colour is None or colour == "none":
        return None
    return fill_class(class_of(colour)) if paint == "fill" else line_class(class_of(colour))


def _one_link(body: str) -> str:
    """A mark and its label, drawn one after the other, become one link."""
    merged = _SAME_LINK.sub(r"\1", body)
    return merged if merged == body else _one_link(merged)


def _named(body: str, links: Mapping[str, str]) -> str:
    """Each link says where it leads, whether its label found room or not."""
    return _LINK.sub(lambda link: f"{link[0]}<title>{escape(links[unescape(link[1])])}</title>", body)


def _short(text: str, decimals: int = 1) -> str:
    """Short numbers (a tenth of a unit is less than a tenth of a pixel), and no more white space than they need."""
    shorter = _NUMBER.sub(lambda number: f"{round(float(number[0]), decimals) + 0.0:g}", text)
    tight = re.sub(r"\s*([MLCQZz])\s*", r"\1", " ".join(shorter.split()))
    return _POINT.sub(r"M\1h0", tight)
