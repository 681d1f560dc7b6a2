"""Coordinates: Meeus, Astronomical Algorithms, 2nd ed. (1998), digits as quoted in two public test suites."""

from tests.published_values.sky_published import Published, degrees

SIDEREAL_12A_S = Published(
    3600 * degrees(13, 10, 46.1351),
    0.005,
    "Meeus ex. 12.a, apparent sidereal time, 1987-04-10 0h UT",
    "newer precession: 0.003 s",
)
SIDEREAL_12B_S = Published(
    3600 * degrees(8, 34, 57.0896), 0.005, "Meeus ex. 12.b, mean sidereal time, 1987-04-10 19:21 UT", "newer precession: 0.003 s"
)
DELTA_T_1987_S = Published(
    55.45, 0.1, "annual table of delta T: 55.3 s at 1987.0, 55.8 s at 1988.0 (from memory)", "read between two lines"
)
UT1_MINUS_UTC_AROUND_2017_S = (-0.408, -0.408, 0.592, 0.591)
"""IERS: -0.408 s before the leap second at the end of 2016 and +0.592 s after it (from memory)."""

VENUS_13B = (degrees(38, 55, 17), degrees(-6, 43, 11.61), 64.352133)
"""Latitude, declination, hour angle in degrees."""
AZIMUTH_13B_DEG = Published(248.0337, 1e-3, "Meeus ex. 13.b, 68.0337 from the south")
ALTITUDE_13B_DEG = Published(15.1249, 1e-3, "Meeus ex. 13.b")

ARCTURUS, SPICA = (213.9154, 19.1825), (201.2983, -11.1614)
SEPARATION_17A_DEG = Published(32.7930, 1e-4, "Meeus ex. 17.a")

SAEMUNDSSON_16A = (33.246 / 60.0, Published(24.618, 1e-3, "Meeus ex. 16.a, eq. 16.4, arcminutes at a true altitude of 33.246'"))

VENUS_15A = {
    "longitude_deg": -degrees(71, 5), "latitude_deg": degrees(42, 20), "sidereal_0h_deg": 15 * degrees(11, 50, 58.1),
    "ra_deg": tuple(15 * degrees(2, m, s) for m, s in ((42, 43.25), (46, 55.51), (51, 7.69))),
    "dec_deg": (degrees(18, 2, 51.4), degrees(18, 26, 27.3), degrees(18, 49, 38.7)),
    "delta_t_s": 56.0, "standard_altitude_deg": -0.5667,
}  # fmt: skip
RISE_15A = Published(0.51766, 1e-5, "Meeus ex. 15.a, p. 103, fraction of 1988-03-20 UT")
TRANSIT_15A = Published(0.81980, 1e-5, "Meeus ex. 15.a")
SET_15A = Published(0.12130, 1e-5, "Meeus ex. 15.a")

MARS_40A = {
    "ra_deg": 339.530208, "dec_deg": -15.771083, "distance_au": 0.37276, "rho_sin": 0.546861, "rho_cos": 0.836339,
    "west_longitude_deg": 15 * degrees(7, 47, 27), "utc": "2003-08-28T03:17:00",
}  # fmt: skip
RA_40A_DEG = Published(
    15 * degrees(22, 38, 8.54), 0.1 / 3600, "Meeus ex. 40.a, p. 280", "0.01 s of right ascension is 0.15 arcsec"
)
DEC_40A_DEG = Published(degrees(-15, 46, 30.0), 0.06 / 3600, "Meeus ex. 40.a")
