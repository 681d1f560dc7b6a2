"""The one gate between where the observer stands and what the world may know of it."""

from msgspec import Struct
from msgspec.structs import replace

from sitegen.diary.settings import Privacy
from sitegen.diary.site import Site


class PublicSite(Struct, frozen=True):
    """A site as published: the position rounded, exact, or None where it is hidden."""

    slug: str
    name: str
    latitude_deg: float | None
    longitude_deg: float | None
    elevation_m: float | None
    time_zone: str
    sky_mag_arcsec2: float | None
    extinction_mag: float
    seeing_arcsec: float | None
    bortle: int | None
    horizon: tuple[tuple[float, float], ...]

    @property
    def hidden(self) -> bool:
        return self.latitude_deg is None


def public_site(site: Site, privacy: Privacy) -> PublicSite:
    """The site as the world may see it.

    Rounding is `round(value / round_to_deg) * round_to_deg`; a rounded elevation goes to the nearest 100 m, since
    a metre-exact height tells the spot as surely as a coordinate. A hidden site keeps no position and no horizon.
    """
    everything = PublicSite(
        site.slug, site.name, site.latitude_deg, site.longitude_deg, site.elevation_m, site.time_zone,
        site.sky_mag_arcsec2, site.extinction_mag, site.seeing_arcsec, site.bortle, site.horizon,
    )  # fmt: skip
    if privacy.site_position == "exact":
        return everything
    if privacy.site_position == "hidden":
        return replace(everything, latitude_deg=None, longitude_deg=None, elevation_m=None, horizon=())
    return replace(
        everything,
        latitude_deg=_rounded(site.latitude_deg, privacy.round_to_deg),
        longitude_deg=_rounded(site.longitude_deg, privacy.round_to_deg),
        elevation_m=_rounded(site.elevation_m, 100.0),
    )


def _rounded(value: float, step: float) -> float:
    """To the step; the second rounding only takes off the dust of binary multiplication."""
    return round(round(value / step) * step, 9) + 0.0
