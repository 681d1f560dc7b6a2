"""Time zones of the IANA database."""

from functools import cache
from zoneinfo import ZoneInfo, available_timezones

from msgspec import Struct

from sitegen.problems import did_you_mean
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

# Files beside the zones, and what differs from machine to machine.
_NOT_ZONES = frozenset({"localtime", "posixrules", "Factory"})
CLOSE_LETTERS = 2
_NOT_ZONE_FOLDERS = ("posix/", "right/")


class TimeZone(Struct, frozen=True):
    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "a time zone", "name it as in Europe/Athens")
        if text is None or is_zone(text):
            return text
        near = _nearest(text)
        hint = f"did you mean '{near}'?" if near else "name it as the IANA database does, as in Europe/Athens"
        diagnostics.error(node, f"{label} is {quoted(text)}, not a known time zone", hint)
        return None

    def schema(self) -> JsonSchema:
        return {"type": "string"}

    def words(self) -> str:
        return "time zone of the IANA database"


def is_zone(name: str) -> bool:
    if name in _NOT_ZONES or name.startswith(_NOT_ZONE_FOLDERS):
        return False
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError):
        return False
    return True


def _nearest(text: str) -> str | None:
    """The zone of a city that was misspelt or given alone; abbreviations such as EEST are near to no city."""
    city = text.rpartition("/")[2].replace(" ", "_")
    by_city = _by_city()
    near = did_you_mean(city, by_city)
    alike = near is not None and near[0].casefold() == city[0].casefold() and abs(len(near) - len(city)) <= CLOSE_LETTERS
    return by_city[near] if near and alike else None


@cache
def _by_city() -> dict[str, str]:
    zones = sorted(zone for zone in available_timezones() if "/" in zone and not zone.startswith("Etc/"))
    return {zone.rpartition("/")[2]: zone for zone in reversed(zones)}
