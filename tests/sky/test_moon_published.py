"""The Moon against the worked examples and almanac lines in published_values/sky_moon.py."""

from datetime import UTC, date, datetime
from itertools import pairwise

import erfa
import numpy as np
import pytest

from sitegen.sky.earth_rotation import terrestrial_time
from sitegen.sky.moon import apparent_moon, illuminated_fraction, phase_angle_deg, semidiameter_deg
from sitegen.sky.night_time import evening_of
from sitegen.sky.phase import PHASE_NAMES, principal_phase
from sitegen.sky.place import Place
from tests.published_values import sky_moon as published
from tests.sky.asking import ask, evenings_of, unix

GREENWICH = Place(51.4779, 0.0)
LUNATION_OF_2025_JANUARY = 309
PHASE_OF_NAME = {0.0: "new", 0.25: "first quarter", 0.5: "full", 0.75: "last quarter"}


def horizontal_parallax_deg(distance_km: np.ndarray | float) -> np.ndarray:
    """Equatorial horizontal parallax: its sine is the Earth's radius over the distance (Meeus ch. 47)."""
    return np.degrees(np.arcsin(6378.14 / np.asarray(distance_km)))


def ecliptic(vector: np.ndarray, tt: tuple[float, np.ndarray]) -> tuple[float, float]:
    """Mean ecliptic longitude and latitude of date, degrees."""
    longitude, latitude = erfa.c2s(erfa.ecm06(*tt) @ vector)
    return float(np.degrees(longitude)), float(np.degrees(latitude))


def equatorial(ra_deg: float, dec_deg: float, distance: float) -> np.ndarray:
    """A vector from right ascension, declination and distance."""
    return distance * erfa.s2c(np.radians(ra_deg), np.radians(dec_deg))


def test_position_of_example_47a() -> None:
    """The Moon of 1992-04-12 stands where Meeus's worked example puts it."""
    tt = (published.JDE_47A.values, np.float64(0.0))
    moon = apparent_moon(tt)
    longitude, latitude = ecliptic(moon, tt)
    nutation_deg = float(np.degrees(erfa.nut06a(*tt)[0]))
    assert published.POSITION_47A["longitude_deg"].agrees(longitude)
    assert published.POSITION_47A["latitude_deg"].agrees(latitude)
    assert published.POSITION_47A["distance_km"].agrees(np.linalg.norm(moon))
    assert published.POSITION_47A["parallax_deg"].agrees(horizontal_parallax_deg(np.linalg.norm(moon)))
    assert published.POSITION_47A["apparent_longitude_deg"].agrees(longitude + nutation_deg)


def test_phase_angle_of_example_48a() -> None:
    """Phase angle and illuminated fraction of Meeus's worked example, the Sun's finite distance included."""
    angle = phase_angle_deg(equatorial(*published.MOON_48A.values), equatorial(*published.SUN_48A.values))
    assert published.PHASE_ANGLE_48A.agrees(angle)
    assert published.ILLUMINATED_48A.agrees(illuminated_fraction(angle))


def test_illuminated_fraction_of_the_naval_observatory() -> None:
    """Ten days of September 2018 are lit as the US Naval Observatory printed them."""
    days = list(published.ILLUMINATED_2018_09)
    moments = [unix(f"2018-09-{day:02d}T05:00") for day in days]
    evenings = [date(2018, 9, day - 1) for day in days]
    lit = ask(GREENWICH, evenings, moments_s=moments, sub_night=range(len(days))).subs.moon_illuminated
    assert all(published.ILLUMINATED_2018_09.at(day).agrees(share) for day, share in zip(days, lit, strict=True))


def test_full_moon_is_not_lit_to_the_last() -> None:
    """At the instant of the full Moon of 2026-01-03 the fraction is 0.9986, not 1."""
    lit = ask(GREENWICH, [date(2026, 1, 2)], moments_s=[unix("2026-01-03T10:03")]).subs.moon_illuminated
    assert published.FULL_MOON_FRACTION_2026_01_03.agrees(lit[0])


def test_new_moon_of_example_49a() -> None:
    """The new Moon of February 1977 comes when Meeus's worked example says."""
    epoch, days = principal_phase(np.array([-283.0]))
    assert published.NEW_MOON_JDE_49A.agrees(epoch + days[0])


def phase_instants(year: int, part: float) -> list[float]:
    """UTC unix seconds printed for a year."""
    return [unix(line) for line in published.PHASES.times[year, part]]


