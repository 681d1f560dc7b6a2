"""What the catalogue answers with."""

from msgspec import Struct


class SkyObject(Struct, frozen=True):
    """One object of the sky. Positions are ICRS (J2000.0); None stands for what no table knows."""

    name: str  # the one to show: 'M 83', 'Sh2-132', 'Cygnus Loop'
    ra_deg: float  # 0..360
    dec_deg: float
    kind: str  # in plain words: 'galaxy', 'planetary nebula', 'dark nebula', 'star'
    size_arcmin: tuple[float, float] | None  # major and minor axis, whole lengths
    position_angle_deg: float | None  # of the major axis, from north through east
    magnitude: float | None  # V where known, else the photographic or B one of the source
    aliases: tuple[str, ...]  # every other designation and name, without `name` itself
    source: str  # the data set the position comes from, as CREDITS spells it
