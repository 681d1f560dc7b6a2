"""The columns of a sub that the log itself holds."""

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG
from sitegen.facts.views import EntryView

START: Fact[EntryView] = Fact(
    "Start",
    "UTC",
    lambda view: [light.sub.start for light in view.lights],
    "When the exposure began.",
    LOG,
)
EXPOSURE_S: Fact[EntryView] = Fact(
    "Exposure",
    "s",
    lambda view: [light.sub.exposure_s for light in view.lights],
    "Its length.",
    LOG,
    4,
)
FILTER: Fact[EntryView] = Fact(
    "Filter",
    "",
    lambda view: [light.filter_key for light in view.lights],
    "The filter's short name.",
    LOG,
)
KEPT: Fact[EntryView] = Fact("Kept", "", lambda view: [light.sub.kept for light in view.lights], "Whether it counts.", LOG)
