"""The bundled tables, each read from its file on first use and kept."""

import csv
import gzip
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

_DATA = Path(__file__).parent / "data"

KINDS = {
    "gg": "galaxy cluster", "g": "galaxy", "s": "galaxy", "s0": "galaxy", "sd": "galaxy", "i": "galaxy", "e": "galaxy",
    "oc": "open cluster", "gc": "globular cluster", "dn": "dark nebula", "bn": "emission nebula", "sfr": "emission nebula",
    "rn": "reflection nebula", "en": "emission nebula", "pn": "planetary nebula", "snr": "supernova remnant",
}  # fmt: skip
# What a catalogue was made of is surer than the one general code 'bright nebula' of the table.
_KIND_OF_CATALOGUE = {
    "vdB": "reflection nebula", "vdBH": "reflection nebula", "LBN": "bright nebula", "Cederblad": "bright nebula",
}  # fmt: skip


class Listed(NamedTuple):
    """One row of a bundled table; None where it is silent."""

    designation: str
    kind: str | None
    ra_deg: float | None
    dec_deg: float | None
    size_arcmin: tuple[float, float] | None
    magnitude: float | None


class Target(NamedTuple):
    """What imagers know better than the big tables: a position, kind, size or name that wins over theirs."""

    listed: Listed
    name: str | None
    position_angle_deg: float | None
    also_called: tuple[str, ...]
    not_called: tuple[str, ...]


def _rows(name: str) -> Iterator[list[str]]:
    content = (_DATA / name).read_bytes()
    text = (gzip.decompress(content) if name.endswith(".gz") else content).decode()
    return csv.reader(text.splitlines())


def _number(text: str) -> float | None:
    return float(text) if text else None


def _size(major: str, minor: str) -> tuple[float, float] | None:
    return (float(major), float(minor)) if major else None


@cache
def deep_sky() -> dict[str, tuple[str, ...]]:
    """Designation to the raw columns (kind code, ra, dec, major, minor, magnitude) of LDN, LBN, Barnard, Sh2 and others.

    Raw, because turning nine thousand rows into numbers costs more than the one row wanted.
    """
    return {row[0]: tuple(row[1:]) for row in _rows("deep_sky.csv.gz")}


def deep_sky_row(designation: str) -> Listed | None:
    """The row of one designation as numbers and words."""
    row = deep_sky().get(designation)
    if row is None:
        return None
    kind, ra_deg, dec_deg, major, minor, magnitude = row
    catalogue = designation.split(" ")[0]
    worded = _KIND_OF_CATALOGUE.get(catalogue, KINDS[kind]) if kind == "bn" else KINDS[kind]
    return Listed(designation, worded, float(ra_deg), float(dec_deg), _size(major, minor), _number(magnitude))


@cache
def imaging_targets() -> dict[str, Target]:
    """Designation to its corrections and additions."""
    rows = _rows("imaging_targets.csv")
    next(rows)
    return {row[0]: _target(row) for row in rows}


def _target(row: list[str]) -> Target:
    designation, name, ra_deg, dec_deg, kind, major, minor, angle, also, never = row
    listed = Listed(designation, kind or None, _number(ra_deg), _number(dec_deg), _size(major, minor), None)
    return Target(listed, name or None, _number(angle), _parts(also), _parts(never))


def _parts(text: str) -> tuple[str, ...]:
    return tuple(part for part in text.split(";") if part)


@cache
def same_object() -> dict[str, str]:
    """Designation to the one under which the same object is kept."""
    rows = _rows("same_object.csv")
    next(rows)
    return {designation: kept for designation, kept in rows}  # noqa: C416 - dict() of unsized rows is no type


@cache
def common_names() -> tuple[tuple[str, str], ...]:
    """(common name, designation) pairs; a name may stand more than once, its first holder first."""
    return tuple((name, designation) for name, designation in _rows("names.csv.gz"))


@cache
def named_stars() -> tuple[tuple[str, str, float, float, float], ...]:
    """(proper name, Bayer designation or '', ra_deg, dec_deg, V) of stars that have a proper name."""
    return tuple((name, bayer, float(ra), float(dec), float(v)) for name, bayer, ra, dec, v in _rows("stars.csv.gz"))


@cache
def constellations() -> tuple[tuple[str, str, str, float, float, int], ...]:
    """(abbreviation, Latin name, genitive, ra_deg, dec_deg of its label, rank 1..3 by prominence)."""
    rows = _rows("constellations.csv")
    return tuple((short, name, of, float(ra), float(dec), int(rank)) for short, name, of, ra, dec, rank in rows)


@cache
def boundaries() -> tuple[tuple[float, float, float, str], ...]:
    """Roman (1987): (lower ra, upper ra in hours, lower dec in degrees, abbreviation), B1875, in search order."""
    return tuple((float(low), float(high), float(dec), short) for low, high, dec, short in _rows("boundaries.csv"))


def drawing(name: str) -> Any:
    """The parsed JSON of `figures` or `milky_way`."""
    return json.loads(gzip.decompress((_DATA / f"{name}.json.gz").read_bytes()))
