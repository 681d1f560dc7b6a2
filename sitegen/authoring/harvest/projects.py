"""Lights -> projects: one target, rig and site, no gap of 90 nights; what is in a log already stays in it."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date, timedelta

from msgspec import Struct

from sitegen.authoring.harvest.known_logs import KnownLog, KnownLogs
from sitegen.authoring.harvest.lights import Light
from sitegen.authoring.harvest.pointings import Shown, fit_of
from sitegen.authoring.target_fit import TargetFit
from sitegen.diary.addresses import slug_of

GAP = timedelta(days=90)


class Project(Struct, frozen=True):
    """`name` is that of its log, and of its entry where that is new; `log` is None for a new one. `target` is None where only
    the entry says what a known log shows."""

    name: str
    lights: tuple[Light, ...]
    target: TargetFit | None
    rig: str
    site: str
    log: KnownLog | None = None

    @property
    def evenings(self) -> list[date]:
        return sorted({light.evening for light in self.lights})


class _Group(Struct):
    target: TargetFit
    rig: str
    site: str
    lights: list[Light]


def projects_of(lights: Iterable[Light], logs: KnownLogs, taken: Collection[str]) -> list[Project]:
    """In the order of their first night. `taken` are names of entries and logs that there are."""
    of_log: dict[str, list[Light]] = {}
    new: list[_Group] = []
    for group in _groups(light for light in lights if light.log is None):
        for season in _seasons(group):
            if (log := _going_on(season, logs)) is not None:
                of_log.setdefault(log.name, []).extend(season.lights)
            else:
                new.append(season)
    for light in lights:
        if light.log is not None:
            of_log.setdefault(light.log.name, []).append(light)
    going_on = [_known(log, of_log[log.name]) for log in logs.logs if log.name in of_log]
    return sorted([*going_on, *_named(new, set(taken))], key=lambda project: (project.evenings, project.name))


def _groups(lights: Iterable[Light]) -> Iterator[_Group]:
    plain: dict[int, Shown] = {}
    by_key: dict[tuple[Shown, str, str], list[Light]] = {}
    for light in lights:
        shown = plain.get(id(light.shown)) or plain.setdefault(id(light.shown), _plain(light.shown))
        by_key.setdefault((shown, light.rig, light.site), []).append(light)
    for (_, rig, site), members in by_key.items():
        members.sort(key=lambda light: light.frame.place_in_order)
        sure = min((light.shown for light in members), key=lambda shown: shown.by)
        yield _Group(fit_of(sure, [light.frame for light in members]), rig, site, members)


def _plain(shown: Shown) -> Shown:
    """A guess joins what is known to show the same."""
    return Shown(shown.kind, shown.name, shown.field)


def _seasons(group: _Group) -> Iterator[_Group]:
    season: list[Light] = []
    for light in group.lights:
        if season and light.evening - season[-1].evening >= GAP:
            yield _Group(group.target, group.rig, group.site, season)
            season = []
        season.append(light)
    yield _Group(group.target, group.rig, group.site, season)


def _going_on(season: _Group, logs: KnownLogs) -> KnownLog | None:
    """The log of the same target, rig and site whose nights are nearest, and less than the gap away."""
    apart = [(gap, number) for number, log in enumerate(logs.logs) if log.shows(season.target.name, season.rig, season.site)
             and (gap := _apart(season.lights, log.evenings)) is not None and gap < GAP]  # fmt: skip
    return logs.logs[min(apart)[1]] if apart else None


def _apart(lights: Sequence[Light], evenings: Sequence[date]) -> timedelta | None:
    first, last = lights[0].evening, lights[-1].evening
    gaps = [max(first - evening, evening - last, timedelta(0)) for evening in evenings]
    return min(gaps, default=None)


def _known(log: KnownLog, lights: Iterable[Light]) -> Project:
    entry = log.front_matter
    rig = entry.rig.slug if entry is not None and entry.rig is not None else ""
    site = entry.site.slug if entry is not None and entry.site is not None else ""
    target = TargetFit(entry.targets[0].name, True) if entry is not None and entry.targets else None
    return Project(log.name, tuple(sorted(lights, key=lambda light: light.frame.place_in_order)), target, rig, site, log)


def _named(groups: Sequence[_Group], taken: set[str]) -> Iterator[Project]:
    """By the target; with the year where it has several seasons, then the rig, then a number."""
    slugs = [slug_of(group.target.name) for group in groups]
    for group, slug in sorted(zip(groups, slugs, strict=True), key=lambda pair: (pair[0].lights[0].evening, pair[0].rig)):
        year = f"{slug}-{group.lights[0].evening.year}"
        alone = slugs.count(slug) == 1
        wanted = [*([slug] if alone else []), year, f"{slug}-{group.rig}", f"{year}-{group.rig}"]
        numbered = (f"{year}-{group.rig}-{number}" for number in range(2, len(groups) + len(taken) + 3))
        name = next(name for name in (*wanted, *numbered) if name not in taken)
        taken.add(name)
        yield Project(name, tuple(group.lights), group.target, group.rig, group.site)
