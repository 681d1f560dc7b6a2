"""The Moon of a night."""

from sitegen.facts.fact import Fact
from sitegen.facts.night_view import of_sky
from sitegen.facts.views import NightView

MEEUS = "J. Meeus, Astronomical Algorithms, 2nd ed., chapters 47–49; Moon's position from ERFA (moon98)"
ALMANAC = "almanac definition: upper limb, 34′ of refraction"

MOON_ILLUMINATED: Fact[NightView] = Fact(
    "Moon lit",
    "fraction",
    of_sky(lambda sky: sky.moon.illuminated),
    "Lit fraction of the disc, seen from the Earth's centre, halfway between sunset and sunrise.",
    MEEUS,
    4,
)
MOON_PHASE: Fact[NightView] = Fact(
    "Moon's phase",
    "",
    of_sky(lambda sky: sky.moon.phase),
    "By the Moon's elongation; a principal phase's name goes to the night that holds its instant.",
    MEEUS,
)
MOON_AGE_DAYS: Fact[NightView] = Fact(
    "Moon's age",
    "days",
    of_sky(lambda sky: sky.moon.age_days),
    "Time since the last new Moon, halfway between sunset and sunrise.",
    MEEUS,
    3,
)
MOON_RISE: Fact[NightView] = Fact(
    "Moonrise",
    "UTC",
    of_sky(lambda sky: sky.moon.rise),
    "The first in the night, noon to noon.",
    ALMANAC,
)
MOON_SET: Fact[NightView] = Fact(
    "Moonset",
    "UTC",
    of_sky(lambda sky: sky.moon.set),
    "The first in the night, noon to noon.",
    ALMANAC,
)
MOON_UP_SHARE_OF_DARK: Fact[NightView] = Fact(
    "Moon up in the dark",
    "fraction",
    of_sky(lambda sky: sky.moon.up_share_of_dark),
    "Part of the dark hours with the Moon's centre above the horizon.",
    "definition",
    4,
)
MOON_DARK_AND_MOONLESS_S: Fact[NightView] = Fact(
    "Dark and moonless",
    "s",
    of_sky(lambda sky: sky.moon.dark_and_moonless_s),
    "Dark hours with the Moon's centre below the horizon.",
    "definition",
    0,
)
