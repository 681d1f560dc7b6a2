"""How much light was gathered: kept light frames only."""

from collections.abc import Callable, Iterable

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView, SubInSky

LOG = "the capture logs"


def seconds(lights: Iterable[SubInSky]) -> float:
    """Sum of the exposures in s."""
    return sum((light.sub.exposure_s for light in lights), 0.0)


def _discarded(view: EntryView) -> list[SubInSky]:
    return [light for light in view.lights if not light.sub.kept]


def kept_seconds_where(wanted: Callable[[SubInSky], bool]) -> Callable[[EntryView], float]:
    """The fact function that totals the kept frames for which `wanted` holds."""
    return lambda view: seconds(light for light in view.kept if wanted(light))


TOTAL_S: Fact[EntryView] = Fact("Integration", "s", lambda view: seconds(view.kept), "Sum of the kept light frames.", LOG, 3)
KEPT: Fact[EntryView] = Fact("Subs kept", "", lambda view: len(view.kept), "Count of the kept light frames.", LOG)
DISCARDED: Fact[EntryView] = Fact(
    "Subs discarded",
    "",
    lambda view: len(_discarded(view)),
    "Count of the light frames thrown away.",
    LOG,
)
DISCARDED_S: Fact[EntryView] = Fact(
    "Time discarded",
    "s",
    lambda view: seconds(_discarded(view)),
    "Sum of the light frames thrown away; in no total.",
    LOG,
    3,
)
BROADBAND_S: Fact[EntryView] = Fact(
    "Broadband",
    "s",
    kept_seconds_where(lambda light: not light.narrow),
    "Sum of the kept frames through broadband filters or none.",
    LOG,
    3,
)
NARROWBAND_S: Fact[EntryView] = Fact(
    "Narrowband",
    "s",
    kept_seconds_where(lambda light: light.narrow),
    "Sum of the kept frames through narrowband and dual-band filters.",
    LOG,
    3,
)
