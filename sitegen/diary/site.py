"""One observing site (content/sites/NAME.yaml)."""

from msgspec import Struct


class Site(Struct, frozen=True):
    """`slug` is the file's name and the address; angles in degrees, north and east positive.

    The position is the true one. Nothing that is published may use it: `public_position` gives what may be.
    """

    slug: str
    name: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    time_zone: str
    sky_mag_arcsec2: float | None = None
    extinction_mag: float = 0.25
    seeing_arcsec: float | None = None
    bortle: int | None = None
    horizon: tuple[tuple[float, float], ...] = ()
