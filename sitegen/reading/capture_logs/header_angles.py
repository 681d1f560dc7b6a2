"""Angles as headers write them, in text or as numbers."""

import math
import re

_PLAIN = re.compile(r"[+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d+)?")
_HOURS = re.compile(r"\s*\d{1,2}[\s:hH]")
_PARTS = re.compile(r"\d+(?:\.\d+)?")
_FOREIGN = re.compile(r"[^\d\s:.+\-°'\"′″dhmsNSEWnew]")


def angle_deg(text: str) -> float | None:
    """`-32.6`, `5e-05`, `-32 38 02`, `+54:20:57`, `32d38m02s S`; None for anything else. Hours are not told from degrees here."""
    if _PLAIN.fullmatch(text):
        return float(text)
    parts = _PARTS.findall(text)
    if not parts or len(parts) > 3 or _FOREIGN.search(text):
        return None
    value = math.fsum(float(part) / 60.0**place for place, part in enumerate(parts))
    return -value if text.strip().startswith("-") or text.rstrip().endswith(("S", "W", "w")) else value


def right_ascension_deg(text: str) -> float | None:
    """A plain number is degrees, as the keyword RA has it; parts are hours, minutes, seconds, from 24 on degrees. 0 to 360."""
    angle = angle_deg(text)
    if angle is None or not 0 <= angle <= 360:
        return None
    return angle * 15 % 360 if angle < 24 and _HOURS.match(text) else angle
