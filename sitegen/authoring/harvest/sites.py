"""From where frames were taken: the diary's sites, and new ones where headers tell of a place that has none."""

import math
from collections import Counter
from collections.abc import Iterable, Mapping

from msgspec import Struct

from sitegen.authoring.captures.record import Frame
from sitegen.authoring.harvest.questions import CONFIRM
from sitegen.authoring.harvest.zones import nearest_zone
from sitegen.authoring.schemas import schema_line
from sitegen.authoring.site_fit import NEAR_DEG
from sitegen.catalogue.lookup import separation_deg
from sitegen.diary.settings import Privacy
from sitegen.diary.site import Site
from sitegen.reading.model.site_file import SITE_FILE

Place = tuple[float, float]
"""Latitude and longitude in degrees, as headers give them, to 0.1°."""


class NewSite(Struct, frozen=True):
    """`place` as the diary's privacy lets it be written."""

    slug: str
    name: str
    place: Place


class Sites:
    """By place, the name of the site: one of the diary within 0.3°, else a new one."""

    def __init__(self, frames: Iterable[Frame], sites: Mapping[str, Site], privacy: Privacy) -> None:
        self.new: list[NewSite] = []
        self.places: dict[str, Place] = {slug: (site.latitude_deg, site.longitude_deg) for slug, site in sites.items()}
        self.slugs: dict[Place, str] = {}
        counted = Counter(place for frame in frames if (place := place_of(frame)) is not None)
        for place in sorted(counted, key=lambda place: (-counted[place], place)):
            self.slugs[place] = self._near(place) or self._begin(place, privacy)

    def of(self, frame: Frame) -> str | None:
        place = place_of(frame)
        return None if place is None else self.slugs[place]

    def _near(self, place: Place) -> str | None:
        apart = {slug: separation_deg(place[1], place[0], other[1], other[0]) for slug, other in self.places.items()}
        nearest = min(apart, key=lambda slug: (apart[slug], slug), default=None)
        return nearest if nearest is not None and apart[nearest] <= NEAR_DEG else None

    def _begin(self, place: Place, privacy: Privacy) -> str:
        rounded, slug, name = _as_shown(place, privacy, len(self.new) + 1)
        number, wanted = 1, slug
        while slug in self.places:
            number += 1
            slug = f"{wanted}-{number}"
        self.places[slug] = place
        self.new.append(NewSite(slug, name if number == 1 else f"{name} ({number})", rounded))
        return slug


def place_of(frame: Frame) -> Place | None:
    record = frame.record
    return None if record.latitude_deg is None or record.longitude_deg is None else (record.latitude_deg, record.longitude_deg)


def _as_shown(place: Place, privacy: Privacy, number: int) -> tuple[Place, str, str]:
    """The rounded place, a slug and a name that tell no more than the diary's privacy does: whole degrees at the finest."""
    if privacy.site_position == "hidden":
        return place, f"place-{number}", f"Place {number}"
    step = privacy.round_to_deg if privacy.site_position == "rounded" else 0.1
    rounded = round(place[0] / step) * step, round(place[1] / step) * step
    latitude, longitude = (math.floor(abs(angle) + 0.5) for angle in rounded)
    north, east = "NS"[rounded[0] < 0], "EW"[rounded[1] < 0]
    name = f"{latitude}° {north}, {longitude}° {east}"
    return rounded, f"{latitude}{north}-{longitude}{east}".lower(), name


def site_text(site: NewSite) -> str:
    """The zone is a guess by the nearest place that the table of zones names: its author confirms it."""
    zone, offset = nearest_zone(*site.place)
    return "\n".join([
        schema_line(SITE_FILE),
        "# From the headers of frames, by sitegen harvest. What it is called and how dark it is, only you know.",
        f"name: {site.name}",
        f"latitude_deg: {site.place[0]:.6g}",
        f"longitude_deg: {site.place[1]:.6g}",
        "#elevation_m: 0",
        f"time_zone: {zone}  # {CONFIRM} {zone} is of the nearest place that the table of time zones names ({offset})",
        "#sky_mag_arcsec2: 20.5  # without it neither moonlight nor twilight is reckoned",
        "",
    ])  # fmt: skip


def only_sites(pairs: Iterable[tuple[str, str | None]]) -> dict[str, str]:
    """By rig, the only site of those of its frames that tell one. `pairs` are rig and site of each frame."""
    by_rig: dict[str, set[str]] = {}
    for rig, site in set(pairs):
        if site:
            by_rig.setdefault(rig, set()).add(site)
    return {rig: next(iter(slugs)) for rig, slugs in by_rig.items() if len(slugs) == 1}
