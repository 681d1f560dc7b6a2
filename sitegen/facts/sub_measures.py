"""The columns of a sub that were measured: in the frame, by whoever kept the log, or by instruments beside the camera."""

from collections.abc import Callable
from operator import attrgetter
from typing import Any

from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.integration_totals import LOG
from sitegen.facts.views import EntryView

SERIES = "the author's tables of instruments; reduced by common practice, no source"


def logged(name: str) -> Callable[[EntryView], list[Any]]:
    return lambda view: [getattr(light.sub, name) for light in view.lights]


def read_beside(name: str) -> Callable[[EntryView], list[float | None]]:
    """Of the readings that were reduced to each sub."""
    get = attrgetter(name)
    return lambda view: [None if light.sub.readings is None else get(light.sub.readings) for light in view.lights]


def reasons(view: EntryView) -> list[str | None]:
    return [None if light.sub.kept else light.sub.reason for light in view.lights]


REASON: Fact[EntryView] = Fact("Why discarded", "", reasons, "As the log says.", LOG)
FWHM_ARCSEC: Fact[EntryView] = Fact("Star width", "″", logged("fwhm_arcsec"), "At half its height, as the log says.", LOG, 3)
ELONGATION: Fact[EntryView] = Fact(
    "Elongation of the stars", "", logged("elongation"), "Longer over shorter axis, as the log says.", LOG, 3
)
STARS: Fact[EntryView] = Fact("Stars counted", "", logged("stars"), "On the frame, as the log says.", LOG)
GUIDING_RMS_ARCSEC: Fact[EntryView] = Fact(
    "Guiding error",
    "″",
    logged("guiding_rms_arcsec"),
    "Both axes together, root mean square: as the log says, else of the guider's readings during the sub, about their mean.",
    COMMON_PRACTICE,
    3,
)
GUIDING_RA_RMS_ARCSEC: Fact[EntryView] = Fact(
    "Guiding error in right ascension",
    "″",
    read_beside("guiding_ra_rms_arcsec"),
    "Root mean square on the sky about the mean of the guider's readings during the sub; drift counts, an offset does not."
    " Unknown with fewer than ten readings, or where they cover less than four fifths of the sub.",
    SERIES,
    3,
)
GUIDING_DEC_RMS_ARCSEC: Fact[EntryView] = Fact(
    "Guiding error in declination", "″", read_beside("guiding_dec_rms_arcsec"), "Likewise in declination.", SERIES, 3
)
GUIDING_DRIFT_ARCSEC_MIN: Fact[EntryView] = Fact(
    "Drift of the guide star",
    "″/min",
    read_beside("guiding_drift_arcsec_min"),
    "How fast it moved during the sub, by a straight line through the readings of each axis.",
    SERIES,
    3,
)
SKY_MAG_ARCSEC2: Fact[EntryView] = Fact(
    "Sky brightness read",
    "mag/arcsec²",
    read_beside("sky_mag_arcsec2"),
    "What a sky meter read during the sub, where it looked: mostly overhead, in its own band.",
    SERIES,
    2,
)
