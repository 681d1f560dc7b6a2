"""Light frames of one night added up, as finely as any list divides them, and the totals that lists make of them.

A frame that several entries tell counts once: where the entry published last counts it. So a list adds what each entry of it
tells, but for frames that a later entry of the list tells as well.
"""

from collections.abc import Collection, Iterable, Sequence
from datetime import date
from typing import TypeVar

from msgspec import Struct, field

from sitegen.diary.rig import FilterKind
from sitegen.facts.views import SubInSky

Key = TypeVar("Key", str, int)
Among = Collection[str] | None
"""The slugs of a list's entries; None for those of the whole diary."""


class CountedLight(Struct, frozen=True, gc=False):
    """Frames of one entry, night and site that every list counts alike: same rig, filter and targets, told by the same other
    entries. `worth_s`: the kept broadband ones in dark-sky seconds, None where that is not known of each."""

    rig: str
    filter: str
    kind: FilterKind
    targets: tuple[str, ...]
    earlier: tuple[str, ...]
    later: tuple[str, ...]
    kept: int
    kept_s: float
    discarded: int
    discarded_s: float
    worth_s: float | None

    def counts(self, among: Among = None) -> bool:
        """Whether a list of these entries counts it here."""
        return not _any_of(self.later, among)

    def is_shared(self, among: Among = None) -> bool:
        """Whether another entry of the list tells it too, where it counts here."""
        return _any_of(self.earlier, among)

    @property
    def narrow_s(self) -> float:
        return 0.0 if self.kind == "broadband" else self.kept_s


def _any_of(slugs: Sequence[str], among: Among) -> bool:
    return bool(slugs) if among is None else any(slug in among for slug in slugs)


def counted_light(lights: Iterable[tuple[SubInSky, float | None]]) -> tuple[CountedLight, ...]:
    """`lights` with what each is worth in dark-sky seconds; in the order in which they first occur."""
    groups: dict[tuple[object, ...], list[tuple[SubInSky, float | None]]] = {}
    for light, worth_s in lights:
        alike = (light.sub.rig, light.filter_key, light.kind, light.targets, light.earlier, light.later)
        groups.setdefault(alike, []).append((light, worth_s))
    return tuple(_added_up(group) for group in groups.values())


def _added_up(group: Sequence[tuple[SubInSky, float | None]]) -> CountedLight:
    first = group[0][0]
    kept = [light.sub.exposure_s for light, _ in group if light.sub.kept]
    discarded = [light.sub.exposure_s for light, _ in group if not light.sub.kept]
    worths = [worth_s for light, worth_s in group if light.sub.kept and not light.narrow]
    return CountedLight(
        first.sub.rig, first.filter_key, first.kind, first.targets, first.earlier, first.later,
        len(kept), sum(kept, 0.0), len(discarded), sum(discarded, 0.0), summed(worths),
    )  # fmt: skip


def summed(values: Iterable[float | None]) -> float | None:
    """None where one of them is."""
    total = 0.0
    for value in values:
        if value is None:
            return None
        total += value
    return total


class FilterTotal(Struct):
    total_s: float = 0.0
    recalled_s: float = 0.0
    kept: int = 0
    discarded: int = 0


class LightTotals(Struct):
    """What a list counts. `by_night` has every evening with a frame, kept or not; `recalled_s` has no log, and is in no sum."""

    kept: int = 0
    discarded: int = 0
    discarded_s: float = 0.0
    broadband_s: float = 0.0
    narrowband_s: float = 0.0
    dark_equivalent_s: float | None = 0.0
    shared_s: float = 0.0
    recalled_s: float = 0.0
    by_filter: dict[str, FilterTotal] = field(default_factory=dict)
    by_night: dict[date, float] = field(default_factory=dict)

    @property
    def total_s(self) -> float:
        return self.broadband_s + self.narrowband_s

    def add(self, evening: date, light: CountedLight, shared_s: float) -> None:
        """`shared_s`: of its kept seconds, those that another entry of the list tells too."""
        self.kept += light.kept
        self.discarded += light.discarded
        self.discarded_s += light.discarded_s
        self.narrowband_s += light.narrow_s
        self.broadband_s += light.kept_s - light.narrow_s
        self.dark_equivalent_s = summed((self.dark_equivalent_s, light.worth_s))
        self.shared_s += shared_s
        self.by_night[evening] = self.by_night.get(evening, 0.0) + light.kept_s
        through = self.by_filter.get(light.filter) or self.by_filter.setdefault(light.filter, FilterTotal())
        through.total_s += light.kept_s
        through.kept += light.kept
        through.discarded += light.discarded


def light_totals(nights: Iterable[tuple[date, Iterable[CountedLight]]], among: Among = None) -> LightTotals:
    """Over all nights."""
    totals_by_key = light_totals_by(((evening, light, ("",)) for evening, lights in nights for light in lights), among)
    return totals_by_key.get("", LightTotals())


def light_totals_by(
    rows: Iterable[tuple[date, CountedLight, Iterable[Key]]], among: Among = None
) -> dict[Key, LightTotals]:
    """A total for each key; a row adds to all of its own. Evenings in order."""
    totals_by_key: dict[Key, LightTotals] = {}
    for evening, light, keys in rows:
        if light.later and not light.counts(among):
            continue
        shared_s = light.kept_s if light.earlier and light.is_shared(among) else 0.0
        for key in keys:
            totals = totals_by_key.get(key) or totals_by_key.setdefault(key, LightTotals())
            totals.add(evening, light, shared_s)
    for totals in totals_by_key.values():
        totals.by_night = dict(sorted(totals.by_night.items()))
    return totals_by_key
