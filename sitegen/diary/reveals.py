"""What a diary tells the world about its author, in plain lines: to be read before it is published."""

from collections.abc import Iterator
from typing import NamedTuple

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.diary.public_position import PublicSite, public_site
from sitegen.diary.settings import Settings

KM_A_DEGREE = 111.2  # of a meridian; mean Earth, IUGG radius 6371.0 km


class Reveal(NamedTuple):
    """`file` inside content/, and what of it becomes public."""

    file: str
    told: str


def reveals_of(diary: Diary) -> tuple[Reveal, ...]:
    """Of the settings, then of each site, then of each published entry."""
    return (*_of_settings(diary.settings), *_of_sites(diary), *(reveal for entry in diary.entries for reveal in _of_entry(entry)))


def _of_settings(settings: Settings) -> Iterator[Reveal]:
    if settings.author:
        yield Reveal("diary.yaml", f"the name '{settings.author}'")
    if settings.outlook.published:
        yield Reveal("diary.yaml", "the coming nights: when you are likely to be outside, and where")


def _of_sites(diary: Diary) -> Iterator[Reveal]:
    for slug, site in sorted(diary.sites.items()):
        public = public_site(site, diary.settings.privacy)
        words = f"the name '{public.name}', the clock {public.time_zone}, {_position(public, diary.settings)}"
        yield Reveal(f"sites/{slug}.yaml", words)


def _position(public: PublicSite, settings: Settings) -> str:
    if public.latitude_deg is None:
        return "no position and nothing that depends on it"
    place = f"latitude {public.latitude_deg:g}°, longitude {public.longitude_deg:g}°, elevation {public.elevation_m:g} m"
    if settings.privacy.site_position == "exact":
        return f"its exact position: {place}"
    step = settings.privacy.round_to_deg
    return f"its position rounded to {step:g}° (a square of {step * KM_A_DEGREE:.3g} km from north to south): {place}"


def _of_entry(entry: Entry) -> Iterator[Reveal]:
    file = f"entries/{entry.slug}.md"
    lights = entry.lights
    if lights:
        first, last = lights[0].start, max(sub.end for sub in lights)
        places = ", ".join(f"'{site}'" for site in sorted({sub.site for sub in lights if sub.site}))
        when = f"{first:%Y-%m-%dT%H:%M:%SZ} to {last:%Y-%m-%dT%H:%M:%SZ}"
        yield Reveal(file, f"when you were out, to the second: {len(lights)} subs, {when}{', at ' + places if places else ''}")
    if entry.night_notes:
        yield Reveal(file, f"your notes of {len(entry.night_notes)} nights, word for word")
    for link in entry.links:
        yield Reveal(file, f"a link to {link.address}")
    for picture in entry.pictures:
        yield Reveal(file, f"what {picture.file} shows, and its name; nothing of its EXIF, XMP, profile or preview")
