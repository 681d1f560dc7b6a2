"""An XMP packet into a finished JPEG, PNG or WebP, beside pixels that stay as they are: new words cost no new encoding.

Where each format keeps it: XMP Specification Part 3 (Adobe, 2020), sections 1.1.3 (JPEG), 1.1.5 (PNG); WebP Container
Specification (Google), "Extended File Format".
"""

import struct
import zlib

from sitegen.pictures.records import PictureProblem

JPEG_XMP = b"http://ns.adobe.com/xap/1.0/\0"
PNG_XMP = b"XML:com.adobe.xmp\0\0\0\0\0"
WEBP_HAS_XMP, WEBP_HAS_ALPHA = 0x04, 0x10
LONGEST_IN_JPEG = 65_533 - len(JPEG_XMP)


def with_packet(content: bytes, packet: bytes) -> bytes:
    """The same picture carrying `packet`. `content` is one of our own encodings, without XMP so far."""
    if content.startswith(b"\xff\xd8"):
        return _into_jpeg(content, packet)
    if content.startswith(b"\x89PNG"):
        return _into_png(content, packet)
    return _into_webp(content, packet)


def _into_jpeg(content: bytes, packet: bytes) -> bytes:
    """Before the first other segment than APP0, which a JFIF file must have first."""
    if len(packet) > LONGEST_IN_JPEG:
        raise PictureProblem(f"what it should carry about itself takes {len(packet)} bytes; a JPEG holds {LONGEST_IN_JPEG}")
    position = 2
    if content[2:4] == b"\xff\xe0":
        position += 2 + int.from_bytes(content[4:6], "big")
    segment = b"\xff\xe1" + struct.pack(">H", 2 + len(JPEG_XMP) + len(packet)) + JPEG_XMP + packet
    return content[:position] + segment + content[position:]


def _into_png(content: bytes, packet: bytes) -> bytes:
    """After IHDR, whose place and length are fixed."""
    data = b"iTXt" + PNG_XMP + packet
    chunk = struct.pack(">I", len(data) - 4) + data + struct.pack(">I", zlib.crc32(data))
    return content[:33] + chunk + content[33:]


def _into_webp(content: bytes, packet: bytes) -> bytes:
    """Needs the extended form: VP8X first, XMP last."""
    chunks = content[12:] if content[12:16] == b"VP8X" else _extended_header(content[12:]) + content[12:]
    chunks = chunks[:8] + bytes([chunks[8] | WEBP_HAS_XMP]) + chunks[9:]
    chunks += b"XMP " + struct.pack("<I", len(packet)) + packet + b"\0" * (len(packet) % 2)
    return b"RIFF" + struct.pack("<I", 4 + len(chunks)) + b"WEBP" + chunks


def _extended_header(chunks: bytes) -> bytes:
    flags = 0
    if chunks[:4] == b"VP8 ":
        width, height = (int(side) & 0x3FFF for side in struct.unpack_from("<HH", chunks, 14))
    else:
        bits = int(struct.unpack_from("<I", chunks, 9)[0])
        width, height = (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
        flags = WEBP_HAS_ALPHA if bits >> 28 & 1 else 0
    sides = (width - 1).to_bytes(3, "little") + (height - 1).to_bytes(3, "little")
    return b"VP8X" + struct.pack("<I", 10) + bytes([flags, 0, 0, 0]) + sides
