"""Lays a diary's entries under the sky: one vectorised pass for all their nights, targets and subs."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, date, datetime
from functools import cache
from statistics import median
from typing import Protocol
from zoneinfo import ZoneInfo

import numpy as np
from msgspec.structs import replace

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.diary.public_position import PublicSite, public_site
from sitegen.diary.rig import Filter, FilterKind, Rig, Train, Work
from sitegen.diary.rigs_used import published_before, rigs_of
from sitegen.diary.same_frame import camera_stretches, exposing_together
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.field_targets import FieldTargets
from sitegen.facts.frame_tellers import Tellers, field_targets, tellers_of
from sitegen.facts.mosaic_panels import mosaic_of
from sitegen.facts.moving_body import body_of
from sitegen.facts.sky_request import SkyBook
from sitegen.facts.train_light import days_recalled, train_light
from sitegen.facts.views import EntryView, NightView, OpticsView, SubInSky
from sitegen.sky.answer import NightSky, SubSky, TargetNight
from sitegen.sky.night_time import evening_of

Before = Mapping[str, Mapping[str, date]]
"""By an entry's slug, then by each of its rigs: when the entry before it with that rig was published."""
Others = Mapping[str, Sequence[Entry]]
"""By an entry's slug: the other listed entries that may tell of its frames."""


class Sky(Protocol):
    """Where the answers of the sky come from."""

    def night(self, site: PublicSite, evening: date) -> NightSky | None: ...
    def target(self, site: PublicSite, evening: date, target: Target | None) -> TargetNight | None: ...


def views_of(
    diary: Diary,
    entries: Sequence[Entry],
    before: Before | None = None,
    earlier: Mapping[str, EntryView] | None = None,
    others: Others | None = None,
) -> tuple[EntryView, ...]:
    """The named entries of the diary as views, in the order given.

    `before` and `others` are worked out from the diary's entries where they are not given. `earlier` are views made of these
    entries before: their sky is taken again where the subs and targets are the same; the sites must be.
    """
    dated = ((entry.slug, entry.published, rigs_of(entry)) for entry in diary.entries)
    whens = published_before(dated) if before is None else before
    return _InSky(diary, entries, whens, earlier or {}, others_of(diary.entries) if others is None else others).views()


def others_of(entries: Sequence[Entry]) -> Others:
    """Of each listed entry, those of the same cameras and hours."""
    listed = {entry.slug: entry for entry in entries if not entry.unlisted}
    together = exposing_together((slug, camera_stretches(entry.lights)) for slug, entry in listed.items())
    return {slug: [listed[other] for other in sorted(slugs)] for slug, slugs in together.items()}


