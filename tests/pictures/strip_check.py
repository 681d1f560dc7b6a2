"""What a published picture still tells about its author, seen through readers that did not write it."""

import re
from pathlib import Path

import pyvips
from PIL import Image

# what Pillow reports of a file's form, not of its author
FORM = frozenset({
    "jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive", "progression", "adobe", "adobe_transform",
    "loop", "background", "timestamp", "duration", "default_image", "xmp", "XML:com.adobe.xmp", "dpi", "interlace",
})
MEANT = frozenset({"avm", "dc", "photoshop", "xmpRights", "rdf", "x", "xml", "xmlns"})
HARMLESS_SEGMENTS = ("APP0", "APP14")
PRIVATE_FIELDS = ("exif-", "iptc-", "icc-", "photoshop-", "jpeg-thumbnail-", "png-comment-", "gif-comment", "orientation")
XMP_SEGMENT = b"http://ns.adobe.com/xap/1.0/\0"


def strip_check(path: Path) -> tuple[str, ...]:
    """One line for each thing found that a published file should not carry: EXIF and maker notes by tag, colour
    profiles, comments, previews, XMP beyond the AVM packet's namespaces, bytes after the picture's end. Empty: clean."""
    with Image.open(path) as picture:
        kind = picture.format or ""
        found = [f"{kind} {key}" for key in sorted(map(str, picture.info)) if key not in FORM]
        found += [f"EXIF tag {tag}" for tag in sorted(picture.getexif())]
        found += [f"JPEG segment {name}" for name, content in getattr(picture, "applist", ()) if not _is_meant(name, content)]
        found += _strange_xmp(picture)
    content = path.read_bytes()
    found += [f"field {name}" for name in _fields(path)]
    found += [f"{after} bytes after the end" for after in [_bytes_after_end(content, kind)] if after]
    return tuple(found)


def _is_meant(name: str, content: bytes) -> bool:
    return name in HARMLESS_SEGMENTS or (name == "APP1" and content.startswith(XMP_SEGMENT))


def _strange_xmp(picture: Image.Image) -> list[str]:
    packet = picture.info.get("xmp") or picture.info.get("XML:com.adobe.xmp") or b""
    text = packet.decode("utf-8", "replace") if isinstance(packet, bytes) else str(packet)
    prefixes = set(re.findall(r"[<\s]([A-Za-z][\w.-]*):[\w.-]+", re.sub(r">[^<]*<", "><", text)))
    return [f"XMP of {prefix}" for prefix in sorted(prefixes - MEANT)]


def _fields(path: Path) -> list[str]:
    """The second reader tells EXIF tag by tag, maker notes, thumbnails, profiles, IPTC and comments."""
    return [name for name in pyvips.Image.new_from_file(str(path)).get_fields() if name.startswith(PRIVATE_FIELDS)]


def _bytes_after_end(content: bytes, kind: str) -> int:
    if kind == "JPEG":
        return len(content) - content.rindex(b"\xff\xd9") - 2
    if kind == "PNG":
        return len(content) - content.rindex(b"IEND") - 8
    return len(content) - int.from_bytes(content[4:8], "little") - 8 if kind == "WEBP" else 0
