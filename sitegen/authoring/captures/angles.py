"""Angles as headers write them."""

import math
import re

_PLAIN = re.compile(r"[+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d+)?")
_HOURS = re.compile(r"\s*\d{1,2}[\s:hH]")


def angle_deg(text: str) -> float | None:
    """`-32.6`, `-32 38 02`, `+54:20:57`, `32d38m02s S`; None for anything else. Hours are not told from degrees here."""
    if _PLAIN.fullmatch(text):
        return float(text)
    parts = re.findall(r"\d+(?:\.\d+)?", text)
    if not parts or len(parts) > 3 or re.search(r"[^\d\s:.+\-°'\"′″dhmsNSEWnew]", text):
        return None
    value = math.fsum(float(part) / 60.0**place for place, part in enumerate(parts))
    return -value if text.strip().startswith("-") or text.rstrip().endswith(("S", "W", "w")) else value


def right_ascension_deg(text: str) -> float | None:
    """A plain number is degrees, as the keyword RA has it; parts are hours, minutes, seconds."""
    angle = angle_deg(text)
    if angle is None or not 0 <= angle <= 360:
        return None
    return angle * 15 % 360 if _HOURS.match(text) else angle


def rounded_place_deg(angle: float | None, most: float) -> float | None:
    """To 0.1°, some 11 km: enough to recognise a site and to doubt a clock; the exact place is kept nowhere."""
    if angle is None or abs(angle) > most:
        return None
    return round(angle if angle <= 180 else angle - 360, 1)
