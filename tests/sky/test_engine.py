"""What the engine answers where nights, Moons and targets are awkward."""

import socket
import subprocess
import sys
from datetime import UTC, date, datetime

import numpy as np
import pytest

from sitegen.sky.airmass import airmass
from sitegen.sky.diurnal_path import DiurnalPath, horizon_altitude_deg
from sitegen.sky.place import Place
from tests.sky.asking import ask, evenings_of, night_at, unix

KAROO = Place(-32.4, 20.8, 1800.0, sky_mag_arcsec2=21.8)
VEGA, SIGMA_OCTANTIS, ANTARES = (279.2347, 38.7837), (317.195, -88.956), (247.352, -26.432)
SIDEREAL_DEG_S = 360.0 * 1.00273781191135448 / 86400.0


def test_an_empty_request_is_answered() -> None:
    """A diary without nights asks nothing and gets nothing."""
    answer = ask(KAROO, [])
    assert (answer.nights, answer.night_targets, answer.earth_rotation_note) == ((), (), None)
    assert answer.subs.airmass.shape == (0,)


def test_answers_come_in_the_order_of_the_request() -> None:
    """Nights asked out of order, one twice, are answered one for one."""
    evenings = [date(2026, 5, 2), date(2026, 5, 1), date(2026, 5, 2)]
    nights = ask(KAROO, evenings).nights
    assert [night.midnight.date() for night in nights] == evenings
    assert nights[0].sunset == nights[2].sunset != nights[1].sunset


def test_curves_run_noon_to_noon() -> None:
    """The night's curve has a point every ten minutes from noon to noon, and the target's lies on the same grid."""
    answer = ask(KAROO, [date(2026, 5, 2)], [ANTARES])
    curve, target = answer.nights[0].curve, answer.night_targets[0]
    columns = (curve.times_s, curve.sun_altitude_deg, curve.moon_altitude_deg, target.altitude_deg)
    assert {column.shape for column in columns} == {(145,)}
    assert set(np.diff(curve.times_s)) == {600.0}
    assert curve.times_s[72] == pytest.approx(answer.nights[0].midnight.timestamp(), abs=0.5)
    assert curve.sun_altitude_deg.argmin() in (71, 72, 73)


def test_moonrise_may_be_missing_or_double() -> None:
    """Some nights have no moonrise, high latitudes have nights with two, and the first is published."""
    nights = ask(Place(66.5, 25.0), evenings_of(2024)).nights
    doubles = 0
    for night in nights:
        up = night.curve.moon_altitude_deg > -34 / 60 - 0.26
        rises = night.curve.times_s[1:][up[1:] & ~up[:-1]]
        doubles += rises.size > 1
        if rises.size > 1:
            assert night.moon.rise is not None
            assert rises[0] - 900.0 <= night.moon.rise.timestamp() <= rises[0] + 300.0
    assert doubles >= 1
    assert sum(night.moon.rise is None for night in nights) >= 12
    assert sum(night.moon.rise is None for night in ask(KAROO, evenings_of(2026)).nights) in range(11, 15)


def test_up_share_and_moonless_hours_complete_each_other() -> None:
    """The Moon's share and the moonless part of the dark hours add up to the whole, and the intervals lie within."""
    for night in ask(KAROO, evenings_of(2026)).nights:
        moonlit_s = night.moon.up_share_of_dark * night.dark_s
        assert moonlit_s + night.moon.dark_and_moonless_s == pytest.approx(night.dark_s, abs=1e-6)
        for start, end in night.moon.moon_down:
            assert night.dark_start <= start < end <= night.dark_end


def test_full_moon_is_up_all_night_and_new_moon_is_not() -> None:
    """Near full Moon all dark hours are moonlit, near new Moon next to none."""
    full, new = ask(KAROO, [date(2026, 5, 1), date(2026, 5, 16)]).nights
    assert (full.moon.phase, new.moon.phase) == ("full", "new")
    assert full.moon.up_share_of_dark == 1.0
    assert full.moon.moon_down == ()
    assert new.moon.up_share_of_dark == 0.0
    assert new.moon.moon_down == ((new.dark_start, new.dark_end),)


def test_target_highest_in_the_dark() -> None:
    """The greatest altitude is that of the dark hours, found by brute force, in every season."""
    evenings = evenings_of(2026)[::9]
    answer = ask(KAROO, evenings, [VEGA, SIGMA_OCTANTIS, ANTARES])
    for target in answer.night_targets:
        start, end = (moment.timestamp() for moment in target.hours)
        brute = target.path.altitude_deg(np.linspace(start, end, 2000)).max()
        assert target.hours_kind == "dark"
        assert target.max_altitude_deg == pytest.approx(brute, abs=1e-4)
        expected = airmass(target.max_altitude_deg)
        assert target.min_airmass == (None if np.isnan(expected) else pytest.approx(float(expected), abs=1e-9))


