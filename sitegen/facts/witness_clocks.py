"""The clock that would mend most of a log's doubtful subs, as the line to write."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, tzinfo
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import numpy as np

from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.facts.witness_logs import WitnessedLog, gather_command, item_with
from sitegen.sky.arrays import Floats

IsDoubtful = Callable[[Floats], np.ndarray]
"""Which subs are doubtful, were these their middles (UTC unix seconds)."""
SHIFTS_H = tuple(sorted((half / 2 for half in range(-28, 29) if half), key=lambda hours: (abs(hours), hours)))
LOOK_AT_THE_CLOCK = "look at the camera's clock, and at the kind of these frames"


def likely_clock(log: WitnessedLog, site: Site, doubtful: np.ndarray, is_doubtful: IsDoubtful) -> str:
    """The remedy: a zone for times that were bare, else the shift in words; a plain hint where no clock mends them."""
    if log.clock is not None:
        for zone in _zones(log.clock, site):
            left = _left(_read_in(zone, log), doubtful, is_doubtful)
            if left is not None:
                return f"with time_zone: {zone} {_would(left)}; {_line(log, zone)}"
    middles_s = _middles_s([sub.middle for sub in log.subs])
    if 2 * int(doubtful.sum()) <= len(doubtful):
        return LOOK_AT_THE_CLOCK
    for hours in (*_zone_shifts_h(log, site), *SHIFTS_H):
        left = _left(middles_s + 3600 * hours, doubtful, is_doubtful)
        if left is not None:
            side = "ahead" if hours < 0 else "behind"
            return f"the camera's clock seems {abs(hours):g} h {side} of UTC; set right, {_would(left)}"
    return LOOK_AT_THE_CLOCK


def _zones(clock: str, site: Site) -> tuple[str, ...]:
    """The likeliest first."""
    return tuple(zone for zone in (site.time_zone, "UTC") if zone != clock)


def _left(middles_s: Floats | None, doubtful: np.ndarray, is_doubtful: IsDoubtful) -> int | None:
    """How many stay doubtful; None where less than most are mended, or a sound one is spoilt."""
    if middles_s is None:
        return None
    after = is_doubtful(middles_s)
    if (after & ~doubtful).any() or 2 * int(after.sum()) >= int(doubtful.sum()):
        return None
    return int(after.sum())


def _read_in(zone: str, log: WitnessedLog) -> Floats | None:
    """The middles, had the log's bare times been read in the zone."""
    was, would_be = _zone(log.clock or "UTC"), _zone(zone)
    if was is None or would_be is None:
        return None
    return _middles_s([_half_later(sub, sub.start.astimezone(was).replace(tzinfo=would_be)) for sub in log.subs])


def _half_later(sub: Sub, start: datetime) -> datetime:
    return start.astimezone(UTC) + (sub.middle - sub.start)


def _middles_s(moments: Sequence[datetime]) -> Floats:
    return np.array([moment.timestamp() for moment in moments])


def _zone(name: str) -> tzinfo | None:
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def _zone_shifts_h(log: WitnessedLog, site: Site) -> tuple[float, ...]:
    """A local time that calls itself UTC is off by the zone's offset, one that was corrected twice by its opposite."""
    zone = _zone(site.time_zone)
    offset = log.subs[0].start.astimezone(zone).utcoffset() if zone is not None else None
    return (-offset.total_seconds() / 3600, offset.total_seconds() / 3600) if offset else ()


def _would(left: int) -> str:
    return "none would" if not left else f"only {left} would"


def _line(log: WitnessedLog, zone: str) -> str:
    """A gathered log is gathered again; any other has its item in the entry."""
    if log.gathered:
        return gather_command(log, f"--time-zone {zone}")
    return item_with(log, f"time_zone: {zone}")
