"""From where frames were taken: the headers' place, rounded, is compared with the diary's sites."""

from collections import Counter
from collections.abc import Iterable, Mapping

from msgspec import Struct

from sitegen.authoring.captures.record import Frame
from sitegen.catalogue.lookup import separation_deg
from sitegen.diary.site import Site

# Headers are often set once for a town; sites of one diary lie farther apart.
NEAR_DEG = 0.3


class SiteFit(Struct, frozen=True):
    """`by` is what an unsure one was guessed from."""

    site: Site
    sure: bool
    by: str = ""


def site_of(frames: Iterable[Frame], sites: Mapping[str, Site]) -> SiteFit | None:
    """The site nearest to the place in most headers; without one there, the diary's only site; None where there is none."""
    if not sites:
        return None
    places = Counter((frame.record.latitude_deg, frame.record.longitude_deg) for frame in frames
                     if frame.record.latitude_deg is not None and frame.record.longitude_deg is not None)  # fmt: skip
    if not places:
        only = len(sites) == 1
        return SiteFit(sites[min(sites)], only, "" if only else "nothing: it is the first of the diary's sites")
    latitude_deg, longitude_deg = max(places, key=lambda place: (places[place], str(place)))
    apart = {slug: _apart_deg(longitude_deg or 0.0, latitude_deg or 0.0, site) for slug, site in sites.items()}
    nearest = min(apart, key=lambda slug: (apart[slug], slug))
    far = f"the headers' place, {apart[nearest]:.1f}° from it"
    return SiteFit(sites[nearest], apart[nearest] <= NEAR_DEG, far)


def _apart_deg(longitude_deg: float, latitude_deg: float, site: Site) -> float:
    return separation_deg(longitude_deg, latitude_deg, site.longitude_deg, site.latitude_deg)
