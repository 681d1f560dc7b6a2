"""Collects what a diary wants to know of the sky, asks once, and hands out the answers."""

from collections.abc import Mapping, Sequence
from datetime import date

import numpy as np
from msgspec.structs import fields

from sitegen.diary.entry import Entry
from sitegen.diary.public_position import PublicSite
from sitegen.diary.target import Target
from sitegen.facts.moving_body import body_of
from sitegen.sky.answer import NightSky, SkyAnswer, SubSky, TargetNight
from sitegen.sky.body import Body
from sitegen.sky.engine import sky_pass
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest

Direction = tuple[float, float]
NIGHT_OF_NOWHERE = Place(0.0, 0.0)


class SkyBook:
    """Nights and directions get a number when first asked for; the same question is never computed twice."""

    def __init__(self, sites: Mapping[str, PublicSite]) -> None:
        self.site_index = {slug: index for index, slug in enumerate(sites)}
        self.places = tuple(place_of(site) for site in sites.values())
        self.hidden = {slug for slug, site in sites.items() if site.hidden}
        self.nights: dict[tuple[int, date], int] = {}
        self.directions: dict[Direction, int] = {}
        self.night_targets: dict[tuple[int, int], int] = {}
        self.sub_mid_s: list[float] = []
        self.sub_night: list[int] = []
        self.sub_direction: list[int] = []
        self.sub_hidden: list[bool] = []
        self.body_nights: dict[tuple[int, Body], int] = {}
        self.sub_bodies: list[tuple[int, Body]] = []
        self.found: SkyAnswer | None = None

    def ask(self, entry: Entry, evenings: Sequence[date]) -> slice:
        """Registers an entry's light frames; gives their place in the answer."""
        first = len(self.sub_mid_s)
        for sub, evening in zip(entry.lights, evenings, strict=True):
            night = self.nights.setdefault((self.site_index[sub.site], evening), len(self.nights))
            target = None if sub.target is None else entry.targets[sub.target]
            self.sub_mid_s.append(sub.middle.timestamp())
            self.sub_night.append(night)
            body = body_of(target)
            if body is not None:
                self.body_nights.setdefault((night, body), len(self.body_nights))
                self.sub_bodies.append((len(self.sub_mid_s) - 1, body))
            self.sub_direction.append(self._direction(night, target))
            self.sub_hidden.append(sub.site in self.hidden)
        return slice(first, len(self.sub_mid_s))

    def _direction(self, night: int, target: Target | None) -> int:
        place = _direction_of(target)
        if place is None:
            return -1
        direction = self.directions.setdefault(place, len(self.directions))
        self.night_targets.setdefault((night, direction), len(self.night_targets))
        return direction

    def answer(self) -> None:
        """One pass over everything asked."""
        self.found = sky_pass(
            SkyRequest(
                places=self.places,
                nights=tuple(self.nights),
                directions=tuple(self.directions),
                night_targets=tuple(self.night_targets),
                sub_mid_s=np.array(self.sub_mid_s, dtype=float),
                sub_night=np.array(self.sub_night, dtype=int),
                sub_direction=np.array(self.sub_direction, dtype=int),
                body_nights=tuple(self.body_nights),
                sub_bodies=tuple(self.sub_bodies),
            )
        )

    @property
    def note(self) -> str | None:
        """One sentence where nights lie outside the installed table of the Earth's rotation."""
        return self.found.earth_rotation_note if self.found else None

    def night(self, site: PublicSite, evening: date) -> NightSky | None:
        """None where the site is hidden."""
        if site.hidden:
            return None
        return self._answer.nights[self.nights[self.site_index[site.slug], evening]]

    def target(self, site: PublicSite, evening: date, target: Target | None) -> TargetNight | None:
        """None where the site is hidden, or nobody knows where the target was."""
        place, body = _direction_of(target), body_of(target)
        if site.hidden or (place is None and body is None):
            return None
        night = self.nights[self.site_index[site.slug], evening]
        if body is not None:
            return self._answer.body_nights[self.body_nights[night, body]]
        assert place is not None
        return self._answer.night_targets[self.night_targets[night, self.directions[place]]]

    def subs(self, part: slice) -> SubSky:
        """An entry's share of the sub columns. At a hidden site only the lit fraction is known: it is the same for
        the whole Earth."""
        if part.start == part.stop:
            return SubSky(*(np.empty(0) for _ in fields(SubSky)))
        subs = self._answer.subs
        unknown = np.array(self.sub_hidden[part], dtype=bool)
        return SubSky(
            target_altitude_deg=_masked(subs.target_altitude_deg[part], unknown),
            airmass=_masked(subs.airmass[part], unknown),
            moon_altitude_deg=_masked(subs.moon_altitude_deg[part], unknown),
            moon_separation_deg=_masked(subs.moon_separation_deg[part], unknown),
            moon_illuminated=subs.moon_illuminated[part],
            sky_brightening_mag=_masked(subs.sky_brightening_mag[part], unknown),
            sun_altitude_deg=_masked(subs.sun_altitude_deg[part], unknown),
        )

    @property
    def _answer(self) -> SkyAnswer:
        if self.found is None:
            raise RuntimeError("answer() comes before reading what was found")
        return self.found


def _masked(column: np.ndarray, unknown: np.ndarray) -> np.ndarray:
    return np.where(unknown, np.nan, column)


def _direction_of(target: Target | None) -> Direction | None:
    if target is None or target.ra_deg is None or target.dec_deg is None:
        return None
    return target.ra_deg, target.dec_deg


def place_of(site: PublicSite) -> Place:
    if site.latitude_deg is None or site.longitude_deg is None:
        return NIGHT_OF_NOWHERE
    return Place(
        site.latitude_deg,
        site.longitude_deg,
        site.elevation_m or 0.0,
        site.extinction_mag,
        site.sky_mag_arcsec2,
        site.horizon,
    )