@pytest.mark.parametrize("part", [0.0, 0.25, 0.5, 0.75])
@pytest.mark.parametrize("year", [2025, 2026])
def test_phase_instants(year: int, part: float) -> None:
    """Every principal phase of two years comes within a minute of the table."""
    printed = np.array(phase_instants(year, part))
    epoch, _ = terrestrial_time(printed)
    lunations = np.arange(LUNATION_OF_2025_JANUARY - 2, LUNATION_OF_2025_JANUARY + 28) + part
    jde, days = principal_phase(lunations)
    tt_of_printed = (epoch - jde) + terrestrial_time(printed)[1]
    nearest = np.min(np.abs(days[None, :] - tt_of_printed[:, None]), axis=1) * 86400.0
    assert nearest.max() <= published.PHASES.tolerance_s


def test_phases_of_september_2018() -> None:
    """First quarter and full Moon of September 2018 as the US Naval Observatory printed them."""
    lunation = 231
    for part, printed in published.PHASES_2018_09.times.items():
        epoch, days = principal_phase(np.array([lunation + part]))
        expected_epoch, expected = terrestrial_time(np.array([unix(printed)]))
        assert abs((epoch - expected_epoch) + days[0] - expected[0]) * 86400.0 <= published.PHASES_2018_09.tolerance_s


@pytest.mark.parametrize("longitude", [-170.0, 0.0, 151.2])
def test_principal_phase_names_its_night(longitude: float) -> None:
    """Exactly the nights that contain a principal phase's instant bear its name, at any longitude."""
    year = evenings_of(2026)
    names = {evening: night.moon.phase for evening, night in zip(year, ask(Place(10.0, longitude), year).nights, strict=True)}
    for part, name in PHASE_OF_NAME.items():
        expected = {day.item() for day in evening_of(phase_instants(2026, part), longitude)}
        assert {day for day, named in names.items() if named == name} == expected


def test_names_follow_one_another() -> None:
    """Through a year the eight names come in the Moon's order, none skipped."""
    nights = ask(GREENWICH, evenings_of(2025)).nights
    order = [PHASE_NAMES.index(night.moon.phase) for night in nights]
    steps = {(after - before) % 8 for before, after in pairwise(order)}
    assert steps == {0, 1}


def test_age_counts_from_the_last_new_moon() -> None:
    """The age at each night's middle is the time since the last printed new Moon, to a minute."""
    new_moons = np.array(phase_instants(2025, 0.0) + phase_instants(2026, 0.0))
    evenings = [day for day in evenings_of(2025) + evenings_of(2026) if day >= date(2025, 1, 29)]
    for night in ask(GREENWICH, evenings).nights:
        middle = night.middle.timestamp()
        since = middle - new_moons[new_moons <= middle].max() if middle > new_moons[0] else None
        if since is not None and np.min(np.abs(new_moons - middle)) > published.PHASES.tolerance_s:
            assert abs(night.moon.age_days * 86400.0 - since) <= published.PHASES.tolerance_s


def test_moonrise_meets_the_almanac_definition() -> None:
    """At rise the Moon's geocentric zenith distance is 90 deg 34' + semidiameter - parallax (Astronomical Almanac)."""
    place = Place(-33.0, 18.5)
    nights = ask(place, evenings_of(2026)[:60]).nights
    rises = np.array([night.moon.rise.timestamp() for night in nights if night.moon.rise])
    tt = terrestrial_time(rises)
    vector = apparent_moon(tt)
    distance = np.linalg.norm(vector, axis=-1)
    true_of_date = np.einsum("nij,nj->ni", erfa.pnm06a(*tt), vector)
    ra, dec = erfa.c2s(true_of_date)
    hour_angle = erfa.gst06a(2440587.5, rises / 86400.0, *tt) + np.radians(place.longitude_deg) - ra
    _, altitude = erfa.hd2ae(hour_angle, dec, np.radians(place.latitude_deg))
    expected = 90.0 + 34.0 / 60.0 + semidiameter_deg(distance) - horizontal_parallax_deg(distance)
    # 0.01 deg: UT1-UTC of 2026 (0.05 s) and the flattened Earth's parallax (0.3 %) are left out here.
    assert np.max(np.abs(90.0 - np.degrees(altitude) - expected)) <= 0.01
    assert rises.size > 50


def test_moments_are_aware_utc_whole_seconds() -> None:
    """What leaves the engine is aware UTC without fractions of a second."""
    night = ask(GREENWICH, [date(2026, 1, 2)]).nights[0]
    for moment in (night.midnight, night.middle, night.sunset, night.dark_start, night.moon.rise):
        assert isinstance(moment, datetime)
        assert moment.tzinfo is UTC
        assert moment.microsecond == 0


def test_the_disc_is_as_wide_as_published() -> None:
    """At the Moon's nearest, mean and farthest distance."""
    for distance_km in (356_500.0, 384_400.0, 406_700.0):
        assert published.SEMIDIAMETER_ARCSEC_KM.agrees(3600.0 * semidiameter_deg(distance_km) * distance_km)