class _InSky:
    """Asks for everything first, answers once, then hands each entry its part."""

    def __init__(
        self, diary: Diary, entries: Sequence[Entry], before: Before, earlier: Mapping[str, EntryView], others: Others
    ) -> None:
        self.diary, self.entries, self.before, self.others = diary, entries, before, others
        self.sites = {slug: public_site(site, diary.settings.privacy) for slug, site in diary.sites.items()}
        self.evenings = [_evenings(entry.lights, self.sites) for entry in entries]
        self.earlier = [_same_sky(entry, earlier.get(entry.slug)) for entry in entries]

    def views(self) -> tuple[EntryView, ...]:
        book = SkyBook(self.sites)
        rows = list(zip(self.entries, self.evenings, self.earlier, strict=True))
        asked = [slice(0) if earlier else book.ask(entry, evenings) for entry, evenings, earlier in rows]
        if book.sub_mid_s:
            book.answer()
        views = [
            self._view(entry, evenings, earlier.sub_sky if earlier else book.subs(part), KnownSky(earlier) if earlier else book)
            for (entry, evenings, earlier), part in zip(rows, asked, strict=True)
        ]
        return tuple(_noted(views, book.note))

    def _view(self, entry: Entry, evenings: list[date], sub_sky: SubSky, book: Sky) -> EntryView:
        tellers = tellers_of(entry, self.others.get(entry.slug, ()))
        lights = self._lights(entry, evenings, sub_sky, tellers)
        return EntryView(
            entry=entry,
            optics=self._optics(entry, evenings),
            nights=self._nights(entry, lights, evenings, book),
            lights=lights,
            sub_sky=sub_sky,
            filters=_filters_used(lights, self.diary.rigs, entry),
            work=_work_since(entry, self.diary.rigs, self.before.get(entry.slug, {})),
            changes=_changes_since(entry, self.diary.rigs, self.before.get(entry.slug, {})),
            contradictions=tellers.contradictions,
            mosaic=mosaic_of(entry, lights, evenings, self.diary.rigs),
        )

    def _lights(self, entry: Entry, evenings: list[date], sub_sky: SubSky, tellers: Tellers) -> tuple[SubInSky, ...]:
        fields, borrowed = FieldTargets(entry), field_targets(tellers)
        lights = []
        for place, (sub, evening, altitude) in enumerate(zip(entry.lights, evenings, sub_sky.moon_altitude_deg, strict=True)):
            rig = self.diary.rigs[sub.rig]
            if place in tellers.pointed:
                other, its = tellers.pointed[place]
                targets = borrowed[other.slug].of(its.target, rig, evening)
            else:
                targets = fields.of(sub.target, rig, evening)
            tells = tellers.earlier.get(place, ()), tellers.later.get(place, ())
            lights.append(SubInSky(sub, _filter_key(sub, rig), _kind(sub, rig), _known(altitude), targets, *tells))
        return tuple(lights)

    def _nights(self, entry: Entry, lights: tuple[SubInSky, ...], evenings: list[date], book: Sky) -> tuple[NightView, ...]:
        grouped: dict[tuple[date, str], list[SubInSky]] = {}
        for light, evening in zip(lights, evenings, strict=True):
            grouped.setdefault((evening, light.sub.site), []).append(light)
        return tuple(
            self._night(entry, evening, self.sites[site], group, book)
            for (evening, site), group in sorted(grouped.items(), key=lambda item: item[0])
        )

    def _night(self, entry: Entry, evening: date, site: PublicSite, lights: list[SubInSky], book: Sky) -> NightView:
        target = _target_of_night(entry, lights)
        return NightView(
            evening=evening,
            site=site,
            lights=tuple(lights),
            sky=book.night(site, evening),
            target=target,
            target_sky=book.target(site, evening, target),
            rule=self.diary.settings.moon_rule,
            note=entry.night_notes.get(evening),
            trains={light.sub.rig: self.diary.rigs[light.sub.rig].train_on(evening) for light in lights},
        )

    def _optics(self, entry: Entry, evenings: list[date]) -> tuple[OpticsView, ...]:
        """One row a train and binning; an entry without subs shows its rig as it stood when it was published, or at the times
        that it recalls."""
        used: dict[tuple[str, date | None, int], tuple[Rig, Train, list[float]]] = {}
        taken: dict[tuple[str, date | None, int], list[tuple[str, Sub]]] = {}
        for sub, evening in zip(entry.lights, evenings, strict=True):
            rig = self.diary.rigs[sub.rig]
            train = rig.train_on(evening)
            key = rig.slug, train.from_evening, sub.binning or 1
            row = used.setdefault(key, (rig, train, []))
            taken.setdefault(key, []).append((_filter_key(sub, rig), sub))
            seeing = self.sites[sub.site].seeing_arcsec
            row[2].extend([] if seeing is None else [seeing])
        if not used and entry.rig is not None:
            rig = self.diary.rigs[entry.rig]
            for train in map(rig.train_on, days_recalled(entry)):
                used[(rig.slug, train.from_evening, 1)] = (rig, train, self._usual_seeing(entry.site))
        return tuple(
            OpticsView(rig, train, key[2], median(seeing) if seeing else None, light=train_light(taken.get(key, ())))
            for key, (rig, train, seeing) in sorted(used.items(), key=lambda item: _train_order(item[0]))
        )

    def _usual_seeing(self, site: str | None) -> list[float]:
        seeing = self.sites[site].seeing_arcsec if site is not None else None
        return [] if seeing is None else [seeing]


def _noted(views: list[EntryView], note: str | None) -> list[EntryView]:
    """The note on the Earth's rotation goes to the entry with the newest night: it is said once."""
    nights = [max((night.evening for night in view.nights), default=date.min) for view in views]
    if note is None or not views:
        return views
    newest = nights.index(max(nights))
    return [replace(view, sky_note=note) if index == newest else view for index, view in enumerate(views)]


def _train_order(key: tuple[str, date | None, int]) -> tuple[str, date, int]:
    return key[0], key[1] or date.min, key[2]


def _known(altitude_deg: float) -> float | None:
    return None if np.isnan(altitude_deg) else float(altitude_deg)


def _kind(sub: Sub, rig: Rig) -> FilterKind:
    rig_filter = rig.filters.get(sub.filter or "")
    return rig_filter.kind if rig_filter else "broadband"


