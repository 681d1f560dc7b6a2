"""Time zones of the IANA database."""

from dataclasses import dataclass
from zoneinfo import ZoneInfo, available_timezones

from sitegen.problems import did_you_mean
from sitegen.reading.desk import Desk
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.value_type import JsonSchema, text_of

# Files beside the zones, and what differs from machine to machine.
_NOT_ZONES = frozenset({"localtime", "posixrules", "Factory"})
_NOT_ZONE_FOLDERS = ("posix/", "right/")


@dataclass(frozen=True, slots=True)
class TimeZone:
    def read(self, node: Node, label: str, desk: Desk) -> str | None:
        text = text_of(node, label, desk, "a time zone", "name it as in Europe/Athens")
        if text is None or is_zone(text):
            return text
        near = did_you_mean(text.rpartition("/")[2].replace(" ", "_"), _by_city())
        hint = f"did you mean '{_by_city()[near]}'?" if near else "name it as the IANA database does, as in Europe/Athens"
        desk.error(node, f"{label} is {quoted(text)}, not a known time zone", hint)
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


def _by_city() -> dict[str, str]:
    zones = sorted(zone for zone in available_timezones() if "/" in zone and not zone.startswith("Etc/"))
    return {zone.rpartition("/")[2]: zone for zone in reversed(zones)}
