"""Names to objects: positions against published ones, spellings, names, hints."""

import math

import erfa
import pytest

from sitegen.catalogue import names, open_ngc, tables
from sitegen.catalogue.credits import CREDITS
from sitegen.catalogue.designation import read_designation
from sitegen.catalogue.lookup import find_object, objects_near, separation_deg, suggest_name
from sitegen.catalogue.sky_object import SkyObject
from tests.published_values.record import published_rows
from tests.published_values.sky_coordinates import ARCTURUS, SEPARATION_17A_DEG, SPICA

POSITIONS = published_rows("catalogue_positions.csv")
SHARPLESS = published_rows("catalogue_sharpless.csv")
ABELL = published_rows("catalogue_abell.csv")
MESSIER = published_rows("catalogue_messier.csv")


def found(name: str) -> SkyObject:
    one = find_object(name)
    assert one is not None, f"{name} is not in the catalogue"
    return one


def apart_arcmin(one: SkyObject, ra_deg: float, dec_deg: float) -> float:
    return 60.0 * separation_deg(one.ra_deg, one.dec_deg, ra_deg, dec_deg)


@pytest.mark.parametrize(("name", "ra", "dec", "tolerance", "source"), POSITIONS.rows)
def test_positions_agree_with_published_ones(name: str, ra: str, dec: str, tolerance: str, source: str) -> None:
    """An object lies where the source named beside the value puts it."""
    assert apart_arcmin(found(name), float(ra), float(dec)) <= float(tolerance), source


def apart_from_galactic_arcmin(one: SkyObject, longitude_deg: float, latitude_deg: float) -> float:
    ra, dec = erfa.g2icrs(math.radians(longitude_deg), math.radians(latitude_deg))
    return apart_arcmin(one, math.degrees(ra), math.degrees(dec))


@pytest.mark.parametrize(("name", "longitude", "latitude"), SHARPLESS.rows)
def test_sharpless_nebulae_lie_where_radio_surveys_name_them(name: str, longitude: str, latitude: str) -> None:
    """Source, tolerance and reason stand in the file."""
    assert apart_from_galactic_arcmin(found(name), float(longitude), float(latitude)) <= SHARPLESS.tolerance


@pytest.mark.parametrize(("name", "longitude", "latitude"), ABELL.rows)
def test_abell_s_planetary_nebulae_lie_where_their_names_say(name: str, longitude: str, latitude: str) -> None:
    """Within the tenth of a degree of their PN G names; source, tolerance and reason stand in the file."""
    middle = [float(part) + math.copysign(0.05, float(part)) for part in (longitude, latitude)]
    assert apart_from_galactic_arcmin(found(name), *middle) <= ABELL.tolerance


def test_sharpless_numbers_run_with_galactic_longitude() -> None:
    """Sharpless (1959) numbered his nebulae by galactic longitude: each cross-identification keeps that order.

    Longitudes of his own time and extended nebulae allow 1.5 degrees of retreat; two are known to retreat by more:
    Sh2-27 and Sh2-63 were numbered by where their light, not their middle, is.
    """
    longitudes = {}
    for number in range(19, 313):
        one = find_object(f"Sh2-{number}")
        if one is not None:
            longitude, _ = erfa.icrs2g(math.radians(one.ra_deg), math.radians(one.dec_deg))
            longitudes[number] = math.degrees(longitude) % 360.0
    steps = zip(longitudes.items(), list(longitudes.items())[1:], strict=False)
    retreats = {number for (_, before), (number, longitude) in steps if longitude < before - 1.5}
    assert retreats == {27, 63}
    assert set(range(19, 313)) - set(longitudes) == {179}


@pytest.mark.parametrize(("name", "designation", "ra", "dec"), MESSIER.rows)
def test_each_messier_object_is_the_right_one(name: str, designation: str, ra: str, dec: str) -> None:
    """All 110 Messier numbers lead to the object that another list gives, M 24, M 40, M 45, M 73 and M 102 included.

    Source, tolerance and reason stand in the file.
    """
    one = found(name)
    assert one.name == name.replace("M", "M ")
    assert designation in one.aliases
    assert apart_arcmin(one, float(ra), float(dec)) <= MESSIER.tolerance


def test_all_caldwell_numbers_resolve() -> None:
    """Caldwell 1 to 109 each lead to an object of their own."""
    assert len({found(f"C{number}").name for number in range(1, 110)}) == 109


