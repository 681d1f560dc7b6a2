"""AVM's Spatial keywords out of the XMP packet that a picture carries; whoever wrote it, nothing in it is trusted.

Property forms: XMP Specification Part 1 (ISO 16684-1), 7.4 to 7.9: an attribute, an element's text, or an rdf:Seq, Bag or
Alt of rdf:li.
"""

from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree

from sitegen.pictures.avm import NAMESPACES
from sitegen.pictures.records import PictureSource
from sitegen.pictures.source import header

XMP_FIELD = "xmp-data"
LONGEST_PACKET = 1_000_000
RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
AVM = f"{{{NAMESPACES['avm']}}}"


def spatial_keywords(path: Path, source: PictureSource) -> dict[str, object]:
    """`Spatial.*` as text or lists of text; empty where the file carries none, or nothing that can be read."""
    if source.format == "fits":
        return {}
    image = header(path, source.format)
    packet = image.get(XMP_FIELD) if XMP_FIELD in image.get_fields() else b""
    return spatial_in(bytes(packet))


def spatial_in(packet: bytes) -> dict[str, object]:
    """What `spatial_keywords` gives, of the packet itself."""
    if not packet or len(packet) > LONGEST_PACKET or b"<!" in packet:  # no declarations: entities could grow without end
        return {}
    try:
        tree = ElementTree.fromstring(packet.strip(b"\0"))
    except (ElementTree.ParseError, ValueError):
        return {}
    keywords: dict[str, object] = {}
    for description in tree.iter(f"{RDF}Description"):
        keywords |= _spatial(description.attrib)
        keywords |= _spatial({child.tag: _value(child) for child in description})
    return keywords


def _spatial(properties: Mapping[str, object]) -> dict[str, object]:
    start = f"{AVM}Spatial."
    return {name.removeprefix(AVM): value for name, value in properties.items() if name.startswith(start)}


def _value(element: ElementTree.Element) -> object:
    items = [(item.text or "").strip() for item in element.iter(f"{RDF}li")]
    return items if items else (element.text or "").strip()
