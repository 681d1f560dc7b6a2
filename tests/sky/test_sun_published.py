"""The Sun and the nights against published_values/sky_sun.py."""

from datetime import date, timedelta

import erfa
import numpy as np
import pytest

from sitegen.sky.earth_rotation import terrestrial_time
from sitegen.sky.night_ephemeris import prepare
from sitegen.sky.place import Place
from sitegen.sky.sun import AU_KM, apparent_sun
from tests.published_values import sky_sun as published
from tests.sky.asking import ask, evenings_of, night_at, unix


def apparent_longitude_deg(tt: tuple[float, np.ndarray]) -> np.ndarray:
    """Apparent ecliptic longitude of date, degrees, nutation included."""
    longitude, _ = erfa.c2s(np.einsum("...ij,...j->...i", erfa.ecm06(*tt), apparent_sun(tt)))
    return np.degrees(longitude + erfa.nut06a(*tt)[0]) % 360.0


def test_position_of_example_25() -> None:
    """The Sun of 1992-10-13 stands where both methods of Meeus's worked example put it."""
    tt = (published.JDE_25.values, np.float64(0.0))
    sun = apparent_sun(tt)
    ra, dec = np.degrees(erfa.c2s(erfa.pnm06a(*tt) @ sun))
    assert published.RA_25B_DEG.agrees(ra % 360.0)
    assert published.DEC_25B_DEG.agrees(dec)
    assert published.LONGITUDE_25A_DEG.agrees(apparent_longitude_deg(tt))
    assert published.DISTANCE_25A_AU.agrees(np.linalg.norm(sun) / AU_KM)


def test_seasons_of_2018() -> None:
    """September equinox and December solstice of 2018 as the US Naval Observatory printed them, to a minute."""
    degrees_a_minute = 360.0 / 365.2422 / 1440.0 * 1.04
    for longitude, printed in published.SEASONS_2018.times.items():
        moment = terrestrial_time(np.array([unix(printed)]))
        assert abs(apparent_longitude_deg(moment)[0] - longitude) <= degrees_a_minute


def test_sunrise_and_sunset_of_bluffton() -> None:
    """A day of 2018 in Ohio has the sunrise and sunset of the US Naval Observatory's table, to a minute."""
    latitude, longitude, day = published.BLUFFTON.values
    printed, tolerance_s = published.BLUFFTON_SUN.times, published.BLUFFTON_SUN.tolerance_s
    place = Place(latitude, longitude)
    evening = date.fromisoformat(day)
    before, after = ask(place, [evening - timedelta(days=1), evening]).nights
    assert abs(before.sunrise.timestamp() - unix(printed["sunrise"])) <= tolerance_s
    assert abs(after.sunset.timestamp() - unix(printed["sunset"])) <= tolerance_s


@pytest.mark.parametrize("site", published.HIGH_LATITUDES.values)
def test_short_nights_of_high_latitudes(site: str) -> None:
    """Nights without darkness, without nautical darkness, and without a sunset are as many as an ephemeris counts."""
    nights = ask(Place(*published.HIGH_LATITUDES.values[site]), evenings_of(2026)).nights
    counts = {
        published.NO_ASTRONOMICAL_DARKNESS_2026: sum(night.dark_start is None for night in nights),
        published.NO_NAUTICAL_DARKNESS_2026: sum(night.nautical_start is None for night in nights),
        published.NO_CIVIL_DARKNESS_2026: sum(night.curve.sun_altitude_deg.min() >= -6.0 for night in nights),
        published.NO_SUNSET_2026: sum(night.sun_never_sets for night in nights),
    }
    assert all(table.at(site).agrees(count) for table, count in counts.items())
    solstice = nights[date(2026, 6, 21).timetuple().tm_yday - 1]
    assert published.LOWEST_SUN_2026_06_21_DEG.at(site).agrees(solstice.curve.sun_altitude_deg.min())


@pytest.mark.parametrize("site", published.SPANS_WITHOUT_DARKNESS_2026.times)
def test_first_and_last_evening_without_darkness(site: str) -> None:
    """The season without astronomical darkness begins and ends within a date of the ephemeris."""
    year = evenings_of(2026)
    nights = ask(Place(*published.HIGH_LATITUDES.values[site]), year).nights
    light = [evening for evening, night in zip(year, nights, strict=True) if night.dark_start is None]
    ends = [date.fromisoformat(end) for end in published.SPANS_WITHOUT_DARKNESS_2026.times[site].split("/")]
    apart = (light[0] - ends[0], light[-1] - ends[1])
    assert max(abs(days.total_seconds()) for days in apart) <= published.SPANS_WITHOUT_DARKNESS_2026.tolerance_s


