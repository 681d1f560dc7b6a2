"""What frames were pointed at, by the name in their headers or, failing that, by where they point."""

from collections import Counter
from collections.abc import Iterable
from functools import cache
from statistics import median

from msgspec import Struct

from sitegen.authoring.frame_hints import FrameHints
from sitegen.catalogue.lookup import find_object, objects_near

# Within this of the frame's middle, the best known object is what was meant.
NEAR_DEG = 0.25


class TargetFit(Struct, frozen=True):
    """`name` of the catalogue where `catalogued`, else as the header has it; the place only where no catalogue has one."""

    name: str
    catalogued: bool
    ra_deg: float | None = None
    dec_deg: float | None = None


def targets_of(hints: Iterable[FrameHints | None]) -> tuple[tuple[TargetFit, int], ...]:
    """Each target with the number of its frames, the one with most first."""
    told = [each for each in hints if each is not None]
    named: dict[str, list[FrameHints]] = {}
    for each in told:
        named.setdefault(each.target, []).append(each)
    counted: Counter[TargetFit] = Counter()
    for name, group in named.items():
        fit = _fit(name, group)
        if fit is not None:
            counted[fit] += len(group)
    return tuple(sorted(counted.items(), key=lambda pair: (-pair[1], pair[0].name)))


def _fit(name: str, group: list[FrameHints]) -> TargetFit | None:
    if (found := _catalogued(name)) is not None:
        return TargetFit(found, catalogued=True)
    pointings = [(each.ra_deg, each.dec_deg) for each in group if each.ra_deg is not None and each.dec_deg is not None]
    if not pointings:
        return None
    ra_deg, dec_deg = sorted(pointings)[len(pointings) // 2][0], median(dec for _, dec in pointings)
    near = objects_near(ra_deg, dec_deg, NEAR_DEG)
    if near:
        return TargetFit(near[0].name, catalogued=True)
    return TargetFit(name or "a field without a name", False, round(ra_deg, 4), round(dec_deg, 4))


@cache
def _catalogued(name: str) -> str | None:
    found = find_object(name) if name else None
    return found.name if found else None
