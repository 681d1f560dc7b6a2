"""Coordinates, from Meeus's worked examples, and the clocks of the Earth's rotation."""

from tests.published_values.record import FROM_MEMORY, LAST_DIGIT, Given, Numbers, Published, degrees, meeus

PRECESSION = "newer precession: 0.003 s"
SIDEREAL_12A_S = Published(
    3600 * degrees(13, 10, 46.1351), 0.005, meeus("ex. 12.a, apparent sidereal time, 1987-04-10 0h UT"), PRECESSION
)
SIDEREAL_12B_S = Published(
    3600 * degrees(8, 34, 57.0896), 0.005, meeus("ex. 12.b, mean sidereal time, 1987-04-10 19:21 UT"), PRECESSION
)
DELTA_T_1987_S = Published(
    55.45, 0.1, f"annual table of delta T: 55.3 s at 1987.0, 55.8 s at 1988.0 ({FROM_MEMORY})", "read between two lines"
)
UT1_MINUS_UTC_AROUND_2017_S = Numbers(
    (-0.408, -0.408, 0.592, 0.591),
    0.003,
    f"IERS: -0.408 s before the leap second at the end of 2016 and +0.592 s after it ({FROM_MEMORY})",
    "a day's drift is 0.001 s, and so is the last digit",
)

VENUS_13B = Given(
    (degrees(38, 55, 17), degrees(-6, 43, 11.61), 64.352133), meeus("ex. 13.b: latitude, declination, hour angle in degrees")
)
AZIMUTH_13B_DEG = Published(248.0337, 1e-4, meeus("ex. 13.b, 68.0337 from the south"), LAST_DIGIT)
ALTITUDE_13B_DEG = Published(15.1249, 1e-4, meeus("ex. 13.b"), LAST_DIGIT)

ARCTURUS = Given((213.9154, 19.1825), meeus("ex. 17.a"))
SPICA = Given((201.2983, -11.1614), meeus("ex. 17.a"))
SEPARATION_17A_DEG = Published(32.7930, 1e-4, meeus("ex. 17.a"), LAST_DIGIT)

ALTITUDE_16A_DEG = Given(33.246 / 60.0, meeus("ex. 16.a: true altitude"))
SAEMUNDSSON_16A_ARCMIN = Published(24.618, 1e-3, meeus("ex. 16.a, eq. 16.4"), LAST_DIGIT)
SAEMUNDSSON_AT_10_DEG_ARCMIN = Published(5.41, 0.01, f"worked by hand from {meeus('eq. 16.4')}", LAST_DIGIT)

VENUS_15A = Given(
    {
        "longitude_deg": -degrees(71, 5),
        "latitude_deg": degrees(42, 20),
        "sidereal_0h_deg": 15 * degrees(11, 50, 58.1),
        "ra_deg": tuple(15 * degrees(2, m, s) for m, s in ((42, 43.25), (46, 55.51), (51, 7.69))),
        "dec_deg": (degrees(18, 2, 51.4), degrees(18, 26, 27.3), degrees(18, 49, 38.7)),
        "delta_t_s": 56.0,
        "standard_altitude_deg": -0.5667,
    },
    meeus("ex. 15.a"),
)
RISE_15A = Published(0.51766, 1e-5, meeus("ex. 15.a, p. 103, fraction of 1988-03-20 UT"), LAST_DIGIT)
TRANSIT_15A = Published(0.81980, 1e-5, meeus("ex. 15.a"), LAST_DIGIT)
SET_15A = Published(0.12130, 1e-5, meeus("ex. 15.a"), LAST_DIGIT)

MARS_40A = Given(
    {
        "ra_deg": 339.530208,
        "dec_deg": -15.771083,
        "distance_au": 0.37276,
        "rho_sin": 0.546861,
        "rho_cos": 0.836339,
        "west_longitude_deg": 15 * degrees(7, 47, 27),
        "utc": "2003-08-28T03:17:00",
    },
    meeus("ex. 40.a"),
)
RA_40A_DEG = Published(
    15 * degrees(22, 38, 8.54), 0.1 / 3600, meeus("ex. 40.a, p. 280"), "half of 0.01 s of right ascension is 0.08 arcsec"
)
DEC_40A_DEG = Published(degrees(-15, 46, 30.0), 0.06 / 3600, meeus("ex. 40.a"), "half of the last digit, 0.05 arcsec")
