"""From a name to an object of the sky, and from a place to the objects around it."""

import math
from collections.abc import Iterable, Iterator

from sitegen.catalogue import names, open_ngc, resolve, tables
from sitegen.catalogue.designation import read_designation
from sitegen.catalogue.sky_object import SkyObject

_NUMBERED_BY_SURVEYS = ("PGC", "UGC", "UGCA", "ESO", "MCG", "MWSC", "ACO", "PK", "PN", "SNR")


def find_object(name: str) -> SkyObject | None:
    """The object with this catalogue number or common name, however it is spelt; None where no table has it.

    'm83', 'NGC5236', 'sh 2-132', 'Barnard 33', 'Caldwell 65', 'helix nebula', 'Rosette' and 'Vega' are all understood.
    An Abell number up to 86 is the planetary nebula, above it the galaxy cluster ('ACO 39' is always the cluster).
    Positions are good to an arcminute for NGC and IC objects and to several for LBN, LDN, RCW and Sharpless nebulae.
    """
    designation = read_designation(name) or names.designation_called(name)
    sky_object = resolve.by_designation(designation) if designation else None
    if sky_object is None and (star := names.star_called(name)):
        return resolve.star(star)
    return sky_object


def suggest_name(name: str) -> str | None:
    """The nearest name that `find_object` knows, for a hint; None where none is near.

    A well-formed number that its catalogue does not have is near to nothing.
    """
    if read_designation(name):
        return None
    renamed = names.with_nearest_prefix(name)
    if renamed and resolve.by_designation(renamed):
        return renamed
    return names.nearest_name(name)


def objects_near(ra_deg: float, dec_deg: float, radius_deg: float) -> tuple[SkyObject, ...]:
    """Deep-sky objects whose centre lies within the radius, the best known first, each once.

    Nebulae that two catalogues list under one outline are told once, under the better known name.
    """
    around = _around(ra_deg, dec_deg, radius_deg)
    inside = (sky_object for sky_object in around if _apart(sky_object, ra_deg, dec_deg) <= radius_deg)
    return tuple(_once_each(sorted(inside, key=_fame)))


def separation_deg(ra_deg: float, dec_deg: float, other_ra_deg: float, other_dec_deg: float) -> float:
    """Angle between two directions, degrees (haversine formula, which keeps its digits at small angles)."""
    half_ra, half_dec = math.radians(other_ra_deg - ra_deg) / 2, math.radians(other_dec_deg - dec_deg) / 2
    across = math.cos(math.radians(dec_deg)) * math.cos(math.radians(other_dec_deg)) * math.sin(half_ra) ** 2
    return math.degrees(2 * math.asin(min(1.0, math.sqrt(math.sin(half_dec) ** 2 + across))))


def _apart(sky_object: SkyObject, ra_deg: float, dec_deg: float) -> float:
    return separation_deg(sky_object.ra_deg, sky_object.dec_deg, ra_deg, dec_deg)


def _around(ra_deg: float, dec_deg: float, radius_deg: float) -> Iterator[SkyObject]:
    """Every object that may lie in the circle: by its place in the tables, or by a corrected place wherever that is."""
    for entry in open_ngc.entries_between(dec_deg - radius_deg, dec_deg + radius_deg):
        if _apart(entry, ra_deg, dec_deg) <= radius_deg:
            yield resolve.complete(entry) or entry
    for designation in _tabled_around(ra_deg, dec_deg, radius_deg):
        sky_object = None if resolve.is_kept_elsewhere(designation) else resolve.by_designation(designation)
        if sky_object is not None:
            yield sky_object
    for designation, target in tables.imaging_targets().items():
        sky_object = resolve.by_designation(designation) if target.listed.ra_deg is not None else None
        if sky_object is not None:
            yield sky_object


def _tabled_around(ra_deg: float, dec_deg: float, reach_deg: float) -> Iterator[str]:
    for designation, row in tables.deep_sky().items():
        there_deg = float(row[2])
        if abs(there_deg - dec_deg) <= reach_deg and separation_deg(ra_deg, dec_deg, float(row[1]), there_deg) <= reach_deg:
            yield designation


def _fame(sky_object: SkyObject) -> tuple[int, float, float, str]:
    """Sorting key: Messier, then NGC and IC and what has a name, then other lists, last what only a survey numbered."""
    catalogue = sky_object.name.split(" ")[0].split("-")[0]
    if catalogue in _NUMBERED_BY_SURVEYS:
        step = 4
    else:
        step = {"M": 0, "NGC": 1, "IC": 1, "LDN": 3, "LBN": 3, "RCW": 3, "Cederblad": 3, "vdBH": 3, "Abell": 3}.get(catalogue, 2)
    extent_arcmin = sky_object.size_arcmin[0] if sky_object.size_arcmin else 0.0
    return step, -extent_arcmin, sky_object.magnitude if sky_object.magnitude is not None else 99.0, sky_object.name


def _once_each(objects: Iterable[SkyObject]) -> Iterator[SkyObject]:
    distinct: list[SkyObject] = []
    for sky_object in objects:
        if not any(_same_outline(sky_object, earlier) for earlier in distinct):
            distinct.append(sky_object)
            yield sky_object


def _same_outline(sky_object: SkyObject, other: SkyObject) -> bool:
    """True for one object told twice, and for two nebulae of about one size whose centres nearly coincide."""
    if sky_object.name == other.name:
        return True
    if sky_object.size_arcmin is None or other.size_arcmin is None or _dark(sky_object) != _dark(other):
        return False
    if not (_is_cloud(sky_object) and _is_cloud(other)):
        return False
    small, large = sorted((sky_object.size_arcmin[0], other.size_arcmin[0]))
    return large <= 2.5 * small and 60.0 * _apart(sky_object, other.ra_deg, other.dec_deg) <= large / 4.0


def _is_cloud(sky_object: SkyObject) -> bool:
    return "nebula" in sky_object.kind or sky_object.kind == "supernova remnant"


def _dark(sky_object: SkyObject) -> bool:
    return sky_object.kind == "dark nebula"
