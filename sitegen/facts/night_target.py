"""How high the target stood."""

from sitegen.facts.fact import Fact
from sitegen.facts.night_view import of_target
from sitegen.facts.views import NightView

KASTEN_YOUNG = "F. Kasten & A. T. Young, Applied Optics 28, 4735 (1989), at the refracted altitude (Sæmundsson, 1010 hPa, 10 °C)"

TARGET_TRANSIT: Fact[NightView] = Fact(
    "Transit",
    "UTC",
    of_target(lambda target: target.transit),
    "When the target crosses the meridian at its highest.",
    "definition",
)
TARGET_MAX_ALTITUDE_DEG: Fact[NightView] = Fact(
    "Maximum altitude",
    "°",
    of_target(lambda target: target.max_altitude_deg),
    (
        "The target's greatest altitude in the dark hours, without refraction; where there are none, with the Sun"
        " below −12°, else below the horizon."
    ),
    "ERFA, ICRS to topocentric",
    3,
)
TARGET_MIN_AIRMASS: Fact[NightView] = Fact(
    "Minimum airmass",
    "",
    of_target(lambda target: target.min_airmass),
    "Air looked through at that altitude, in units of the air overhead.",
    KASTEN_YOUNG,
    4,
)