@pytest.mark.parametrize(("latitude", "nights_without"), published.VANISHING_NIGHT.values.items())
def test_latitude_at_which_the_night_vanishes(latitude: float, nights_without: int) -> None:
    """Astronomical darkness first fails between 48.5 and 48.6 degrees north."""
    nights = ask(Place(latitude, 0.0), evenings_of(2026)).nights
    assert sum(night.dark_start is None for night in nights) == nights_without


def test_the_shortest_darkness_is_not_missed() -> None:
    """Where the Sun dips below -18 for less than a sample's ten minutes, the darkness is found; a hair south, none."""
    evening, brief = date(2026, 7, 23), []  # true midnight comes 6.5 minutes after mean midnight, between two samples
    for latitude in np.arange(52.08, 52.11, 0.001):
        place = Place(float(latitude), 3.0)
        ephemeris = prepare([place], [(0, evening)])
        every_ten_s = ephemeris.middle_s + np.arange(-5400.0, 5401.0, 10.0)
        altitude = ephemeris.sun_altitude_deg(np.zeros(every_ten_s.size, int), every_ten_s)
        night = ask(place, [evening]).nights[0]
        assert (night.dark_start is not None) == (altitude.min() < -18.0), latitude
        assert night.dark_s == pytest.approx(10.0 * np.sum(altitude < -18.0), abs=11.0)
        brief.append(0.0 < night.dark_s < 600.0)
    assert any(brief)


def test_midnight_sun() -> None:
    """Where the Sun never sets there is no event, no darkness, and the middle is mean midnight."""
    night = night_at(Place(69.65, 18.96), "2026-06-21")
    assert night.sun_never_sets
    assert (night.sunset, night.sunrise, night.dark_start, night.nautical_start) == (None,) * 4
    assert (night.dark_s, night.nautical_dark_s) == (0.0, 0.0)
    assert night.middle == night.midnight
    assert night.moon.up_share_of_dark is None
    assert night.moon.moon_down == ()


def test_night_of_the_pole() -> None:
    """Near the pole in winter darkness spans noon to noon, and there is neither sunset nor sunrise."""
    night = night_at(Place(89.0, 0.0), "2026-12-21")
    assert (night.sunset, night.sunrise) == (None, None)
    assert not night.sun_never_sets
    assert night.dark_s == 86400.0
    assert night.dark_end - night.dark_start == timedelta(days=1)
    assert night.middle == night.midnight


def test_dark_polar_noon_has_twilight() -> None:
    """In Tromso's polar night the Sun never rises, and yet noon is no darkness."""
    night = night_at(Place(69.65, 18.96), "2026-12-21")
    assert (night.sunset, night.sunrise) == (None, None)
    assert not night.sun_never_sets
    assert 0.0 < night.dark_s < night.nautical_dark_s < 86400.0


def test_sunset_before_mean_noon_is_kept() -> None:
    """Where the last short day of autumn ends before mean noon, its sunset still opens the night that follows it."""
    november = [date(2026, 11, day) for day in range(1, 31)]
    early = [
        night
        for latitude in np.arange(69.0, 75.0, 0.25)
        for night in ask(Place(float(latitude), 20.0), november).nights
        if night.sunset and night.sunset < night.midnight - timedelta(hours=12)
    ]
    assert early
    # The equation of time is at most 16.5 minutes, in November.
    assert all(timedelta(hours=12) < night.midnight - night.sunset < timedelta(hours=12, minutes=17) for night in early)


def test_durations_are_differences_of_moments() -> None:
    """What is published as a duration is what the published moments add up to, in every night of a year."""
    for night in ask(Place(60.0, 10.0), evenings_of(2026)).nights:
        for start, end, length in (
            (night.dark_start, night.dark_end, night.dark_s),
            (night.nautical_start, night.nautical_end, night.nautical_dark_s),
        ):
            assert length == ((end - start).total_seconds() if start else 0.0)
        moonless = sum((end - start).total_seconds() for start, end in night.moon.moon_down)
        assert night.moon.dark_and_moonless_s == moonless
