"""Words and numbers about a picture -> an XMP packet after Astronomy Visualization Metadata 1.2.

Names, containers and namespaces are the AVM standard's (version 1.2 adds PublicationID and ProposalID to 1.1); the table
below was checked against an independent reader, pyavm, which the tests repeat. Packet and RDF form: XMP Specification
Part 1 (ISO 16684-1), 7.3. Values are taken as they come: what they mean, and whether they are right, is the caller's affair.
"""

from collections.abc import Mapping, Sequence
from html import escape  # xml.sax.saxutils has one too, and loads half a web client with it
from typing import Literal

from msgspec import Struct

Form = Literal["text", "words", "list", "set"]  # plain text, text in a language, ordered list, unordered list
Value = str | float | int | Sequence[str | float | int | None]

NAMESPACES = {
    "avm": "http://www.communicatingastronomy.org/avm/1.0/",
    "dc": "http://purl.org/dc/elements/1.1/",
    "photoshop": "http://ns.adobe.com/photoshop/1.0/",
    "xmpRights": "http://ns.adobe.com/xap/1.0/rights/",
}
# the begin attribute is U+FEFF, which tells a scanner the encoding; the id is XMP's own constant
HEAD = '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>'
TAIL = '<?xpacket end="r"?>'
UNKNOWN = "-"  # AVM's own word for the element of a list that is not known


class Tag(Struct, frozen=True):
    name: str
    form: Form
    length: int | None = None


def avm_packet(values: Mapping[str, Value]) -> bytes:
    """UTF-8, with the `<?xpacket?>` wrapper. Keys are AVM names (`Title`, `Spatial.Scale`); an unknown key or a list
    of the wrong length is a ValueError. None inside a list is written "-". The same values give the same bytes."""
    unknown = sorted(set(values) - set(TAGS))
    if unknown:
        raise ValueError(f"AVM 1.2 has no {', '.join(unknown)}")
    values = {"MetadataVersion": "1.2", **values}
    properties = [_property(TAGS[key], values[key], key) for key in sorted(values)]
    spaces = "".join(f' xmlns:{prefix}="{uri}"' for prefix, uri in NAMESPACES.items())
    lines = [
        HEAD,
        '<x:xmpmeta xmlns:x="adobe:ns:meta/">',
        '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
        f'<rdf:Description rdf:about=""{spaces}>',
        *properties,
        "</rdf:Description>",
        "</rdf:RDF>",
        "</x:xmpmeta>",
        TAIL,
    ]
    return "\n".join(lines).encode("utf-8")


def _property(tag: Tag, value: Value, key: str) -> str:
    if tag.form == "text":
        return f"<{tag.name}>{_text(value)}</{tag.name}>"
    if tag.form == "words":
        return f'<{tag.name}><rdf:Alt><rdf:li xml:lang="x-default">{_text(value)}</rdf:li></rdf:Alt></{tag.name}>'
    items = [value] if isinstance(value, (str, int, float)) else list(value)
    if tag.length is not None and len(items) != tag.length:
        raise ValueError(f"{key} has {tag.length} values, not {len(items)}")
    container = "Seq" if tag.form == "list" else "Bag"
    body = "".join(f"<rdf:li>{_text(item)}</rdf:li>" for item in items)
    return f"<{tag.name}><rdf:{container}>{body}</rdf:{container}></{tag.name}>"


def _text(value: object) -> str:
    """Whole precision of a float; characters that XML 1.0 cannot hold are left out."""
    if value is None:
        return UNKNOWN
    text = repr(float(value)) if isinstance(value, float) else str(value)
    return escape("".join(character for character in text if _is_xml(ord(character))), quote=False)


def _is_xml(code: int) -> bool:
    return code in (0x9, 0xA, 0xD) or 0x20 <= code <= 0xD7FF or 0xE000 <= code <= 0xFFFD or code >= 0x10000


def _avm(form: Form, *names: str, length: int | None = None) -> dict[str, Tag]:
    return {name: Tag(f"avm:{name}", form, length) for name in names}


# The diary's own needs and what a caller may well add; contact addresses are left out on purpose: nothing private.
TAGS: dict[str, Tag] = {
    "Creator": Tag("photoshop:Source", "text"),
    "Contact.Name": Tag("dc:creator", "list"),
    "Rights": Tag("xmpRights:UsageTerms", "words"),
    "Title": Tag("dc:title", "words"),
    "Headline": Tag("photoshop:Headline", "text"),
    "Description": Tag("dc:description", "words"),
    "Subject.Name": Tag("dc:subject", "set"),
    "Credit": Tag("photoshop:Credit", "text"),
    "Date": Tag("photoshop:DateCreated", "text"),
    **_avm("set", "Subject.Category", "PublicationID", "ProposalID"),
    **_avm("list", "Distance"),
    **_avm("text", "Distance.Notes", "ReferenceURL", "ID", "Type", "Image.ProductQuality"),
    **_avm("list", "Facility", "Instrument", "DatasetID"),
    **_avm("list", "Spectral.ColorAssignment", "Spectral.Band", "Spectral.Bandpass", "Spectral.CentralWavelength"),
    **_avm("list", "Temporal.StartTime", "Temporal.IntegrationTime"),
    **_avm("words", "Spectral.Notes", "Spatial.Notes"),
    **_avm("text", "Spatial.CoordinateFrame", "Spatial.Equinox", "Spatial.Rotation"),
    **_avm("list", "Spatial.ReferenceValue", "Spatial.ReferenceDimension", "Spatial.ReferencePixel", "Spatial.Scale", length=2),
    # superseded in 1.1, and still the one field by which readers know a mirrored picture: they take Scale without its sign
    **_avm("list", "Spatial.CDMatrix", length=4),
    **_avm("text", "Spatial.CoordsystemProjection", "Spatial.Quality", "Spatial.FITSheader"),
    **_avm("text", "Publisher", "PublisherID", "ResourceID", "ResourceURL", "MetadataDate", "MetadataVersion"),
}
