"""The Sun: Meeus, Astronomical Algorithms, 2nd ed. (1998); USNO as quoted in Skyfield's test suite; geometry."""

from tests.published_values.sky_published import Published, degrees

WHY_25 = "0.1 arcsec: newer precession and theory"
JDE_25 = 2448908.5
RA_25B_DEG = Published(15 * degrees(13, 13, 30.749), 0.1 / 3600, "Meeus ex. 25.b, full VSOP87", WHY_25)
DEC_25B_DEG = Published(degrees(-7, 47, 1.74), 0.1 / 3600, "Meeus ex. 25.b, full VSOP87", WHY_25)
LONGITUDE_25A_DEG = Published(degrees(199, 54, 32), 11 / 3600, "Meeus ex. 25.a", "its method is good to 0.01 deg")
DISTANCE_25A_AU = Published(0.99766, 5e-5, "Meeus ex. 25.a", "the low-accuracy method's fifth digit")

SEASONS_2018 = {180.0: "2018-09-23T01:54", 270.0: "2018-12-21T22:23"}
"""Apparent longitude, UT. USNO, Earth's Seasons, 2018; one minute."""

BLUFFTON = (40.8939, -83.8917, "2018-09-12", "2018-09-12T11:13", "2018-09-12T23:50")
"""Latitude, longitude, date, sunrise, sunset in UT: USNO one-day table; one minute."""

HIGH_LATITUDE_2026 = {
    # site: (latitude, longitude, nights never below -18, -12, -6, and with no sunset, Sun's lowest on the night of 21 June)
    "Greenwich": (51.4779, 0.0, 59, 0, 0, 0, -15.09),
    "Edinburgh": (55.95, -3.19, 96, 40, 0, 0, -10.62),
    "Stockholm": (59.33, 18.07, 118, 76, 0, 0, -7.24),
    "Reykjavik": (64.15, -21.94, 146, 110, 66, 0, -2.42),
    "Tromso": (69.65, 18.96, 174, 143, 108, 68, 3.08),
}
"""Computed with Skyfield and DE421, two-minute samples; one date either end."""
HIGH_LATITUDE_SPANS_2026 = {
    "Greenwich": ("05-22", "07-19"), "Edinburgh": ("05-04", "08-07"), "Stockholm": ("04-23", "08-18"),
    "Reykjavik": ("04-09", "09-01"), "Tromso": ("03-26", "09-15"),
}  # fmt: skip
"""First and last evening without astronomical darkness; same source."""

VANISHING_NIGHT = ((48.5, 0), (48.6, 6))
"""Latitude, nights of 2026 without astronomical darkness. Geometry (90 - 18 - 23.44 = 48.56) and the same computation."""
