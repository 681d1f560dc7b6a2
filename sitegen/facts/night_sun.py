"""Sunset, sunrise and the hours of darkness."""

from sitegen.facts.fact import Fact
from sitegen.facts.night_view import of_sky
from sitegen.facts.views import NightView

EPHEMERIS = "Sun's position from ERFA; rise and set at −50′ (upper limb, 34′ of refraction)"
DEFINITION = "definition of astronomical twilight: the Sun's centre 18° below the horizon; nautical 12°"

EVENING_OF: Fact[NightView] = Fact(
    "Evening of",
    "",
    lambda night: night.evening.isoformat(),
    "Nights go by their evening.",
    "definition",
)
SITE: Fact[NightView] = Fact("Site", "", lambda night: night.site.slug, "Where the rig stood.", "the author")
SUNSET: Fact[NightView] = Fact("Sunset", "UTC", of_sky(lambda sky: sky.sunset), "The Sun's upper limb goes under.", EPHEMERIS)
SUNRISE: Fact[NightView] = Fact("Sunrise", "UTC", of_sky(lambda sky: sky.sunrise), "The Sun's upper limb comes up.", EPHEMERIS)
DARK_START: Fact[NightView] = Fact(
    "Dark from",
    "UTC",
    of_sky(lambda sky: sky.dark_start),
    "The Sun's centre sinks below −18°.",
    DEFINITION,
)
DARK_END: Fact[NightView] = Fact(
    "Dark until",
    "UTC",
    of_sky(lambda sky: sky.dark_end),
    "The Sun's centre climbs above −18°.",
    DEFINITION,
)
DARK_S: Fact[NightView] = Fact(
    "Dark hours",
    "s",
    of_sky(lambda sky: sky.dark_s),
    "Time with the Sun's centre below −18°.",
    DEFINITION,
    0,
)
NAUTICAL_DARK_S: Fact[NightView] = Fact(
    "Nautical darkness",
    "s",
    of_sky(lambda sky: sky.nautical_dark_s),
    "Time with the Sun's centre below −12°.",
    DEFINITION,
    0,
)
