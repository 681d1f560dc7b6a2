"""A panel of a mosaic, as the entry's author names it."""

from msgspec import Struct


class Panel(Struct, frozen=True):
    """ICRS degrees of its middle; `rotation_deg` is the position angle of the camera's up, from north through east. None where
    the author does not say."""

    name: str
    ra_deg: float | None = None
    dec_deg: float | None = None
    rotation_deg: float | None = None