@pytest.mark.parametrize(
    ("spelling", "name"),
    [
        ("m101", "M 101"),
        ("M 101", "M 101"),
        ("Messier 101", "M 101"),
        ("NGC5457", "M 101"),
        ("ngc 5457", "M 101"),
        ("pinwheel galaxy", "M 101"),
        ("ic 1396", "IC 1396"),
        ("Sh2-131", "IC 1396"),
        ("Sh2-132", "Sh2-132"),
        ("SH 2-132", "Sh2-132"),
        ("sh2 132", "Sh2-132"),
        ("sh2132", "Sh2-132"),
        ("Sharpless 132", "Sh2-132"),
        ("Sharpless 2-132", "Sh2-132"),
        ("Sh2–132", "Sh2-132"),
        ("Barnard 33", "Barnard 33"),
        ("B 33", "Barnard 33"),
        ("b033", "Barnard 33"),
        ("vdB 152", "vdB 152"),
        ("VDB152", "vdB 152"),
        ("LDN 1251", "LDN 1251"),
        ("LBN 552", "LBN 552"),
        ("Abell 39", "Abell 39"),
        ("PN A66 39", "Abell 39"),
        ("PK 047+42 1", "Abell 39"),
        ("PK 47+42.1", "Abell 39"),
        ("Abell 426", "Abell 426"),
        ("ACO 426", "Abell 426"),
        ("ACO 39", "ACO 39"),
        ("Caldwell 65", "NGC 253"),
        ("PN G036.1-57.1", "NGC 7293"),
        ("RCW 57", "NGC 3576"),
        ("Collinder 399", "Collinder 399"),
        ("Melotte 25", "Hyades"),
        ("IC 11", "NGC 281"),
        ("NGC 1909", "IC 2118"),
        ("IC 2118", "IC 2118"),
        ("UGC 10214", "UGC 10214"),
        ("alpha orionis", "Betelgeuse"),
        ("Alpha Crucis", "Acrux"),
        ("beta1 cygni", "Albireo"),
        ("Caldwell 9", "Sh2-155"),
        ("Caldwell 19", "IC 5146"),
        ("SNR G111.7-02.1", "Cassiopeia A"),
        ("Sgr A", None),
        ("NGC 9999", None),
        ("M 111", None),
        ("", None),
        ("Orion", None),
    ],
)
def test_spellings_lead_to_one_object(spelling: str, name: str | None) -> None:
    """Case, blanks, dashes, zeros and the catalogue's long and short name make no difference."""
    one = find_object(spelling)
    assert (one and one.name) == name


@pytest.mark.parametrize(
    ("called", "name"),
    [
        ("Sculptor Galaxy", "NGC 253"),
        ("Helix Nebula", "NGC 7293"),
        ("Eta Carinae Nebula", "NGC 3372"),
        ("Large Magellanic Cloud", "Large Magellanic Cloud"),
        ("SMC", "Small Magellanic Cloud"),
        ("Flame Nebula", "NGC 2024"),
        ("Horsehead Nebula", "Barnard 33"),
        ("Rosette", "NGC 2237"),
        ("The Witch Head Nebula", "IC 2118"),
        ("Veil Nebula", "Cygnus Loop"),
        ("Western Veil Nebula", "NGC 6960"),
        ("Tulip Nebula", "Sh2-101"),
        ("Lion Nebula", "Sh2-132"),
        ("Lobster Nebula", "NGC 6357"),
        ("Omega Nebula", "M 17"),
        ("Barnards Loop", "Sh2-276"),
        ("Omega Centauri", "NGC 5139"),
        ("47 Tuc", "NGC 104"),
        ("Tarantula Nebula", "NGC 2070"),
        ("Coalsack", "Coalsack Nebula"),
        ("Fireworks Galaxy", "NGC 6946"),
        ("Iris Nebula", "NGC 7023"),
        ("Soul Nebula", "IC 1848"),
        ("Southern Pinwheel Galaxy", "M 83"),
        ("Spindle Galaxy", "NGC 3115"),
        ("Double Cluster", "Double Cluster"),
        ("Vega", "Vega"),
    ],
)
def test_common_names_lead_to_what_imagers_mean(called: str, name: str) -> None:
    """A common name leads to the object that imagers mean by it (common practice, no source)."""
    assert found(called).name == name


@pytest.mark.parametrize(
    ("misspelt", "hint"),
    [
        ("NCG 7000", "NGC 7000"),
        ("Sculpter Galaxy", "Sculptor Galaxy"),
        ("Rossete Nebula", "Rosette Nebula"),
        ("Betelguese", "Betelgeuse"),
        ("Andromeda", "Andromeda Galaxy"),
        ("Orion", "Orion Nebula"),
        ("xyzzy", None),
        ("NGC 9999", None),
        ("", None),
    ],
)
def test_hints_name_the_nearest_object(misspelt: str, hint: str | None) -> None:
    """The hint is a name that leads somewhere, or there is none; a constellation's name is met by its best-known object."""
    assert suggest_name(misspelt) == hint


