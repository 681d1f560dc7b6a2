"""What was pointed at, with the author's own keys already laid over the catalogue's."""

from msgspec import Struct


class Positions(Struct, frozen=True):
    """Where something that moves was, from a table of the author's: UTC unix seconds in order, ICRS degrees. `file` as in
    content/."""

    file: str
    times_s: tuple[float, ...]
    ra_deg: tuple[float, ...]
    dec_deg: tuple[float, ...]


class Target(Struct, frozen=True):
    """ICRS degrees; no place at all for `kind` 'moving'. `size_arcmin` is (longer, shorter);
    `position_angle_deg` that of the longer, from north through east, where the catalogue knows it."""

    slug: str
    name: str
    ra_deg: float | None
    dec_deg: float | None
    kind: str | None = None
    size_arcmin: tuple[float, float] | None = None
    magnitude: float | None = None
    aliases: tuple[str, ...] = ()
    positions: Positions | None = None
    position_angle_deg: float | None = None
