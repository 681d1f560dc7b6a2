"""What moves among the stars: a name that the bundled theory knows (see `bodies`), or a table of places."""

from msgspec import Struct


class PlaceTable(Struct, frozen=True):
    """Astrometric places in ICRS degrees at UTC unix seconds in order, as seen from the Earth's centre."""

    times_s: tuple[float, ...]
    ra_deg: tuple[float, ...]
    dec_deg: tuple[float, ...]


Body = str | PlaceTable
