"""The index of common names: which object each of them means, and which of them is nearest to a misspelt one."""

import re
from collections.abc import Iterator
from functools import cache

from sitegen.catalogue import open_ngc, tables
from sitegen.catalogue.designation import name_key, read_designation
from sitegen.problems import did_you_mean

_OMITTED_WORDS = ("Nebula", "Galaxy", "Cluster")
_PREFIXES = ("M", "NGC", "IC", "Sh2", "Barnard", "vdB", "LDN", "LBN", "Caldwell", "Abell", "RCW", "Collinder", "Melotte", "PK")
StarRow = tuple[str, str, float, float, float]


def designation_called(name: str) -> str | None:
    """The designation of the object with this common name. 'Rosette' stands for 'Rosette Nebula' where nothing
    else is meant by it; the bare name of a constellation stands for nothing."""
    names = _designations()
    key = name_key(name)
    if key in names:
        return names[key]
    if key in _constellation_keys():
        return None
    completed = {names[full] for full in _completed(key) if full in names}
    return completed.pop() if len(completed) == 1 else None


def star_called(name: str) -> StarRow | None:
    """The brightest star with this proper name or Bayer designation ('Alpha Lyrae')."""
    return _stars().get(name_key(name))


def common_names_of(designation: str) -> tuple[str, ...]:
    """The common names that lead to this designation, those that imagers use first."""
    return _names_by_designation().get(designation, ())


def nearest_name(name: str) -> str | None:
    """The nearest known name, as it is written; None where none is near."""
    names = _written()
    for full in _completed(name_key(name)):
        if full in names:
            return names[full]
    near = did_you_mean(name_key(name), names)
    return names[near] if near else None


def with_nearest_prefix(name: str) -> str | None:
    """'NGC 7000' for 'NCG 7000': the number kept, the nearest catalogue put before it. It may not exist."""
    misspelt = re.fullmatch(r"\s*([A-Za-z]+)[ -]?(\d[\w.+-]*)\s*", name)
    if misspelt is None or read_designation(name) is not None:
        return None
    near = did_you_mean(misspelt[1], _PREFIXES)
    return read_designation(f"{near} {misspelt[2]}") if near else None


def _completed(key: str) -> list[str]:
    return [key + word.casefold() for word in _OMITTED_WORDS]


@cache
def _pairs() -> tuple[tuple[str, str, str], ...]:
    """(name, its key, designation) of all that can be looked up."""
    return tuple((name, name_key(name), designation) for name, designation in _told())


def _told() -> Iterator[tuple[str, str]]:
    """(name, designation): what imagers call a thing wins over OpenNGC's names, and those over the long list."""
    targets = tables.imaging_targets()
    for designation, target in targets.items():
        for name in (target.name, *target.also_called, designation):
            if name and read_designation(name) is None:
                yield name, designation
    for name, own in open_ngc.named().items():
        yield name, open_ngc.display(own)
    yield from tables.common_names()


def _denied(name: str, designation: str) -> bool:
    target = tables.imaging_targets().get(designation)
    return target is not None and name in target.not_called


@cache
def _designations() -> dict[str, str]:
    names: dict[str, str] = {}
    for name, key, designation in _pairs():
        if not _denied(name, designation):
            names.setdefault(key, designation)
    return names


@cache
def _names_by_designation() -> dict[str, tuple[str, ...]]:
    names: dict[str, dict[str, str]] = {}
    for name, key, designation in _pairs():
        if _designations().get(key) == designation and read_designation(name) is None:
            names.setdefault(designation, {}).setdefault(key, name)
    return {designation: tuple(spelt.values()) for designation, spelt in names.items()}


@cache
def _constellation_keys() -> frozenset[str]:
    return frozenset(name_key(row[1]) for row in tables.constellations())


@cache
def _stars() -> dict[str, StarRow]:
    stars: dict[str, StarRow] = {}
    for row in sorted(tables.named_stars(), key=lambda row: row[4]):
        # 'Alpha Crucis' stands for the brighter of 'Alpha1' and 'Alpha2 Crucis'.
        for name in (row[0], row[1], re.sub(r"\d", "", row[1])):
            stars.setdefault(name_key(name), row)
    stars.pop("", None)
    return stars


@cache
def _written() -> dict[str, str]:
    """Name key to the name as it is written: everything that has a name, and the Messier numbers."""
    written: dict[str, str] = {}
    called = (name for name, _, designation in _pairs() if not _denied(name, designation))
    for name in (*open_ngc.messier(), *called, *(row[0] for row in tables.named_stars())):
        written.setdefault(name_key(name), name)
    return written
