"""The Moon, the planets and tables of places against Skyfield with JPL's DE421, and against values in print."""

from collections.abc import Iterator
from datetime import date, timedelta

import erfa
import numpy as np
import pytest

from sitegen.sky.answer import SkyAnswer
from sitegen.sky.bodies import MOON, PLANETS, planet_km, table_place
from sitegen.sky.body import Body, PlaceTable
from sitegen.sky.engine import sky_pass
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest
from sitegen.sky.sun import AU_KM
from tests.published_values.record import Published
from tests.sky.independent_sky import IndependentSky

BODIES = (MOON, *PLANETS)
OF_DE421 = {"mars": "mars", "jupiter": "jupiter barycenter", "saturn": "saturn barycenter", "uranus": "uranus barycenter",
            "neptune": "neptune barycenter"}  # fmt: skip
HILL = Place(-32.6, 139.0, 300.0)
FAR_NORTH = Place(60.2, 25.0, 20.0)
NIGHTS = [(HILL, date(1996, 3, 3)), (HILL, date(2026, 9, 20)), (FAR_NORTH, date(2034, 1, 17)), (FAR_NORTH, date(2010, 10, 30))]
PLACE_DEG = 0.03
"""plan94 states 86″ for Uranus seen from the Sun, which is 0.024°, and hardly more from the Earth; the Moon's 0.003° is less."""
TRANSIT_S = 8.0
"""0.03° of hour angle are 7 s; a second for rounding."""


def ask(place: Place, evening: date, body: Body, moments_s: tuple[float, ...] = ()) -> SkyAnswer:
    count = len(moments_s)
    nothing = np.zeros(count, dtype=np.int64)
    request = SkyRequest(
        (place,), ((0, evening),), (), (), np.array(moments_s), nothing, nothing - 1, ((0, body),),
        tuple((index, body) for index in range(count)),
    )  # fmt: skip
    return sky_pass(request)


@pytest.fixture(scope="module")
def sky() -> Iterator[IndependentSky]:
    independent = IndependentSky()
    yield independent
    independent.bodies.close()


def noon_s(place: Place, evening: date) -> float:
    return (evening.toordinal() - date(1970, 1, 1).toordinal()) * 86400 + 43200 - 240 * place.longitude_deg


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize(("place", "evening"), NIGHTS)
def test_a_body_stands_where_skyfield_has_it(sky: IndependentSky, body: str, place: Place, evening: date) -> None:
    """Topocentric altitude and distance from the Moon at three moments, and looks at the night's middle. Tolerances as above;
    size and phase follow from the place and the distance, and are held to a third of their last published digit."""
    from skyfield.api import wgs84

    moments = tuple(noon_s(place, evening) + 3600.0 * hours for hours in (5, 12, 20))
    answer = ask(place, evening, body, moments)
    observer = sky.bodies["earth"] + wgs84.latlon(place.latitude_deg, place.longitude_deg, place.elevation_m)
    target = sky.bodies[OF_DE421.get(body, body)]
    here = observer.at(sky.time(np.array(moments)))
    seen, moon = (here.observe(one).apparent() for one in (target, sky.bodies["moon"]))
    assert np.abs(answer.subs.target_altitude_deg - seen.altaz()[0].degrees).max() < PLACE_DEG
    assert np.abs(answer.subs.moon_separation_deg - seen.separation_from(moon).degrees).max() < PLACE_DEG
    looks = answer.body_nights[0].body
    assert looks is not None
    middle = answer.nights[0].middle
    centre = sky.bodies["earth"].at(sky.time(middle.timestamp()))
    astrometric = centre.observe(target)
    ra, dec, distance = astrometric.radec()
    assert abs((looks.ra_deg - ra._degrees + 180) % 360 - 180) * np.cos(dec.radians) < PLACE_DEG
    assert looks.dec_deg == pytest.approx(dec.degrees, abs=PLACE_DEG)
    sun = centre.observe(sky.bodies["sun"]).apparent()
    assert looks.elongation_deg == pytest.approx(astrometric.apparent().separation_from(sun).degrees, abs=PLACE_DEG)
    phase_deg = float(astrometric.apparent().phase_angle(sky.bodies["sun"]).degrees)
    assert looks.illuminated == pytest.approx((1 + np.cos(np.radians(phase_deg))) / 2, abs=0.0005)
    assert looks.size_arcsec == pytest.approx(SIZE_AT_1_AU_ARCSEC[body] / distance.au, rel=0.001)


# Explanatory Supplement to the Astronomical Almanac (3rd ed., 2013), from memory: semidiameters at 1 au, doubled; the Moon's from
# its mean 31′ 05″ at 384,400 km. A thousandth covers the choice of radii and the distance.
SIZE_AT_1_AU_ARCSEC = {"moon": 4.790, "mercury": 6.73, "venus": 16.69, "mars": 9.367, "jupiter": 197.15, "saturn": 166.2,
                       "uranus": 70.48, "neptune": 68.29}  # fmt: skip


