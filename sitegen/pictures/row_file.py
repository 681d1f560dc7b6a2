"""Pixels worked out band by band -> a plain file that libvips reads row by row, without mapping all of it into memory.

An uncompressed TIFF in one strip (TIFF 6.0, sections 2 and 8), 16 bits, grey or RGB, low byte first.
"""

import struct
from collections.abc import Iterable
from pathlib import Path

import numpy as np
import pyvips
from numpy.typing import NDArray

LONG, SHORT = 4, 3


def written(bands_of_rows: Iterable[NDArray[np.uint16]], width_px: int, height_px: int, channels: int, target: Path) -> Path:
    """Each band (rows, width, channels), from the top; together `height_px` rows."""
    with target.open("wb") as stream:
        stream.write(_head(width_px, height_px, channels))
        for rows in bands_of_rows:
            stream.write(np.ascontiguousarray(rows, dtype="<u2").tobytes())
    return target


def opened_once(path: Path) -> pyvips.Image:
    """For one pass from top to bottom."""
    return pyvips.Image.tiffload(str(path), access="sequential", unlimited=True)


def _head(width_px: int, height_px: int, channels: int) -> bytes:
    tags = {256: width_px, 257: height_px, 259: 1, 262: 2 if channels == 3 else 1, 277: channels, 278: height_px, 284: 1}
    end = 8 + 2 + 12 * (len(tags) + 3) + 4
    pixels = end + 2 * channels
    rows = [(tag, LONG, 1, value) for tag, value in tags.items()]
    rows.append((258, SHORT, channels, end if channels == 3 else 16))
    rows += [(273, LONG, 1, pixels), (279, LONG, 1, width_px * height_px * channels * 2)]
    directory = b"".join(struct.pack("<HHII", *row) for row in sorted(rows))
    return struct.pack("<2sHIH", b"II", 42, 8, len(rows)) + directory + bytes(4) + struct.pack("<H", 16) * channels
