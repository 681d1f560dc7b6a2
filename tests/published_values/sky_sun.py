"""The Sun: Meeus, the US Naval Observatory as quoted in Skyfield's test suite, and geometry."""

from tests.published_values.record import Given, Moments, Published, Table, degrees, meeus

WHY_25 = "0.1 arcsec: newer precession and theory"
MINUTE = "the minute printed: sources round it or cut it off"
SKYFIELD = "computed with Skyfield and DE421, samples of two minutes"

JDE_25 = Given(2448908.5, meeus("ex. 25.a and 25.b"))
RA_25B_DEG = Published(15 * degrees(13, 13, 30.749), 0.1 / 3600, meeus("ex. 25.b, full VSOP87"), WHY_25)
DEC_25B_DEG = Published(degrees(-7, 47, 1.74), 0.1 / 3600, meeus("ex. 25.b, full VSOP87"), WHY_25)
LONGITUDE_25A_DEG = Published(degrees(199, 54, 32), 11 / 3600, meeus("ex. 25.a"), "its method is good to 0.01 deg")
DISTANCE_25A_AU = Published(0.99766, 5e-5, meeus("ex. 25.a"), "the low-accuracy method's fifth digit")

SEASONS_2018 = Moments(
    {180.0: "2018-09-23T01:54", 270.0: "2018-12-21T22:23"},
    60.0,
    "US Naval Observatory, Earth's Seasons, 2018, as quoted in Skyfield's test suite; by apparent longitude",
    MINUTE,
)

BLUFFTON = Given((40.8939, -83.8917, "2018-09-12"), "US Naval Observatory, one-day table: latitude, longitude, date")
BLUFFTON_SUN = Moments(
    {"sunrise": "2018-09-12T11:13", "sunset": "2018-09-12T23:50"},
    60.0,
    "US Naval Observatory, one-day table for Bluffton, Ohio, 2018, as quoted in Skyfield's test suite",
    MINUTE,
)

HIGH_LATITUDES = Given(
    {
        "Greenwich": (51.4779, 0.0),
        "Edinburgh": (55.95, -3.19),
        "Stockholm": (59.33, 18.07),
        "Reykjavik": (64.15, -21.94),
        "Tromso": (69.65, 18.96),
    },
    f"{SKYFIELD}: latitude and longitude that the counts below hold for",
)
DATE_EITHER_END = "a date at either end: near it the Sun grazes the limit"
NO_ASTRONOMICAL_DARKNESS_2026 = Table(
    {"Greenwich": 59, "Edinburgh": 96, "Stockholm": 118, "Reykjavik": 146, "Tromso": 174},
    2,
    f"{SKYFIELD}: nights with the Sun never below -18 deg",
    DATE_EITHER_END,
)
NO_NAUTICAL_DARKNESS_2026 = Table(
    {"Greenwich": 0, "Edinburgh": 40, "Stockholm": 76, "Reykjavik": 110, "Tromso": 143},
    2,
    f"{SKYFIELD}: nights with the Sun never below -12 deg",
    DATE_EITHER_END,
)
NO_CIVIL_DARKNESS_2026 = Table(
    {"Greenwich": 0, "Edinburgh": 0, "Stockholm": 0, "Reykjavik": 66, "Tromso": 108},
    2,
    f"{SKYFIELD}: nights with the Sun never below -6 deg",
    DATE_EITHER_END,
)
NO_SUNSET_2026 = Table(
    {"Greenwich": 0, "Edinburgh": 0, "Stockholm": 0, "Reykjavik": 0, "Tromso": 68},
    2,
    f"{SKYFIELD}: nights without a sunset",
    DATE_EITHER_END,
)
LOWEST_SUN_2026_06_21_DEG = Table(
    {"Greenwich": -15.09, "Edinburgh": -10.62, "Stockholm": -7.24, "Reykjavik": -2.42, "Tromso": 3.08},
    0.02,
    f"{SKYFIELD}: the Sun's lowest on the night of 21 June",
    "0.005 deg of the printed digit, 0.01 deg between samples of two minutes",
)
SPANS_WITHOUT_DARKNESS_2026 = Moments(
    {
        "Greenwich": "2026-05-22/2026-07-19",
        "Edinburgh": "2026-05-04/2026-08-07",
        "Stockholm": "2026-04-23/2026-08-18",
        "Reykjavik": "2026-04-09/2026-09-01",
        "Tromso": "2026-03-26/2026-09-15",
    },
    86_400.0,
    f"{SKYFIELD}: first and last evening without astronomical darkness",
    DATE_EITHER_END,
)

VANISHING_NIGHT = Given(
    {48.5: 0, 48.6: 6},
    f"{SKYFIELD}: nights of 2026 without astronomical darkness by latitude; worked by hand: 90 - 18 - 23.44 = 48.56",
)
