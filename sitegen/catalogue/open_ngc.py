"""OpenNGC, read straight from the data file of the package pyongc (its Python module takes a quarter second to import)."""

import math
import os
import re
import sqlite3
from functools import cache
from importlib.util import find_spec
from pathlib import Path

from sitegen.catalogue.designation import GREEK_LETTERS, read_designation
from sitegen.catalogue.sky_object import SkyObject
from sitegen.catalogue.tables import constellations

SOURCE = "OpenNGC"

KINDS = {
    "*": "star", "**": "double star", "*Ass": "star association", "OCl": "open cluster", "GCl": "globular cluster",
    "Cl+N": "cluster with nebula", "G": "galaxy", "GPair": "galaxy pair", "GTrpl": "galaxy triplet", "GGroup": "galaxy group",
    "PN": "planetary nebula", "HII": "emission nebula", "DrkN": "dark nebula", "EmN": "emission nebula", "Neb": "nebula",
    "RfN": "reflection nebula", "SNR": "supernova remnant", "Nova": "nova", "NonEx": "not found by later observers",
    "Other": "of unknown kind", "Dup": "duplicate",
}  # fmt: skip
# Zero-padded lengths of the numbers in OpenNGC's own identifiers.
_PADDED = {
    "NGC": 4, "IC": 4, "Caldwell": 3, "Barnard": 3, "Melotte": 3, "HCG": 3, "UGC": 5, "UGCA": 3, "PGC": 6, "LBN": 3, "MWSC": 4,
}  # fmt: skip
_SPELT = {"Caldwell": "C", "Barnard": "B", "Melotte": "MEL"}
_SURVEYS = re.compile(r"2MASX?|SDSS|IRAS|TYC|USNO|MWSC|ESO-?LV|UCAC|6dFGS|LEDA|IDS|SAO")
_GREEK = {"tet": "Theta", "kappa": "Kappa"} | {letter[:3].casefold(): letter for letter in GREEK_LETTERS}
_COLUMNS = "name, type, ra, dec, majax, minax, pa, vmag, bmag, messier, ngc, ic, identifiers, commonnames"

BLUEST, REDDEST = -1.0, 3.0


def _database() -> sqlite3.Connection:
    """A connection may not be carried over a fork: SQLite, 'How To Corrupt', section 2.6."""
    return _database_of(os.getpid())


@cache
def _database_of(process: int) -> sqlite3.Connection:
    spec = find_spec("pyongc")
    if spec is None or spec.origin is None:
        raise ModuleNotFoundError("the package pyongc, which carries OpenNGC, is not installed")
    path = Path(spec.origin).parent / "ongc.db"
    return sqlite3.connect(f"{path.as_uri()}?mode=ro&immutable=1", uri=True, check_same_thread=False)


@cache
def messier() -> dict[str, str]:
    """'M 83' to OpenNGC's own name of it, 'NGC5236'. M 102 is absent: which object Messier meant is disputed."""
    rows = _database().execute("SELECT messier, name FROM objects WHERE messier != '' AND type != 'Dup'")
    return {f"M {int(number)}": name for number, name in rows}


def own_name(designation: str) -> str | None:
    """OpenNGC's name of the object with this designation; None where OpenNGC does not have it."""
    if designation.startswith("M "):
        return messier().get(designation)
    if designation.startswith(("PK ", "PN G", "Collinder ")):
        return _unindexed().get(designation)
    rows = _database().execute("SELECT name FROM objIdentifiers WHERE identifier = ?", (_identifier(designation),))
    return _kept(next((name for (name,) in rows), None))


@cache
def _unindexed() -> dict[str, str]:
    """The designations that OpenNGC lists beside an object but not in its index of identifiers."""
    patterns = "identifiers LIKE '%PN G%' OR identifiers LIKE '%PK %' OR identifiers LIKE '%Cl %'"
    rows = _database().execute(f"SELECT identifiers, name FROM objects WHERE {patterns}")
    return {display(identifier): name for listed, name in rows for identifier in _split(listed)}


