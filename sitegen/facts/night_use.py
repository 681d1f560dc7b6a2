"""How the night was used."""

from collections.abc import Iterator
from datetime import datetime

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG, seconds
from sitegen.facts.views import NightView

Interval = tuple[datetime, datetime]


def first_start(night: NightView) -> datetime | None:
    return min((light.sub.start for light in night.lights), default=None)


def last_end(night: NightView) -> datetime | None:
    return max((light.sub.end for light in night.lights), default=None)


def used_share_of_dark(night: NightView) -> float | None:
    """Part of the dark hours in which at least one kept sub was exposing; None where there is no darkness."""
    if night.sky is None or night.sky.dark_start is None or night.sky.dark_end is None or not night.sky.dark_s:
        return None
    dark = (night.sky.dark_start, night.sky.dark_end)
    return covered_s([(light.sub.start, light.sub.end) for light in night.kept], dark) / night.sky.dark_s


def covered_s(intervals: list[Interval], within: Interval) -> float:
    """Seconds of `within` that the intervals cover, overlaps counted once."""
    return sum((end - start).total_seconds() for start, end in covered(intervals, within))


def covered(intervals: list[Interval], within: Interval) -> Iterator[Interval]:
    """The stretches of `within` that the intervals cover, in order, none over another."""
    reached = within[0]
    for start, end in sorted(intervals):
        start, end = max(start, reached), min(end, within[1])
        if end > start:
            yield start, end
            reached = end


INTEGRATION_S: Fact[NightView] = Fact(
    "Integration",
    "s",
    lambda night: seconds(night.kept),
    "Kept light frames of this night.",
    LOG,
    3,
)
FIRST_START: Fact[NightView] = Fact("First sub", "UTC", first_start, "When the first light frame began.", LOG)
LAST_END: Fact[NightView] = Fact("Last sub ended", "UTC", last_end, "When the last light frame ended.", LOG)
USED_SHARE_OF_DARK: Fact[NightView] = Fact(
    "Dark hours used",
    "fraction",
    used_share_of_dark,
    "Part of the dark hours in which at least one kept sub was exposing.",
    "definition",
    4,
)
