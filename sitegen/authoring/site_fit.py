"""From where frames were taken: the headers' place is compared in memory with the diary's sites, and forgotten."""

from collections.abc import Iterable, Mapping

from msgspec import Struct

from sitegen.authoring.frame_hints import FrameHints
from sitegen.catalogue.lookup import separation_deg
from sitegen.diary.site import Site

# Headers are often set once for a town; sites of one diary lie farther apart.
NEAR_DEG = 0.3


class SiteFit(Struct, frozen=True):
    site: Site
    sure: bool


def site_of(hints: Iterable[FrameHints | None], sites: Mapping[str, Site]) -> SiteFit | None:
    """The site nearest to the place in the headers; without one there, the diary's only site; None where there is none."""
    if not sites:
        return None
    places = [(each.latitude_deg, each.longitude_deg) for each in hints if each is not None]
    told = next(((lat, lon) for lat, lon in places if lat is not None and lon is not None), None)
    if told is None:
        first = sites[min(sites)]
        return SiteFit(first, sure=len(sites) == 1)
    latitude_deg, longitude_deg = told
    apart = {slug: _apart_deg(longitude_deg, latitude_deg, site) for slug, site in sites.items()}
    nearest = min(apart, key=lambda slug: (apart[slug], slug))
    return SiteFit(sites[nearest], sure=apart[nearest] <= NEAR_DEG)


def _apart_deg(longitude_deg: float, latitude_deg: float, site: Site) -> float:
    return separation_deg(longitude_deg, latitude_deg, site.longitude_deg, site.latitude_deg)
