"""One object out of all that the tables say of it: OpenNGC, the bundled tables, the corrections, the names."""

from collections.abc import Iterable
from functools import cache

from msgspec.structs import replace

from sitegen.catalogue import names, open_ngc, tables
from sitegen.catalogue.designation import name_key, read_designation
from sitegen.catalogue.sky_object import SkyObject

TABLES_SOURCE = "Open data of d3-celestial"
TARGETS_SOURCE = "Positions compiled for this program"
# The order in which an object's designations are told; the first that it has is its name unless a table names it.
CATALOGUES = (
    "M", "NGC", "IC", "Sh2", "Caldwell", "Barnard", "vdB", "vdBH", "Abell", "LDN", "LBN", "RCW", "Gum", "Collinder", "Melotte",
    "Cederblad", "HCG", "Arp", "PK", "PN", "SNR",
)  # fmt: skip


def by_designation(designation: str) -> SkyObject | None:
    """The object of a catalogue number in its usual form; None where no table has it."""
    kept = kept_under(designation)
    own = open_ngc.own_name(kept)
    listed = open_ngc.entry(own) if own else tabled(kept)
    return complete(listed, kept)


def kept_under(designation: str) -> str:
    """The designation under which the tables keep the object."""
    return tables.same_object().get(designation) or _also_designated().get(designation) or designation


def is_kept_elsewhere(designation: str) -> bool:
    """True for a row that only repeats an object kept under another designation."""
    return kept_under(designation) != designation or open_ngc.own_name(designation) is not None


def tabled(designation: str) -> SkyObject | None:
    """The object as the bundled tables have it."""
    row = tables.deep_sky_row(designation)
    if row is None or row.kind is None or row.ra_deg is None or row.dec_deg is None:
        return None
    return SkyObject(
        designation, row.ra_deg, row.dec_deg, row.kind, row.size_arcmin, None, row.magnitude, (designation,), TABLES_SOURCE
    )


def star(row: names.StarRow) -> SkyObject:
    """A star with a proper name."""
    name, bayer, ra_deg, dec_deg, magnitude = row
    return SkyObject(name, ra_deg, dec_deg, "star", None, None, magnitude, (bayer,) if bayer else (), TABLES_SOURCE)


def complete(listed: SkyObject | None, designation: str = "") -> SkyObject | None:
    """Put the corrections over what the big tables found, and bring all its names together."""
    own = tuple(dict.fromkeys((listed.name, *listed.aliases))) if listed else (designation,)
    target = next((tables.imaging_targets()[name] for name in own if name in tables.imaging_targets()), None)
    corrected = _corrected(listed, target) if target else listed
    return _named(corrected, own, target) if corrected else None


def _corrected(sky_object: SkyObject | None, target: tables.Target) -> SkyObject | None:
    listed = target.listed
    if sky_object is None:
        return _new(listed)
    if listed.ra_deg is not None and listed.dec_deg is not None:
        sky_object = replace(sky_object, ra_deg=listed.ra_deg, dec_deg=listed.dec_deg, source=TARGETS_SOURCE)
    if listed.size_arcmin is not None:
        sky_object = replace(sky_object, size_arcmin=listed.size_arcmin, position_angle_deg=target.position_angle_deg)
    if listed.kind is not None:
        # A star's brightness says nothing of the nebula that was meant.
        sky_object = replace(sky_object, kind=listed.kind, magnitude=None if sky_object.kind == "star" else sky_object.magnitude)
    return sky_object


def _new(listed: tables.Listed) -> SkyObject | None:
    if listed.ra_deg is None or listed.dec_deg is None or listed.kind is None:
        return None
    name = listed.designation
    return SkyObject(name, listed.ra_deg, listed.dec_deg, listed.kind, listed.size_arcmin, None, None, (name,), TARGETS_SOURCE)


def _named(sky_object: SkyObject, own: tuple[str, ...], target: tables.Target | None) -> SkyObject:
    also = target.also_called if target else ()
    never = target.not_called if target else ()
    repeated = [other for spelling in own for other in _repeats().get(spelling, ())]
    designated = [*own, *(spelling for spelling in also if read_designation(spelling)), *repeated]
    called = [*also, *(name for spelling in (*own, *designated) for name in names.common_names_of(spelling)), *own]
    ordered = sorted(map(_as_told, designated), key=_rank)
    catalogued = [spelling for spelling in ordered if _rank(spelling) < len(CATALOGUES)]
    name = (target and target.name) or (catalogued[0] if catalogued else sky_object.name)
    common = (spelling for spelling in called if read_designation(spelling) is None and _rank(spelling) == len(CATALOGUES))
    ranked = (*catalogued, *common, *ordered)
    return replace(sky_object, name=name, aliases=_distinct(ranked, without=(name, *never)))


def _as_told(designation: str) -> str:
    """Galaxy clusters beyond the 86 planetary nebulae are told as Abell's."""
    catalogue, _, number = designation.partition(" ")
    if catalogue == "ACO" and not (number.isdigit() and int(number) <= 86):
        return f"Abell {number}"
    return designation


def _rank(designation: str) -> int:
    catalogue = "Sh2" if designation.startswith("Sh2-") else designation.split(" ")[0]
    numbered = any(character.isdigit() for character in designation) or designation.startswith("Abell S")
    return CATALOGUES.index(catalogue) if catalogue in CATALOGUES and numbered else len(CATALOGUES)


def _distinct(spellings: Iterable[str], without: tuple[str, ...]) -> tuple[str, ...]:
    """Each name once, spelt as it came first."""
    keys = {_key(name) for name in without}
    seen: dict[str, str] = {}
    for name in spellings:
        seen.setdefault(_key(name), name)
    return tuple(name for key, name in seen.items() if key not in keys)


def _key(name: str) -> str:
    return read_designation(name) or name_key(name)


@cache
def _also_designated() -> dict[str, str]:
    """The designations that the table of targets gives as another name of one of its objects."""
    pairs = ((read_designation(name), key) for key, target in tables.imaging_targets().items() for name in target.also_called)
    return {designation: key for designation, key in pairs if designation}


@cache
def _repeats() -> dict[str, tuple[str, ...]]:
    """Designation to the others under which the same object is found."""
    repeats: dict[str, list[str]] = {}
    for other, kept in tables.same_object().items():
        repeats.setdefault(kept, []).append(other)
    return {kept: tuple(others) for kept, others in repeats.items()}
