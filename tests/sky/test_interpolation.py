"""The error of the short polynomials and of what the engine holds still over a night, against bare ERFA."""

from datetime import date

import erfa
import numpy as np
import pytest

from sitegen.sky.crossings import crossings
from sitegen.sky.diurnal_path import altitude_deg
from sitegen.sky.earth_rotation import UNIX_EPOCH_JD, terrestrial_time, ut1_minus_utc_s
from sitegen.sky.moon import angle_deg, apparent_moon
from sitegen.sky.night_ephemeris import HALF_SPAN_S, NightEphemeris, prepare
from sitegen.sky.place import Place
from sitegen.sky.sun import apparent_sun

ARCSEC = 1.0 / 3600.0
COUNT = 400


def random_nights() -> tuple[list[Place], NightEphemeris, np.ndarray, np.ndarray]:
    """Places, their nights over forty years, an index a night and a moment anywhere in its span."""
    rng = np.random.default_rng(3)
    places = [Place(float(rng.uniform(-80, 80)), float(rng.uniform(-180, 180)), 500.0) for _ in range(COUNT)]
    days = rng.integers(date(1995, 1, 1).toordinal(), date(2027, 1, 1).toordinal(), COUNT)
    ephemeris = prepare(places, [(i, date.fromordinal(int(day))) for i, day in enumerate(days)])
    return places, ephemeris, np.arange(COUNT), ephemeris.middle_s + rng.uniform(-HALF_SPAN_S, HALF_SPAN_S, COUNT)


def icrs_again(ephemeris: NightEphemeris, vectors: np.ndarray) -> np.ndarray:
    """The night's axes undone."""
    return np.einsum("nji,nj->ni", ephemeris.to_cirs, vectors)


@pytest.mark.parametrize(("body", "name", "bound_arcsec"), [(apparent_sun, "sun", 0.02), (apparent_moon, "moon", 0.02)])
def test_polynomials_follow_the_ephemeris(body: object, name: str, bound_arcsec: float) -> None:
    """Anywhere in a night's span Sun and Moon are within 0.02 arcsec of ERFA called at that moment."""
    _, ephemeris, night, moments = random_nights()
    interpolated = icrs_again(ephemeris, getattr(ephemeris, name)(night, moments))
    exact = body(terrestrial_time(moments))  # type: ignore[operator]
    assert angle_deg(interpolated, exact).max() <= bound_arcsec * ARCSEC
    assert np.abs(np.linalg.norm(interpolated, axis=-1) / np.linalg.norm(exact, axis=-1) - 1.0).max() <= 1e-7


def test_target_altitudes_follow_the_full_transformation() -> None:
    """A target's altitude is within 0.0003 deg of ERFA's full chain: deflection, diurnal aberration, IAU 2006."""
    places, ephemeris, night, moments = random_nights()
    rng = np.random.default_rng(4)
    ra, dec = rng.uniform(0, 2 * np.pi, COUNT), np.arcsin(rng.uniform(-1, 1, COUNT))
    seen = ephemeris.to_meridian(night, moments, ephemeris.direction(night, erfa.s2c(ra, dec)))
    longitude, latitude = (np.radians([getattr(place, name) for place in places]) for name in ("longitude_deg", "latitude_deg"))
    astrom, _ = erfa.apco13(
        UNIX_EPOCH_JD, moments / 86400.0, ut1_minus_utc_s(moments), longitude, latitude, 500.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.5
    )
    _, zenith, *_ = erfa.atioq(*erfa.atciqz(ra, dec, astrom), astrom)
    assert np.max(np.abs(ephemeris.altitude_deg(night, seen) - (90.0 - np.degrees(zenith)))) <= 0.0003


def test_held_axes_cost_little() -> None:
    """Holding a night's precession-nutation still turns the sky by less than 0.1 arcsec at its ends."""
    _, ephemeris, night, _ = random_nights()
    later = terrestrial_time(ephemeris.middle_s + HALF_SPAN_S)
    moved = erfa.c2ixys(*erfa.xys06a(*later))
    for axis in np.eye(3):
        assert angle_deg(ephemeris.to_cirs @ axis, moved @ axis).max() <= 0.1 * ARCSEC
    assert night.size == COUNT


def test_a_peak_between_samples_is_found() -> None:
    """A curve that crosses and returns within one step has both crossings; one that only comes near has none."""
    times = np.arange(0.0, 6001.0, 600.0) * np.ones((3, 1))
    tops = np.array([0.001, -0.001, 0.001])
    signs = np.array([1.0, 1.0, -1.0])

    def curve(row: np.ndarray, time: np.ndarray) -> np.ndarray:
        return signs[row] * (tops[row] - ((time - 3200.0) / 6000.0) ** 2)

    found = crossings(curve, times, curve(np.arange(3)[:, None], times))
    assert found.row.tolist() == [0, 0, 2, 2]
    half = 6000.0 * np.sqrt(0.001)
    assert np.max(np.abs(found.time_s - [3200.0 - half, 3200.0 + half] * 2)) <= 0.05
    assert found.rising.tolist() == [True, False, False, True]


def test_crossings_of_plain_sines() -> None:
    """Crossings of a sine come at its known zeros, in order, with their direction."""
    times = np.arange(0.0, 86401.0, 600.0)[None, :]
    period = 40000.0

    def curve(_: np.ndarray, time: np.ndarray) -> np.ndarray:
        return np.sin(2 * np.pi * (time - 1000.0) / period)

    found = crossings(curve, times, curve(np.zeros((1, 1), int), times))
    assert np.max(np.abs(found.time_s - [1000.0, 21000.0, 41000.0, 61000.0, 81000.0])) <= 0.05
    assert found.rising.tolist() == [True, False, True, False, True]


def test_altitude_at_transit() -> None:
    """On the meridian the altitude is 90 less the difference of latitude and declination."""
    assert altitude_deg(50.0, 20.0, 0.0) == pytest.approx(60.0, abs=1e-9)
    assert altitude_deg(-33.0, -60.0, 0.0) == pytest.approx(63.0, abs=1e-9)
