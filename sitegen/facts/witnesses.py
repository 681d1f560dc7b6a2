"""What Sun, horizon, place and pointing say against a log: doubts for its author, in the terminal, never published.

The true site is used here, and kept light frames only: what was thrown away at dawn was thrown away.
"""

import re
from collections.abc import Iterator, Mapping

import numpy as np
from msgspec import Struct

from sitegen.catalogue.lookup import separation_deg
from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.witness_clocks import likely_clock
from sitegen.facts.witness_logs import WitnessedLog, how_many, item_with, kept_logs
from sitegen.facts.witness_targets import strangers
from sitegen.sky.arrays import Floats
from sitegen.sky.rough_altitude import fixed_altitude_deg, sun_altitude_deg

BRIGHT_SUN_DEG = -6.0
# Comets are followed into the twilight.
MOVING_SUN_DEG = 0.0
# Refraction lifts what is this far below the horizon into sight.
HORIZON_DEG = -0.6
NEAR_SITE_DEG = 0.5
# Header places are remembered to a tenth of a degree in either axis.
PLACE_ROUNDING_DEG = 0.0708
_BRIGHT = re.compile(r"sun|sonne|moon|mond|mercury|merkur|venus|mars|jupiter|saturn|eclipse|finsternis|transit", re.IGNORECASE)


class Witness(Struct, frozen=True):
    """`source` is the log inside content/ that the warning stands in."""

    source: str
    wrong: str
    remedy: str


def witnesses(entry: Entry, sites: Mapping[str, Site], rigs: Mapping[str, Rig]) -> tuple[Witness, ...]:
    """Log by log, in the order of their names."""
    logs = kept_logs(entry)
    return tuple(witness for log in logs for witness in _of_log(log, entry, sites, rigs))


def _of_log(log: WitnessedLog, entry: Entry, sites: Mapping[str, Site], rigs: Mapping[str, Rig]) -> Iterator[Witness]:
    site, rig = sites.get(log.site), rigs.get(log.rig)
    if site is not None:
        yield from _of_sky(log, entry, site)
        yield from _of_place(log, site, sites)
    if rig is not None and (doubt := strangers(log, entry, rig)) is not None:
        yield Witness(log.source, *doubt)


def _of_sky(log: WitnessedLog, entry: Entry, site: Site) -> Iterator[Witness]:
    sky = _SkyOfLog(log, entry, site)
    daylight, below = sky.doubts(sky.middles_s)
    bad = daylight | below
    if not bad.any():
        return
    cure = likely_clock(log, site, bad, lambda middles_s: np.logical_or(*sky.doubts(middles_s)))
    share = f"{how_many(int(daylight.sum()), log)} {'lie' if daylight.sum() != 1 else 'lies'} in daylight"
    if daylight.any():
        yield Witness(log.source, f"{share} (the Sun above {BRIGHT_SUN_DEG:.0f}°)", cure)
    if below.any():
        has = "have their" if below.sum() != 1 else "has its"
        yield Witness(log.source, f"{how_many(int(below.sum()), log)} {has} target below the horizon", cure)


class _SkyOfLog:
    """Sun and target over the site at any moments, one a sub."""

    def __init__(self, log: WitnessedLog, entry: Entry, site: Site) -> None:
        self.site, self.subs = site, log.subs
        self.targets = [None if sub.target is None else entry.targets[sub.target] for sub in log.subs]
        self.limits_deg = np.array([_sun_limit_deg(target) for target in self.targets])
        self.middles_s = np.array([sub.middle.timestamp() for sub in log.subs])

    def doubts(self, middles_s: Floats) -> tuple[np.ndarray, np.ndarray]:
        """Whether each sub lies in daylight, and whether its target is below the horizon."""
        latitude_deg, longitude_deg = self.site.latitude_deg, self.site.longitude_deg
        daylight = sun_altitude_deg(middles_s, latitude_deg, longitude_deg) > self.limits_deg
        below = np.zeros(len(middles_s), dtype=bool)
        for target in set(self.targets) - {None}:
            if target is None or target.ra_deg is None or target.dec_deg is None:
                continue
            mine = np.array([own_target == target for own_target in self.targets])
            altitude = fixed_altitude_deg(middles_s[mine], target.ra_deg, target.dec_deg, latitude_deg, longitude_deg)
            below[mine] = altitude < HORIZON_DEG
        return daylight, below


def _sun_limit_deg(target: Target | None) -> float:
    """A gear entry tests by day too; Sun, Moon and planets are taken by day."""
    if target is None or (_BRIGHT.search(target.name) and target.ra_deg is None):
        return 90.0
    return MOVING_SUN_DEG if target.ra_deg is None else BRIGHT_SUN_DEG


def _of_place(log: WitnessedLog, site: Site, sites: Mapping[str, Site]) -> Iterator[Witness]:
    far = [sub for sub in log.subs if (apart := _apart_deg(sub, site)) is not None and apart > NEAR_SITE_DEG + PLACE_ROUNDING_DEG]
    if not far:
        return
    apart_deg = max(_apart_deg(sub, site) or 0.0 for sub in far)
    near = [slug for slug, other in sorted(sites.items()) if (_apart_deg(far[0], other) or 0.0) <= NEAR_SITE_DEG]
    item = item_with(log, f"site: {near[0] if near else 'NAME'}")
    cure = f"if another site, write {item}; if not, correct sites/{site.slug}.yaml"
    carry = "carry" if len(far) != 1 else "carries"
    yield Witness(log.source, f"{how_many(len(far), log)} {carry} a place {apart_deg:.0f}° from the site '{site.slug}'", cure)


def _apart_deg(sub: Sub, site: Site) -> float | None:
    """From the header's place to the site, 0 where it is the site's with west counted positive, as some programs do. None where
    the header gives none, or the zeros of a program that knows none."""
    origin = sub.origin
    if origin is None or origin.latitude_deg is None or origin.longitude_deg is None:
        return None
    if origin.latitude_deg == 0 == origin.longitude_deg:
        return None
    apart_deg, mirrored_deg = (
        separation_deg(longitude_deg, origin.latitude_deg, site.longitude_deg, site.latitude_deg)
        for longitude_deg in (origin.longitude_deg, -origin.longitude_deg)
    )
    return 0.0 if mirrored_deg <= NEAR_SITE_DEG + PLACE_ROUNDING_DEG else apart_deg
