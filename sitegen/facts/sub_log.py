"""The columns of a sub that the log itself holds."""

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG
from sitegen.facts.views import EntryView

FACTS: tuple[Fact[EntryView], ...] = (
    Fact("start", "Start", "UTC", lambda view: [light.sub.start for light in view.lights], "When the exposure began.", LOG),
    Fact("exposure_s", "Exposure", "s", lambda view: [light.sub.exposure_s for light in view.lights], "Its length.", LOG, 4),
    Fact("filter", "Filter", "", lambda view: [light.filter_key for light in view.lights], "The filter's short name.", LOG),
    Fact("kept", "Kept", "", lambda view: [light.sub.kept for light in view.lights], "Whether it counts.", LOG),
)
