"""Frames, refraction and rise against published_values/sky_coordinates.py."""

import erfa
import numpy as np

from sitegen.sky.crossings import refine
from sitegen.sky.diurnal_path import altitude_deg, azimuth_deg
from sitegen.sky.earth_rotation import earth_rotation_angle, terrestrial_time, ut1_minus_utc_s
from sitegen.sky.moon import angle_deg
from sitegen.sky.night_ephemeris import from_surface, turned
from sitegen.sky.refraction import refraction_deg
from sitegen.sky.separation import separation_deg
from sitegen.sky.sun import AU_KM
from tests.published_values import sky_coordinates as published
from tests.sky.asking import unix

EARTH_RADIUS_KM = 6378.137  # WGS 84


def unit(ra_deg: float, dec_deg: float) -> np.ndarray:
    """Unit vector."""
    return np.asarray(erfa.s2c(np.radians(ra_deg), np.radians(dec_deg)))


def utc_of_ut1(text: str) -> np.ndarray:
    """UTC unix seconds at which UT1 reads the text."""
    ut1 = np.array([unix(text)])
    return ut1 - ut1_minus_utc_s(ut1)


def test_sidereal_time_of_examples_12() -> None:
    """The Earth's angle gives the apparent and mean sidereal times of Meeus's worked examples."""
    for text, published_s, equation in (
        ("1987-04-10T00:00", published.SIDEREAL_12A_S, lambda tt: erfa.eo06a(*tt)),
        ("1987-04-10T19:21", published.SIDEREAL_12B_S, lambda tt: erfa.eo06a(*tt) + erfa.ee06a(*tt)),
    ):
        moment = utc_of_ut1(text)
        sidereal = (earth_rotation_angle(moment) - equation(terrestrial_time(moment))) % (2 * np.pi)
        assert published_s.agrees(sidereal[0] * 43200.0 / np.pi)


def test_delta_t_of_1987() -> None:
    """TT-UT1 of April 1987 is the tabulated delta T, so neither clock runs the wrong way."""
    utc = np.array([unix("1987-04-10T00:00")])
    tt_s = (terrestrial_time(utc)[1] * 86400.0)[0]
    assert published.DELTA_T_1987_S.agrees(tt_s - utc[0] - ut1_minus_utc_s(utc)[0])


def test_a_leap_second_is_not_smeared() -> None:
    """Through the last day of 2016 UT1-UTC keeps its -0.41 s, and the leap second makes it +0.59 s at once."""
    hours = np.array([unix("2016-12-31T06:00"), unix("2016-12-31T23:59"), unix("2017-01-01T00:01"), unix("2017-01-01T18:00")])
    assert published.UT1_MINUS_UTC_AROUND_2017_S.agrees(ut1_minus_utc_s(hours))


def test_horizontal_coordinates_of_example_13b() -> None:
    """Venus stands over Washington where Meeus's worked example puts it."""
    latitude, declination, hour_angle = published.VENUS_13B.values
    assert published.ALTITUDE_13B_DEG.agrees(altitude_deg(latitude, declination, np.radians(hour_angle)))
    assert published.AZIMUTH_13B_DEG.agrees(azimuth_deg(latitude, declination, np.radians(hour_angle)))


def test_separation_of_example_17a() -> None:
    """Arcturus and Spica are as far apart as in Meeus's worked example."""
    assert published.SEPARATION_17A_DEG.agrees(angle_deg(unit(*published.ARCTURUS.values), unit(*published.SPICA.values)))


def test_refraction_of_example_16a() -> None:
    """Saemundsson's refraction is that of Meeus's worked example."""
    assert published.SAEMUNDSSON_16A_ARCMIN.agrees(refraction_deg(published.ALTITUDE_16A_DEG.values) * 60.0)


def test_refraction_ends_where_its_formula_does() -> None:
    """Below one degree under the horizon the value is held, finite and positive."""
    assert np.all(refraction_deg(np.array([-90.0, -5.11, -1.0])) == refraction_deg(-1.0))
    assert 0.5 < refraction_deg(-1.0) < 1.0


def venus_over_boston(moment_s: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Hour angle (radians) and declination of example 15.a, three places interpolated, seconds of 1988-03-20 UT."""
    venus = published.VENUS_15A.values
    n = (moment_s + venus["delta_t_s"]) / 86400.0
    ra, dec = (np.polyval(np.polyfit([-1, 0, 1], venus[key], 2), n) for key in ("ra_deg", "dec_deg"))
    sidereal = venus["sidereal_0h_deg"] + 360.985647 * moment_s / 86400.0
    return np.radians(sidereal + venus["longitude_deg"] - ra), dec


def test_rise_transit_and_set_of_example_15a() -> None:
    """The crossing finder gives Venus's rise, transit and set over Boston as Meeus's worked example does."""
    venus = published.VENUS_15A.values

    def above_horizon(_: np.ndarray, moment_s: np.ndarray) -> np.ndarray:
        hour_angle, dec = venus_over_boston(moment_s)
        return altitude_deg(venus["latitude_deg"], dec, hour_angle) - venus["standard_altitude_deg"]

    def past_meridian(_: np.ndarray, moment_s: np.ndarray) -> np.ndarray:
        return np.sin(venus_over_boston(moment_s)[0])

    for curve, hours, printed in (
        (above_horizon, (9, 15), published.RISE_15A),
        (past_meridian, (17, 22), published.TRANSIT_15A),
        (above_horizon, (0, 6), published.SET_15A),
    ):
        low, high = (np.array([hour * 3600.0]) for hour in hours)
        assert printed.agrees(refine(curve, np.array([0]), low, high)[0] / 86400.0)


def test_parallax_of_example_40a() -> None:
    """Mars is shifted from Palomar as in Meeus's worked example."""
    mars = published.MARS_40A.values
    moment = np.array([unix(mars["utc"])])
    sidereal = erfa.gst06a(2440587.5, moment / 86400.0, *terrestrial_time(moment))[0]
    local = sidereal - np.radians(mars["west_longitude_deg"])
    geocentric = mars["distance_au"] * AU_KM * unit(mars["ra_deg"], mars["dec_deg"])
    across, polar = EARTH_RADIUS_KM * mars["rho_cos"], EARTH_RADIUS_KM * mars["rho_sin"]
    seen = turned(from_surface(turned(geocentric, local), across, polar), -local)
    ra, dec = np.degrees(erfa.c2s(seen))
    assert published.RA_40A_DEG.agrees(ra % 360.0)
    assert published.DEC_40A_DEG.agrees(dec)


def test_the_separation_of_two_places() -> None:
    """Arcturus and Spica by Meeus's example 17.a, in both orders; a place and itself, and its opposite."""
    arcturus, spica = published.ARCTURUS.values, published.SPICA.values
    assert published.SEPARATION_17A_DEG.agrees(separation_deg(*arcturus, *spica))
    assert published.SEPARATION_17A_DEG.agrees(separation_deg(*spica, *arcturus))
    assert separation_deg(*spica, *spica) == 0.0
    assert abs(separation_deg(10.0, 20.0, 190.0, -20.0) - 180.0) < 1e-6