def _identifier(designation: str) -> str:
    catalogue, _, number = designation.partition(" ")
    if catalogue == "ESO":
        field, _, running = number.partition("-")
        return f"ESO{field:0>3}-{running:0>3}"
    if catalogue in _PADDED and number:
        digits = re.match(r"\d*", number)
        assert digits is not None
        return f"{_SPELT.get(catalogue, catalogue)}{digits[0]:0>{_PADDED[catalogue]}}{number[digits.end() :]}"
    return designation.replace(" ", "").upper()


def _kept(name: str | None) -> str | None:
    """Follow a duplicate record to the one that is kept."""
    if name is None:
        return None
    kind, ngc, ic = _database().execute("SELECT type, ngc, ic FROM objects WHERE name = ?", (name,)).fetchone()
    if kind != "Dup":
        return name
    return f"NGC{ngc}" if ngc else f"IC{ic}" if ic else None


def entry(name: str) -> SkyObject | None:
    """The object of this OpenNGC name; None where it has no position."""
    row = _database().execute(f"SELECT {_COLUMNS} FROM objects WHERE name = ?", (name,)).fetchone()
    return _object(row) if row and row[2] is not None else None


def entries_between(south_deg: float, north_deg: float) -> list[SkyObject]:
    """All objects of a declination band, but for stars, duplicates and those that do not exist."""
    band = (math.radians(south_deg), math.radians(north_deg))
    rows = _database().execute(
        f"SELECT {_COLUMNS} FROM objects WHERE dec BETWEEN ? AND ? AND type NOT IN ('Dup', 'NonEx', '*', '**', 'Other')", band
    )
    return [_object(row) for row in rows]


@cache
def named() -> dict[str, str]:
    """Common name, spelt out, to OpenNGC's own name of its first holder."""
    names: dict[str, str] = {}
    # A member of a group ('IC2431 NED02') has no number of its own to be found by.
    query = "SELECT name, commonnames FROM objects WHERE commonnames != '' AND name NOT LIKE '% %' ORDER BY name"
    for name, listed in _database().execute(query):
        for common in listed.split(","):
            names.setdefault(spelt_out(common), name)
    return names


def spelt_out(common: str) -> str:
    """'eta Car Nebula' to 'Eta Carinae Nebula'."""
    words = common.removeprefix("the ").split()
    greek = words[0] in _GREEK
    genitives = {row[0]: row[2] for row in constellations()}
    text = " ".join(_GREEK.get(word, genitives.get(word, word) if greek else word) for word in words)
    return text[:1].upper() + text[1:]


def display(identifier: str) -> str:
    """'NGC5457' to 'NGC 5457', 'C 063' to 'Caldwell 63'; what follows no known pattern stays as it is."""
    return read_designation(re.sub(r"^Cl ?(\d)", r"Cr \1", identifier)) or identifier


def _object(row: tuple[object, ...]) -> SkyObject:
    name, kind, ra, dec, major, minor, angle, visual, blue, messier_number, ngc, ic, identifiers, common = row
    shown = f"M {int(str(messier_number))}" if messier_number else display(str(name))
    others = [display(str(name)), *(display(f"NGC{n}") for n in _split(ngc)), *(display(f"IC{n}") for n in _split(ic))]
    others += [display(alias) for alias in _split(identifiers) if not _SURVEYS.match(alias)]
    others += [spelt_out(alias) for alias in _split(common)]
    return SkyObject(
        name=shown,
        ra_deg=math.degrees(float(str(ra))),
        dec_deg=math.degrees(float(str(dec))),
        kind=KINDS[str(kind)],
        size_arcmin=(float(str(major)), float(str(minor or major))) if major else None,
        position_angle_deg=float(str(angle)) if angle is not None else None,
        magnitude=_magnitude(visual, blue),
        aliases=tuple(dict.fromkeys(other for other in others if other != shown)),
        source=SOURCE,
    )


def _magnitude(visual: object, blue: object) -> float | None:
    """V, else B. None where the two contradict each other: no object is bluer than B − V = −1 or redder than 3, and 71 rows
    (NGC 253: B 7.94, V 11.11, its core's) would be."""
    magnitudes = [float(str(value)) for value in (visual, blue) if value is not None]
    contradict = len(magnitudes) == 2 and not BLUEST <= magnitudes[1] - magnitudes[0] <= REDDEST
    return None if contradict or not magnitudes else magnitudes[0]


def _split(text: object) -> list[str]:
    return [part.strip() for part in str(text or "").split(",") if part.strip()]