def test_a_nights_separation_is_that_of_its_middle() -> None:
    """The night's distance from the Moon is what a sub exposed at the night's middle has."""
    night = ask(KAROO, [date(2026, 5, 2)]).nights[0]
    answer = ask(KAROO, [date(2026, 5, 2)], [ANTARES], [night.middle.timestamp()])
    assert answer.night_targets[0].moon_separation_deg == pytest.approx(answer.subs.moon_separation_deg[0], abs=1e-3)


def test_the_moon_of_a_night_is_that_of_its_middle() -> None:
    """The middle is halfway from sunset to sunrise, and the night's illuminated fraction is the one there."""
    evenings = evenings_of(2026)[::7]
    nights = ask(Place(60.0, 10.0), evenings).nights
    middles = [night.middle.timestamp() for night in nights]
    lit = ask(Place(60.0, 10.0), evenings, moments_s=middles, sub_night=range(len(middles))).subs.moon_illuminated
    for night, there in zip(nights, lit, strict=True):
        halfway_s = (night.sunset.timestamp() + night.sunrise.timestamp()) / 2.0
        assert night.middle.timestamp() == pytest.approx(halfway_s, abs=0.6)
        assert night.moon.illuminated == pytest.approx(there, abs=1e-5)


def test_transit_is_the_upper_culmination_in_the_night() -> None:
    """At transit the target is on the meridian, at 90 - |latitude - declination|, between the night's noons."""
    evenings = evenings_of(2026)
    answer = ask(KAROO, evenings, [ANTARES])
    for night, target in zip(answer.nights, answer.night_targets, strict=True):
        assert -43201 <= (target.transit - night.midnight).total_seconds() <= 43201
        assert abs(np.sin(target.path.hour_angle_rad(target.transit.timestamp()))) <= 6e-5
        top = 90.0 - abs(KAROO.latitude_deg - target.path.declination_deg)
        assert target.path.altitude_deg(target.transit.timestamp()) == pytest.approx(top, abs=1e-4)


def test_hours_fall_back_where_there_is_no_darkness() -> None:
    """Without astronomical darkness the nautical hours judge the target, then the time with the Sun down, then nothing."""
    cases = ((52.0, "nautical"), (62.0, "sun down"), (70.0, None))
    for latitude, kind in cases:
        target = ask(Place(latitude, 0.0), [date(2026, 6, 21)], [VEGA]).night_targets[0]
        assert target.hours_kind == kind
        assert (target.max_altitude_deg is None) == (kind is None)
        assert (target.min_airmass is None) == (kind is None)
    assert target.above(30.0) == ()
    assert target.above_s(30.0) == 0.0


def test_a_target_that_never_rises() -> None:
    """Below the horizon all night there is an altitude, no airmass, and no second above it."""
    target = ask(KAROO, [date(2026, 5, 2)], [(0.0, 80.0)]).night_targets[0]
    assert target.max_altitude_deg < 0.0
    assert target.min_airmass is None
    assert target.above_s(0.0) == 0.0


def test_hours_above_a_limit() -> None:
    """On the equator a target of the equator is 60 deg of hour angle either side above 30 deg: 7 h 58.7 min."""
    path = DiurnalPath(0.0, 0.0, -180.0, 0.0)
    start, end = (datetime(1970, 1, day, tzinfo=UTC) for day in (1, 2))
    ((first, last),) = path.above(30.0, start, end)
    assert (last - first).total_seconds() == pytest.approx(120.0 / SIDEREAL_DEG_S, abs=1.5)


def test_horizon_profile_cuts_the_hours() -> None:
    """A wall 30 deg high in the east delays the target to -60 deg of hour angle; the free west keeps it to +90."""
    wall = ((0.0, 0.0), (45.0, 30.0), (135.0, 30.0), (180.0, 0.0))
    path = DiurnalPath(0.0, 0.001, -180.0, 0.0, wall)
    start, end = (datetime(1970, 1, day, tzinfo=UTC) for day in (1, 2))
    ((first, last),) = path.above(0.0, start, end)
    assert first.timestamp() == pytest.approx(120.0 / SIDEREAL_DEG_S, abs=2.0)
    assert last.timestamp() == pytest.approx(270.0 / SIDEREAL_DEG_S, abs=2.0)


