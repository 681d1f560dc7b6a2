"""The fainter stars of Tycho-2 that Gaia's bundled table lacks, packed by place: a field's stars are slices of a mapped file.

The sky is cut into rings of one degree of declination from the south, each ring into equal cells about one degree wide. The
file is a head (`MAGIC`, digest of all that follows), the first star of each cell, then one array after the other: where a star
lies in its cell (right ascension, declination: 65536 steps) and its V_T (steps of 0.0625 mag), brightest first within a cell.
The digest spares every rebuild a reading of seven megabytes (`build/code_version.py`). `tests/tools/trim_stars.py` writes it.
"""

from functools import cache
from pathlib import Path

import numpy as np
import numpy.typing as npt
from msgspec import Struct

Array = npt.NDArray[np.float64]

FILE = Path(__file__).parent / "data" / "tycho2_faint.bin"
MAGIC = b"TYC2FNT1"
DIGEST_BYTES = 24
RINGS = 180
STEPS = 65536
"""In a cell: a place is off by at most 0.03 arcseconds."""
MAGNITUDE_STEP = 0.0625


class Grid(Struct, frozen=True):
    """Cells of each ring, and the number of each ring's first cell; one more at the end."""

    cells: npt.NDArray[np.int64]
    first: npt.NDArray[np.int64]

    def corner(self, cell: npt.NDArray[np.int64]) -> tuple[Array, Array, Array]:
        """Lowest right ascension and declination of each cell, and its width in right ascension, degrees."""
        ring = np.searchsorted(self.first, cell, side="right") - 1
        width: Array = 360.0 / self.cells[ring]
        return (cell - self.first[ring]) * width, ring.astype(np.float64) - 90.0, width


class PackedStars(Struct, frozen=True):
    """The file as it lies on the disk."""

    starts: npt.NDArray[np.uint32]
    across: npt.NDArray[np.uint16]
    up: npt.NDArray[np.uint16]
    magnitude: npt.NDArray[np.uint8]


@cache
def grid() -> Grid:
    """About 41,000 cells."""
    middle = np.radians(np.arange(RINGS) - 89.5)
    cells = np.maximum(np.ceil(360.0 * np.cos(middle)), 1).astype(np.int64)
    return Grid(cells, np.concatenate([[0], np.cumsum(cells)]))


@cache
def _packed() -> PackedStars:
    content = np.memmap(FILE, dtype=np.uint8, mode="r")
    if content[: len(MAGIC)].tobytes() != MAGIC:
        raise ValueError(f"{FILE.name} is not a table of stars")
    cells = int(grid().first[-1])
    at = len(MAGIC) + DIGEST_BYTES
    starts = content[at : at + 4 * (cells + 1)].view("<u4")
    stars, at = int(starts[-1]), at + 4 * (cells + 1)
    across, up = (content[at + 2 * stars * part : at + 2 * stars * (part + 1)].view("<u2") for part in (0, 1))
    return PackedStars(starts, across, up, content[at + 4 * stars : at + 5 * stars])


def faint_stars(ra_deg: float, dec_deg: float, radius_deg: float) -> tuple[Array, Array, Array]:
    """ICRS right ascension and declination (degrees, epoch 2000.0) and V_T of the stars of all cells that the circle touches."""
    packed = _packed()
    parts = [slice(int(packed.starts[first]), int(packed.starts[last])) for first, last in _runs(ra_deg, dec_deg, radius_deg)]
    index = np.concatenate([np.arange(part.start, part.stop) for part in parts])
    cell = np.searchsorted(packed.starts, index, side="right") - 1
    west, south, width = grid().corner(cell.astype(np.int64))
    ra = west + (packed.across[index] + 0.5) / STEPS * width
    dec = south + (packed.up[index] + 0.5) / STEPS
    return ra, dec, packed.magnitude[index] * MAGNITUDE_STEP


def _runs(ra_deg: float, dec_deg: float, radius_deg: float) -> list[tuple[int, int]]:
    """(first cell, the one behind the last) of each unbroken run of cells that the circle touches, and some beyond."""
    lowest, highest = (min(max(int(np.floor(dec_deg + side + 90.0)), 0), RINGS - 1) for side in (-radius_deg, radius_deg))
    half_deg = _half_width_deg(dec_deg, radius_deg)
    return [run for ring in range(lowest, highest + 1) for run in _runs_of_ring(ring, ra_deg, half_deg)]


def _half_width_deg(dec_deg: float, radius_deg: float) -> float:
    """How far in right ascension the circle reaches: sin(width) = sin(radius) / cos(declination); all around a pole within it."""
    if abs(dec_deg) + radius_deg >= 90.0:
        return 180.0
    return float(np.degrees(np.arcsin(min(np.sin(np.radians(radius_deg)) / np.cos(np.radians(dec_deg)), 1.0))))


def _runs_of_ring(ring: int, ra_deg: float, half_deg: float) -> list[tuple[int, int]]:
    cells, first = int(grid().cells[ring]), int(grid().first[ring])
    low, high = (int(np.floor((ra_deg + side) * cells / 360.0)) for side in (-half_deg, half_deg))
    if high - low + 1 >= cells:
        return [(first, first + cells)]
    low, high = low % cells, high % cells
    if low <= high:
        return [(first + low, first + high + 1)]
    return [(first + low, first + cells), (first, first + high + 1)]