@pytest.mark.parametrize("body", BODIES)
def test_a_body_culminates_when_skyfield_says(sky: IndependentSky, body: str) -> None:
    """Transit and the highest point of the dark hours, of one night."""
    from skyfield.almanac import find_transits
    from skyfield.api import wgs84

    place, evening = NIGHTS[1]
    answer = ask(place, evening, body)
    observer = sky.bodies["earth"] + wgs84.latlon(place.latitude_deg, place.longitude_deg, place.elevation_m)
    target = sky.bodies[OF_DE421.get(body, body)]
    start = noon_s(place, evening)
    (transit, *_) = find_transits(observer, target, sky.time(start), sky.time(start + 86400))
    night = answer.body_nights[0]
    assert night.transit is not None
    assert abs((night.transit - transit.utc_datetime()).total_seconds()) < TRANSIT_S
    assert night.hours is not None and night.max_altitude_deg is not None
    times = np.linspace(night.hours[0].timestamp(), night.hours[1].timestamp(), 600)
    highest = observer.at(sky.time(times)).observe(target).apparent().altaz()[0].degrees.max()
    assert night.max_altitude_deg == pytest.approx(highest, abs=PLACE_DEG)


def test_the_moon_skips_a_transit_a_month() -> None:
    """It culminates 50 minutes later a day: two lunations, 59 days, have 57 transits. Worked by hand from 29.53 days, from
    memory."""
    evenings = [date(2026, 9, 1) + timedelta(days=day) for day in range(59)]
    transits = [ask(HILL, evening, MOON).body_nights[0].transit for evening in evenings]
    assert sum(transit is None for transit in transits) == 2


def test_venus_in_print() -> None:
    """J. Meeus, Astronomical Algorithms (1998), example 33.a, from memory: apparent 316.17291°, −18.88801°, and 0.910947 au. The
    printed place has 20″ of aberration, the astrometric one none: hence 0.01°. The distance is given to a millionth; plan94's own
    errors are some 0.00002 au."""
    vector = planet_km("venus", (2448976.5, np.array([0.0])))[0]
    apparent = np.array([316.17291, -18.88801])
    of_date = erfa.s2c(*np.radians(apparent))
    to_2000 = erfa.pnm06a(2448976.5, 0.0).T
    ra, dec = erfa.c2s(to_2000 @ of_date)
    mine = erfa.c2s(vector)
    assert np.degrees(erfa.seps(ra, dec, *mine)) < 0.01
    source = "J. Meeus, Astronomical Algorithms (1998), example 33.a"
    distance = Published(0.910947, 5e-5, source, "plan94 errs by some 0.00002 au")
    assert distance.agrees(float(np.linalg.norm(vector) / AU_KM))


TABLE = PlaceTable((0.0, 86400.0, 172800.0), (350.0, 0.0, 10.0), (0.0, 0.0, 10.0))


def test_places_between_the_rows_of_a_table() -> None:
    """Half-way along the equator, over right ascension 0; a row as it stands; nothing outside."""
    vectors = table_place(TABLE, np.array([43200.0, 86400.0, -1.0, 172801.0]))
    ra, dec = np.degrees(erfa.c2s(vectors[:2]))
    assert ra % 360 == pytest.approx([355.0, 0.0], abs=1e-9)
    assert dec == pytest.approx([0.0, 0.0], abs=1e-9)
    assert np.isnan(vectors[2:]).all()


def test_a_table_follows_as_the_theory_does() -> None:
    """Jupiter by hourly places of its own theory: the same altitudes and transit, but for the parallax of 2″."""
    place, evening = NIGHTS[1]
    start = noon_s(place, evening)
    hours = start + 3600.0 * np.arange(-2, 27)
    ra, dec = np.degrees(erfa.c2s(planet_km("jupiter", (2440587.5, hours / 86400 + 69.2 / 86400))))
    table = PlaceTable(tuple(hours), tuple(ra % 360), tuple(dec))
    moments = (start + 5 * 3600.0, start + 43210.0)
    known, followed = ask(place, evening, "jupiter", moments), ask(place, evening, table, moments)
    assert followed.subs.target_altitude_deg == pytest.approx(known.subs.target_altitude_deg, abs=0.001)
    theirs, its = known.body_nights[0], followed.body_nights[0]
    assert theirs.transit is not None and its.transit is not None
    assert abs((its.transit - theirs.transit).total_seconds()) <= 1
    assert its.body is not None and theirs.body is not None
    assert its.body.elongation_deg == pytest.approx(theirs.body.elongation_deg, abs=0.007)  # one with aberration, one without
    assert (its.body.size_arcsec, its.body.illuminated) == (None, None)


def test_nothing_is_known_outside_the_table() -> None:
    """No altitude, no transit, no place: as for what has no table."""
    answer = ask(HILL, date(2026, 9, 20), TABLE, (noon_s(HILL, date(2026, 9, 20)) + 43200,))
    night = answer.body_nights[0]
    assert (night.transit, night.max_altitude_deg, night.min_airmass, night.body) == (None, None, None, None)
    assert np.isnan(answer.subs.target_altitude_deg).all()


def test_the_moon_s_own_sky_has_no_moonlight_model() -> None:
    """Of a sub of the Moon itself the brightening is unknown, of a planet's it is not."""
    bright = Place(-32.6, 139.0, 300.0, 0.22, 21.4)
    moment = noon_s(bright, date(2026, 9, 22)) + 10 * 3600
    assert np.isnan(ask(bright, date(2026, 9, 22), MOON, (moment,)).subs.sky_brightening_mag).all()
    assert not np.isnan(ask(bright, date(2026, 9, 22), "saturn", (moment,)).subs.sky_brightening_mag).any()
