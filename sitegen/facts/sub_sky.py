"""The columns of a sub that the sky gives, at mid-exposure."""

from sitegen.facts.fact import Fact
from sitegen.facts.night_moon import MEEUS
from sitegen.facts.night_target import KASTEN_YOUNG
from sitegen.facts.views import EntryView

TARGET_ALTITUDE_DEG: Fact[EntryView] = Fact(
    "Target's altitude",
    "°",
    lambda view: view.sub_sky.target_altitude_deg,
    "Above the horizon at mid-exposure, without refraction.",
    "ERFA, ICRS to topocentric",
    3,
)
AIRMASS: Fact[EntryView] = Fact(
    "Airmass",
    "",
    lambda view: view.sub_sky.airmass,
    "Air looked through, in units of the air overhead; unknown below the horizon.",
    KASTEN_YOUNG,
    4,
)
MOON_ALTITUDE_DEG: Fact[EntryView] = Fact(
    "Moon's altitude",
    "°",
    lambda view: view.sub_sky.moon_altitude_deg,
    "Of the Moon's centre from this spot of the Earth, without refraction.",
    MEEUS,
    3,
)
MOON_SEPARATION_DEG: Fact[EntryView] = Fact(
    "Moon's distance",
    "°",
    lambda view: view.sub_sky.moon_separation_deg,
    "Angle between the Moon's centre and the target, seen from this spot.",
    MEEUS,
    3,
)
MOON_ILLUMINATED: Fact[EntryView] = Fact(
    "Moon lit",
    "fraction",
    lambda view: view.sub_sky.moon_illuminated,
    "Lit fraction of the disc, seen from the Earth's centre.",
    MEEUS,
    4,
)
SKY_BRIGHTENING_MAG: Fact[EntryView] = Fact(
    "Moonlight on the sky",
    "mag",
    lambda view: view.sub_sky.sky_brightening_mag,
    (
        "How much brighter the Moon made the sky at the target than the site's own dark sky; 0 with the Moon down. Reckoned in"
        " the V band, whatever the filter; left out are the Moon's distance (+16 to −11 % of moonlight), its extra brightness"
        " near full (up to 35 %), haze, cloud and twilight."
    ),
    "K. Krisciunas & B. E. Schaefer, PASP 103, 1033 (1991), V band; good to 8–23 % of the brightness",
    3,
)
SUN_ALTITUDE_DEG: Fact[EntryView] = Fact(
    "Sun's altitude",
    "°",
    lambda view: view.sub_sky.sun_altitude_deg,
    "Of the Sun's centre at mid-exposure, without refraction: twilight ends at −18°.",
    "Sun's position from ERFA",
    3,
)
