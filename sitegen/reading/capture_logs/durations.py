"""Exposure times as people write them, in seconds."""

import re

from sitegen.reading.capture_logs.log_problems import ValueProblem

LONGEST = 60
"""Letters of a cell that says how long; more, and looking for numbers and units in it would take long."""
_NUMBER = r"(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?"
_PLAIN = re.compile(_NUMBER, re.ASCII | re.IGNORECASE)
_FRACTION = re.compile(rf"({_NUMBER})\s*/\s*({_NUMBER})\s*(?:s|sec|seconds?)?", re.ASCII | re.IGNORECASE)
_PART = re.compile(rf"({_NUMBER})\s*([a-zµμ]+)\s*", re.ASCII | re.IGNORECASE)
_UNITS_S = {"ms": 0.001, "s": 1.0, "sec": 1.0, "secs": 1.0, "second": 1.0, "seconds": 1.0}
_UNITS_S |= {"m": 60.0, "min": 60.0, "mins": 60.0, "minute": 60.0, "minutes": 60.0}
_UNITS_S |= {"h": 3600.0, "hr": 3600.0, "hrs": 3600.0, "hour": 3600.0, "hours": 3600.0}
HOW_TO_WRITE = "write seconds, or as in 5m, 90 s, 1/250"


def is_plain_number(text: str) -> bool:
    return _PLAIN.fullmatch(text) is not None


def read_duration_s(text: str) -> float:
    """`300`, `5m`, `1m30s`, `90 s`, `2 min`, `1h`, `1/250`. Raises ValueProblem."""
    if len(text) > LONGEST:
        raise ValueProblem("not a duration", HOW_TO_WRITE)
    if _PLAIN.fullmatch(text):
        return float(text)
    if fraction := _FRACTION.fullmatch(text):
        return _quotient(*map(float, fraction.groups()))
    parts = _PART.findall(text)
    if not parts or _PART.sub("", text).strip():
        raise ValueProblem("not a duration", _remedy(text))
    unknown = [unit for _, unit in parts if unit.lower() not in _UNITS_S]
    if unknown:
        raise ValueProblem(f"with '{unknown[0]}', which is no unit of time", HOW_TO_WRITE)
    return sum(float(number) * _UNITS_S[unit.lower()] for number, unit in parts)


def _quotient(dividend: float, divisor: float) -> float:
    if divisor == 0:
        raise ValueProblem("not a duration", HOW_TO_WRITE)
    return dividend / divisor


def _remedy(text: str) -> str:
    pointed = text.replace(",", ".", 1)
    return f"write {pointed}, with a point" if text.count(",") == 1 and is_plain_number(pointed) else HOW_TO_WRITE
