"""The Moon, from Meeus, the US Naval Observatory as quoted in Skyfield's test suite, and a JPL ephemeris."""

from tests.published_values.record import LAST_DIGIT, Given, Moments, Published, Table, meeus

MINUTE = "the minute printed: tables differ in rounding it and cutting it off"

JDE_47A = Given(2448724.5, meeus("ex. 47.a"))
POSITION_47A = {
    "longitude_deg": Published(133.162655, 1e-5, meeus("ex. 47.a, p. 342"), "ERFA moon98 is the same series, newer ecliptic"),
    "latitude_deg": Published(-3.229126, 2e-5, meeus("ex. 47.a"), "the book sets back the longitude alone for light-time"),
    "distance_km": Published(368409.7, 0.05, meeus("ex. 47.a"), "half of the last digit printed"),
    "parallax_deg": Published(0.991990, 1e-6, meeus("ex. 47.a"), LAST_DIGIT),
    "apparent_longitude_deg": Published(133.167265, 1e-5, meeus("ex. 47.a, with nutation"), "newer ecliptic and nutation"),
}

MOON_48A = Given((134.6885, 13.7684, 368410.0), meeus("ex. 48.a: right ascension, declination, km"))
SUN_48A = Given((20.6579, 8.6964, 149971520.0), meeus("ex. 48.a: right ascension, declination, km"))
SEMIDIAMETER_ARCSEC_KM = Published(
    358_473_400.0, 358_000.0, meeus("chapter 55: semidiameter in arcseconds times distance in km"),
    "its radius, 0.272481 of the Earth's, is 0.03 % more than the mean radius used here; 0.1 % is allowed",
)  # fmt: skip
PHASE_ANGLE_48A = Published(69.0756, 1e-4, meeus("ex. 48.a, eqs 48.2 and 48.3"), LAST_DIGIT)
ILLUMINATED_48A = Published(
    0.6786,
    5e-5,
    f"computed from the inputs of {meeus('ex. 48.a, eq. 48.1')}; the book prints 0.68",
    "half of the last digit kept",
)

NEW_MOON_JDE_49A = Published(
    2443192.65118, 20 / 86400, meeus("ex. 49.a, p. 353"), "17 s is the book's own error; the series adds"
)

ILLUMINATED_2018_09 = Table(
    dict(zip(range(9, 19), (0, 0, 0.03, 0.08, 0.15, 0.24, 0.33, 0.43, 0.52, 0.62), strict=True)),
    0.005 + 0.0005,
    "US Naval Observatory, Fraction of the Moon Illuminated, 2018, as quoted in Skyfield's test suite; by day, at 05:00 UT",
    "half of the last digit, and its ephemeris",
)
PHASES_2018_09 = Moments(
    {0.25: "2018-09-16T23:15", 0.5: "2018-09-25T02:52"},
    60.0,
    "US Naval Observatory, Phases of the Moon, 2018, as quoted in Skyfield's test suite: first quarter and full",
    MINUTE,
)

_PHASES = {
    2025: {
        0.00: "01-29 12:36, 02-28 00:45, 03-29 10:58, 04-27 19:31, 05-27 03:02, 06-25 10:32, 07-24 19:11, 08-23 06:07, "
        "09-21 19:54, 10-21 12:25, 11-20 06:47, 12-20 01:43",
        0.50: "01-13 22:27, 02-12 13:53, 03-14 06:55, 04-13 00:22, 05-12 16:56, 06-11 07:44, 07-10 20:37, 08-09 07:55, "
        "09-07 18:09, 10-07 03:48, 11-05 13:19, 12-04 23:14",
        0.25: "01-06 23:56, 02-05 08:02, 03-06 16:32, 04-05 02:15, 05-04 13:52, 06-03 03:41, 07-02 19:30, 08-01 12:41, "
        "08-31 06:25, 09-29 23:54, 10-29 16:21, 11-28 06:59, 12-27 19:10",
        0.75: "01-21 20:31, 02-20 17:33, 03-22 11:29, 04-21 01:36, 05-20 11:59, 06-18 19:19, 07-18 00:38, 08-16 05:12, "
        "09-14 10:33, 10-13 18:13, 11-12 05:28, 12-11 20:52",
    },
    2026: {
        0.00: "01-18 19:52, 02-17 12:01, 03-19 01:23, 04-17 11:52, 05-16 20:01, 06-15 02:54, 07-14 09:44, 08-12 17:37, "
        "09-11 03:27, 10-10 15:50, 11-09 07:02, 12-09 00:52",
        0.50: "01-03 10:03, 02-01 22:09, 03-03 11:38, 04-02 02:12, 05-01 17:23, 05-31 08:45, 06-29 23:57, 07-29 14:36, "
        "08-28 04:18, 09-26 16:49, 10-26 04:12, 11-24 14:54, 12-24 01:28",
        0.25: "01-26 04:47, 02-24 12:28, 03-25 19:18, 04-24 02:32, 05-23 11:11, 06-21 21:55, 07-21 11:06, 08-20 02:46, "
        "09-18 20:44, 10-18 16:13, 11-17 11:48, 12-17 05:43",
        0.75: "01-10 15:48, 02-09 12:43, 03-11 09:39, 04-10 04:52, 05-09 21:10, 06-08 10:01, 07-07 19:29, 08-06 02:21, "
        "09-04 07:51, 10-03 13:25, 11-01 20:28, 12-01 06:09, 12-30 18:59",
    },
}

PHASES = Moments(
    {
        (year, part): tuple(f"{year}-{line.replace(' ', 'T')}" for line in lines.split(", "))
        for year, parts in _PHASES.items()
        for part, lines in parts.items()
    },
    60.0,
    "computed with Skyfield and DE421, confirmed by a second library to 6 s; the new Moons agree with published lists; by year "
    "and part of the lunation",
    MINUTE,
)

FULL_MOON_FRACTION_2026_01_03 = Published(
    0.99861, 5e-5, "computed with Skyfield and DE421: a full Moon is not lit to the last", "half of the fourth digit"
)