def test_every_hint_leads_somewhere() -> None:
    """Each name that may be offered as a hint is found, and found again under its own display name."""
    lost = [name for name in names._written().values() if find_object(name) is None]
    assert lost == []
    strayed = [name for name in names._written().values() if found(found(name).name) != found(name)]
    assert strayed == []


def test_every_row_of_the_tables_by_hand_leads_somewhere() -> None:
    """No correction and no cross-identification is about an object that no table has."""
    listed = [*tables.imaging_targets(), *tables.same_object()]
    assert [name for name in listed if find_object(name) is None] == []


def test_what_imagers_know_wins_over_the_tables() -> None:
    """The known traps of the big tables are mended: IC 1396's size, IC 434's name, IC 1318's being a star."""
    assert found("IC 1396").size_arcmin == (170.0, 140.0)
    assert "Flame Nebula" not in found("IC 434").aliases
    assert found("IC 1318").kind == "emission nebula"
    assert found("IC 1318").magnitude is None
    assert found("NGC 6334").kind == "emission nebula"


def test_a_whole_record() -> None:
    """All fields of one object, as another room meets them; values of OpenNGC through pyongc 1.2.2."""
    one = found("Helix Nebula")
    assert (round(one.ra_deg, 3), round(one.dec_deg, 3)) == (337.411, -20.837)
    expected = SkyObject(
        name="NGC 7293",
        ra_deg=one.ra_deg,
        dec_deg=one.dec_deg,
        kind="planetary nebula",
        size_arcmin=(16.33, 16.33),
        position_angle_deg=None,
        magnitude=7.3,
        aliases=("Caldwell 63", "PN G036.1-57.1", "Helix Nebula", "ESO 602-22"),
        source="OpenNGC",
    )
    assert one == expected


def test_sources_of_objects_are_credited() -> None:
    """Every data set that an answer names stands in the credits."""
    credited = {credit.name for credit in CREDITS}
    answers = {found(name).source for name in ("M 1", "LDN 1251", "Vega", "Ou4", "IC 1318")}
    assert len(answers) == 3
    assert answers <= credited


def test_objects_near_are_told_once_and_the_best_known_first() -> None:
    """Around Orion's sword: M 42 first, nothing twice, nothing outside the circle, no Sharpless number beside it."""
    near = objects_near(83.82, -5.39, 1.0)
    shown = [one.name for one in near]
    assert shown[:3] == ["M 42", "M 43", "NGC 1977"]
    assert len(set(shown)) == len(shown)
    assert all(separation_deg(83.82, -5.39, one.ra_deg, one.dec_deg) <= 1.0 for one in near)
    assert "Sh2-281" not in shown


def test_objects_near_use_the_corrected_place() -> None:
    """IC 1318, which OpenNGC lists as a star, and the Coalsack, which it puts two degrees off, are found where they are."""
    assert "IC 1318" in [one.name for one in objects_near(305.6, 40.3, 0.5)]
    assert "Coalsack Nebula" in [one.name for one in objects_near(192.5, -62.5, 0.5)]
    assert "Coalsack Nebula" not in [one.name for one in objects_near(187.83, -63.74, 0.5)]


def test_objects_near_the_pole_and_across_the_meridian() -> None:
    """The circle is round at the pole and across 0 h."""
    assert "NGC 188" in [one.name for one in objects_near(200.0, 88.0, 8.0)]
    assert "NGC 7814" in [one.name for one in objects_near(359.9, 16.1, 2.0)]


def test_separation_against_meeus() -> None:
    """Arcturus to Spica is 32.7930 degrees (Meeus, Astronomical Algorithms, 2nd ed., example 17.a)."""
    assert SEPARATION_17A_DEG.agrees(separation_deg(*ARCTURUS.values, *SPICA.values))


def test_designations_are_brought_to_their_usual_form() -> None:
    """Forms with signs and fields keep all their digits; other text is no designation."""
    assert read_designation("pk 47-4 1") == "PK 047-04.1"
    assert read_designation("PN G 36.1-57.1") == "PN G036.1-57.1"
    assert read_designation("ESO 056-G115") == "ESO 56-115"
    assert read_designation("Sharpless 240") == "Sh2-240"
    assert read_designation("vdBH 3A") == "vdBH 3a"
    assert read_designation("Barnard's Loop") is None


def test_abbreviated_names_are_spelt_out() -> None:
    """OpenNGC abbreviates Greek letters and genitives; readers do not have to."""
    assert open_ngc.spelt_out("eta Car Nebula") == "Eta Carinae Nebula"
    assert open_ngc.spelt_out("tet Car Cluster") == "Theta Carinae Cluster"
    assert open_ngc.spelt_out("the Running Man Nebula") == "Running Man Nebula"