def _filter_key(sub: Sub, rig: Rig) -> str:
    """What a total is filed under: the filter's short name; 'colour' or 'clear' for a train that needs none."""
    if sub.filter is not None:
        return sub.filter
    return "colour" if rig.trains[-1].camera.colour == "colour" else "clear"


NO_FILTER = {
    "colour": Filter("colour", "colour camera without a filter", "broadband"),
    "clear": Filter("clear", "no filter", "broadband"),
}


def _filters_used(lights: Iterable[SubInSky], rigs: Mapping[str, Rig], entry: Entry) -> tuple[tuple[str, Filter], ...]:
    """By the order of the rigs' own filter lists, then what needs no filter; wanted ones included."""
    wanted = set(entry.wanted_hours)
    shorts = {light.filter_key for light in lights} | wanted
    in_use = sorted({light.sub.rig for light in lights} | ({entry.rig} if entry.rig else set()))
    filters = {short: rig_filter for slug in in_use for short, rig_filter in rigs[slug].filters.items()}
    ordered = [short for short in filters if short in shorts] + sorted(shorts - set(filters))
    return tuple((short, filters.get(short) or NO_FILTER.get(short) or Filter(short, short, "broadband")) for short in ordered)


def _target_of_night(entry: Entry, lights: list[SubInSky]) -> Target | None:
    """The target that most of the night's subs were pointed at; of equals, the one named first."""
    pointed = Counter(light.sub.target for light in lights if light.sub.target is not None)
    if not pointed:
        return None
    most = max(pointed.values())
    return entry.targets[min(index for index, count in pointed.items() if count == most)]


def _evenings(lights: Sequence[Sub], sites: dict[str, PublicSite]) -> list[date]:
    """The evening of each sub, by mid-exposure: local mean solar noon to noon; civil noon of its time zone where the
    site is hidden, since a longitude must not show."""
    longitudes = np.array([_longitude(sites[sub.site]) for sub in lights], dtype=float)
    middles = np.array([sub.middle.timestamp() for sub in lights], dtype=float)
    evenings = evening_of(middles, np.nan_to_num(longitudes)).astype(object).tolist() if len(lights) else []
    return [
        _civil_evening(sub.middle, sites[sub.site].time_zone) if np.isnan(longitude) else evening
        for sub, longitude, evening in zip(lights, longitudes, evenings, strict=True)
    ]


def _longitude(site: PublicSite) -> float:
    return float("nan") if site.longitude_deg is None else site.longitude_deg


def _civil_evening(moment: datetime, time_zone: str) -> date:
    shifted = moment.astimezone(_zone(time_zone)).replace(tzinfo=UTC).timestamp() - 12 * 3600
    return datetime.fromtimestamp(shifted, UTC).date()


@cache
def _zone(name: str) -> ZoneInfo:
    return ZoneInfo(name)


class KnownSky:
    """The sky of a view made before."""

    def __init__(self, view: EntryView) -> None:
        self.nights = {(night.site.slug, night.evening): night for night in view.nights}

    def night(self, site: PublicSite, evening: date) -> NightSky | None:
        return self.nights[site.slug, evening].sky

    def target(self, site: PublicSite, evening: date, target: Target | None) -> TargetNight | None:
        return self.nights[site.slug, evening].target_sky


def _same_sky(entry: Entry, view: EntryView | None) -> EntryView | None:
    """The view, where it answers the same questions of the sky."""
    return view if view is not None and _questions(view.entry) == _questions(entry) else None


def _questions(entry: Entry) -> list[object]:
    places = [(target.ra_deg, target.dec_deg, body_of(target)) for target in entry.targets]
    return [places, [(sub.start, sub.exposure_s, sub.site, sub.target) for sub in entry.lights]]


def _work_since(entry: Entry, rigs: Mapping[str, Rig], before: Mapping[str, date]) -> tuple[tuple[Rig, Work], ...]:
    """Work on each of the entry's rigs after the previous entry with that rig was published, up to this one's date."""
    return tuple(
        (rigs[slug], work)
        for slug in rigs_of(entry)
        for work in rigs[slug].work
        if before.get(slug, date.min) < work.date <= entry.published
    )


def _changes_since(entry: Entry, rigs: Mapping[str, Rig], before: Mapping[str, date]) -> tuple[tuple[Rig, Train], ...]:
    """The same for changes of their trains."""
    return tuple(
        (rigs[slug], train)
        for slug in rigs_of(entry)
        for train in rigs[slug].trains
        if train.from_evening is not None and before.get(slug, date.min) < train.from_evening <= entry.published
    )
