"""What can be counted in an entry's logs: subs, hours and nights, of all and of every part that a sentence may speak of."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from itertools import groupby
from typing import TypeVar

from msgspec import Struct

from sitegen.facts.views import EntryView, NightView, SubInSky

Item = TypeVar("Item")
Lights = Sequence[SubInSky]
HOUR_S = 3600.0
NIGHT_GAP_S, PAUSE_S = 6 * HOUR_S, 600.0


class Part(Struct, frozen=True):
    """What a sentence restricts its count to; None or empty for no restriction. `filters` are short names, folded."""

    filters: frozenset[str] = frozenset()
    evening: date | None = None
    discarded: bool | None = None

    def lights(self, view: EntryView) -> list[SubInSky]:
        return [light for night in self.nights(view) for light in night.lights if self._holds(light)]

    def nights(self, view: EntryView) -> list[NightView]:
        return [night for night in view.nights if self.evening in (None, night.evening)]

    def _holds(self, light: SubInSky) -> bool:
        is_of_filter = not self.filters or light.filter_key.casefold() in self.filters
        return is_of_filter and self.discarded in (None, not light.sub.kept)


def are_some_subs(count: float, view: EntryView, part: Part) -> bool:
    """Whether the part has so many, or a group of it: by night, rig, filter, verdict, reason, length, log, or a run of a kind."""
    return any(len(group) == count for group in _groups(part.lights(view)))


def are_some_hours(hours: float, near_h: float, view: EntryView, part: Part) -> bool:
    """Whether the exposure of the same groups, or of the subs of one that were kept, adds up to so many."""
    for group in _groups(part.lights(view)):
        all_s = sum(light.sub.exposure_s for light in group)
        kept_s = sum(light.sub.exposure_s for light in group if light.sub.kept)
        if abs(all_s / HOUR_S - hours) <= near_h or abs(kept_s / HOUR_S - hours) <= near_h:
            return True
    return False


def night_counts(view: EntryView) -> set[int]:
    """Evenings of all subs, and of the groups that a sentence may mean by its nights."""
    evenings = [(night.evening, light) for night in view.nights for light in night.lights]
    keys: tuple[Callable[[tuple[date, SubInSky]], object], ...] = (
        lambda pair: None,
        lambda pair: pair[1].sub.kept,
        lambda pair: pair[1].sub.rig,
        lambda pair: pair[1].sub.site,
        lambda pair: pair[1].filter_key,
        lambda pair: pair[1].sub.source,
        lambda pair: (pair[0].year, pair[0].month),
        lambda pair: pair[1].targets,
        lambda pair: pair[1].sub.reason,
    )
    counts = {len({evening for evening, _ in group}) for key in keys for group in _grouped(evenings, key)}
    return counts | {len(view.entry.night_notes)}


def _groups(lights: Lights) -> Iterator[Lights]:
    yield lights
    keys: tuple[Callable[[SubInSky], object], ...] = (
        lambda light: light.sub.kept,
        lambda light: light.sub.rig,
        lambda light: light.filter_key,
        lambda light: light.sub.exposure_s,
        lambda light: light.sub.reason,
        lambda light: light.sub.source,
        lambda light: light.kind,
        lambda light: light.targets,
    )
    for part in (lights, *_parted(lights, NIGHT_GAP_S), *_parted(lights, PAUSE_S)):
        yield part
        for index, key in enumerate(keys):
            for other in keys[index:]:
                yield from _grouped(part, _both(key, other))
        yield from _runs(part)


def _both(first: Callable[[SubInSky], object], second: Callable[[SubInSky], object]) -> Callable[[SubInSky], object]:
    return lambda light: (first(light), second(light))


def _parted(lights: Lights, gap_s: float) -> list[list[SubInSky]]:
    """Where nothing was begun for so long after an end."""
    parts: list[list[SubInSky]] = []
    for light in sorted(lights, key=lambda light: light.sub.start):
        if not parts or (light.sub.start - parts[-1][-1].sub.end).total_seconds() > gap_s:
            parts.append([])
        parts[-1].append(light)
    return parts


def _runs(lights: Lights) -> Iterator[Lights]:
    """Subs of one filter and verdict that follow each other: 'the next six were spoiled'."""
    for key in (lambda light: light.sub.kept, lambda light: (light.filter_key, light.sub.kept), lambda light: light.filter_key):
        for _, run in groupby(sorted(lights, key=lambda light: light.sub.start), key):
            yield list(run)


def _grouped(items: Iterable[Item], key: Callable[[Item], object]) -> list[list[Item]]:
    groups: dict[object, list[Item]] = {}
    for item in items:
        groups.setdefault(key(item), []).append(item)
    return list(groups.values())
