"""What was pointed at, with the author's own keys already laid over the catalogue's."""

from msgspec import Struct


class Target(Struct, frozen=True):
    """ICRS degrees; no place at all for `kind` 'moving'. `size_arcmin` is (longer, shorter)."""

    slug: str
    name: str
    ra_deg: float | None
    dec_deg: float | None
    kind: str | None = None
    size_arcmin: tuple[float, float] | None = None
    magnitude: float | None = None
    aliases: tuple[str, ...] = ()