def test_horizon_profile_closes_round_the_north() -> None:
    """Between the last azimuth and the first the profile runs on through north, in whatever order it is given."""
    for profile in (((350.0, 10.0), (10.0, 20.0)), ((10.0, 20.0), (350.0, 10.0))):
        assert horizon_altitude_deg(profile, [0.0, 355.0, 10.0]).tolist() == pytest.approx([15.0, 12.5, 20.0])
    assert horizon_altitude_deg((), [0.0]).tolist() == [-90.0]


def test_subs_without_a_direction() -> None:
    """A sub of something without a fixed place has a Moon, and no altitude, airmass, separation or brightening."""
    moment = unix("2026-05-01T22:00")
    subs = ask(KAROO, [date(2026, 5, 1)], [ANTARES], [moment, moment], [0, 0], [0, -1]).subs
    for name in ("target_altitude_deg", "airmass", "moon_separation_deg", "sky_brightening_mag"):
        fixed, moving = getattr(subs, name)
        assert np.isfinite(fixed)
        assert np.isnan(moving)
    assert subs.moon_altitude_deg[0] == subs.moon_altitude_deg[1]
    assert np.isfinite(subs.moon_illuminated).all()


def test_brightening_under_a_full_moon() -> None:
    """Under a full Moon the sky at a target 60 to 120 deg away brightens by two to four magnitudes, without the Moon by none."""
    full, new = unix("2026-05-01T21:00"), unix("2026-05-16T21:00")
    subs = ask(KAROO, [date(2026, 5, 1), date(2026, 5, 16)], [(120.0, -40.0)], [full, new], [0, 1]).subs
    assert subs.moon_altitude_deg[0] > 30.0 > 0.0 > subs.moon_altitude_deg[1]
    assert 60.0 < subs.moon_separation_deg[0] < 120.0
    assert 2.0 < subs.sky_brightening_mag[0] < 4.0
    assert subs.sky_brightening_mag[1] == 0.0


def test_an_unmeasured_site_claims_nothing_by_moonlight() -> None:
    """Where nobody measured the dark sky the brightening is unknown with the Moon up, and 0 with it down."""
    place = Place(KAROO.latitude_deg, KAROO.longitude_deg, 1800.0)
    full, new = unix("2026-05-01T21:00"), unix("2026-05-16T21:00")
    subs = ask(place, [date(2026, 5, 1), date(2026, 5, 16)], [(120.0, -40.0)], [full, new], [0, 1]).subs
    assert np.isnan(subs.sky_brightening_mag[0])
    assert subs.sky_brightening_mag[1] == 0.0


def test_a_sub_far_outside_its_night_is_refused() -> None:
    """A sub of another day is a mistake of the caller, said with its index; half an hour past noon is not."""
    noon_after = unix("2026-05-02T12:00") - 240.0 * KAROO.longitude_deg
    ask(KAROO, [date(2026, 5, 1)], [ANTARES], [noon_after + 1800.0])
    with pytest.raises(ValueError, match=r"^1 subs lie outside their night, the first at index 1$"):
        ask(KAROO, [date(2026, 5, 1)], [ANTARES], [noon_after, noon_after + 8000.0])


def test_a_date_beyond_the_earth_rotation_table() -> None:
    """A night past the table's end is computed and said once, with the size of the error; one within says nothing."""
    answer = ask(KAROO, [date(2026, 5, 1), date(2044, 5, 1)])
    assert answer.earth_rotation_note.startswith("1 of 2 nights lie after 20")
    assert "altitudes by 0.00" in answer.earth_rotation_note
    assert answer.nights[1].sunset is not None
    assert ask(KAROO, [date(2026, 5, 1)]).earth_rotation_note is None
    assert "before 1973-01-02" in ask(KAROO, [date(1965, 5, 1)]).earth_rotation_note


def test_no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever is asked, no socket is opened, not even for a date beyond every table."""

    def refuse(*_: object, **__: object) -> None:
        raise AssertionError("a socket was opened")

    monkeypatch.setattr(socket, "socket", refuse)
    assert night_at(KAROO, "2060-05-01").dark_s > 0.0


def test_light_modules_stay_light() -> None:
    """Places, requests, answers and the rule of thumb load neither ERFA nor astropy."""
    code = (
        "import sys, sitegen.sky.place, sitegen.sky.request, sitegen.sky.answer, sitegen.sky.advice, sitegen.sky.night_time;"
        "sys.exit(any(name in sys.modules for name in ('erfa', 'astropy')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
