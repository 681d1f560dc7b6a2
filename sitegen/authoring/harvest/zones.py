"""The likeliest time zone of a place, from the table of zones that comes with `tzdata` (IANA, public domain).

The table names one place for each zone, so the nearest is a guess that its author confirms: near a border it may be wrong.
"""

import re
from datetime import UTC, datetime
from functools import lru_cache
from importlib.resources import files
from zoneinfo import ZoneInfo

from sitegen.catalogue.lookup import separation_deg

_PLACE = re.compile(r"([+-])(\d{2})(\d{2})(\d{2})?([+-])(\d{3})(\d{2})(\d{2})?")
WINTER = datetime(2025, 1, 15, 12, tzinfo=UTC), datetime(2025, 7, 15, 12, tzinfo=UTC)


def nearest_zone(latitude_deg: float, longitude_deg: float) -> tuple[str, str]:
    """The zone's name, and its standard offset in words: 'UTC+09:30'."""
    apart = ((separation_deg(longitude_deg, latitude_deg, east, north), zone) for zone, north, east in _zones())
    _, zone = min(apart)
    return zone, standard_offset(zone)


def standard_offset(zone: str) -> str:
    """Of winter, in either hemisphere."""
    minutes = min((moment.astimezone(ZoneInfo(zone)).utcoffset() or WINTER[0] - WINTER[0]).total_seconds() for moment in WINTER)
    hours, rest = divmod(abs(round(minutes / 60)), 60)
    return f"UTC{'-' if minutes < 0 else '+'}{hours:02d}:{rest:02d}"


@lru_cache(maxsize=1)
def _zones() -> tuple[tuple[str, float, float], ...]:
    """Name, latitude and longitude of each zone's own place."""
    lines = files("tzdata").joinpath("zoneinfo/zone1970.tab").read_text("utf-8").splitlines()
    rows = (line.split("\t") for line in lines if line and not line.startswith("#"))
    return tuple((row[2], *_place(row[1])) for row in rows)


def _place(text: str) -> tuple[float, float]:
    """'-3455+13835' or '+404251-0740023' (ISO 6709): degrees, minutes and perhaps seconds."""
    match = _PLACE.fullmatch(text)
    assert match is not None, text
    north, east = (_angle(*match.groups()[start : start + 4]) for start in (0, 4))
    return north, east


def _angle(sign: str, degrees: str, minutes: str, seconds: str | None) -> float:
    angle = int(degrees) + int(minutes) / 60 + int(seconds or 0) / 3600
    return -angle if sign == "-" else angle
