"""Exposure times as a column writes them: 300, 5 min, 24 x 300 s, 5:00, 1/250."""

import re
from collections.abc import Sequence
from statistics import median

from msgspec import Struct

from sitegen.authoring.recorded.doubts import AskedFor, answer, either
from sitegen.authoring.recorded.numbers import number_in
from sitegen.reading.capture_logs.columns import within_a_day
from sitegen.reading.capture_logs.durations import read_duration_s
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.table import MOST_FRAMES

UNITS_S = {"s": 1.0, "min": 60.0, "h": 3600.0}
FORMS = {"%M:%S": "m:ss", "%H:%M": "h:mm", "%H:%M:%S": "h:mm:ss"}
_TIMES = re.compile(r"(\d+)\s*(?:subs?|frames?|bilder|aufnahmen)?\s*(?:[x×*]|à)\s*(.+)", re.I)
_CLOCK = re.compile(r"(\d{1,2}):(\d{2})", re.ASCII)
_LONG_CLOCK = re.compile(r"(\d{1,2}):(\d{2}):(\d{2}(?:\.\d+)?)", re.ASCII)
_WORDS = {"sekunden": "s", "sekunde": "s", "sek": "s", "minuten": "min", "minute": "min", "stunden": "h", "stunde": "h",
          "std": "h"}
_MARKS = (("''", "s"), ('"', "s"), ("″", "s"), ("'", "m"), ("′", "m"))
LONGEST_MINUTES = 60


class Exposure(Struct, frozen=True):
    """`seconds` where the cell says its unit; else a plain number, or the two parts of a clock whose unit the column tells."""

    text: str
    count: int | None = None
    seconds: float | None = None
    number: float | None = None
    parts: tuple[int, int] | None = None


def read_exposure(text: str) -> Exposure:
    """Decimals with points. Raises ValueProblem."""
    if times := _TIMES.fullmatch(text):
        if _TIMES.fullmatch(times.group(2)):
            raise ValueProblem("two counts", "write it as in 24 x 300 s")
        inner = read_exposure(times.group(2))
        return Exposure(text, int(number_in(times.group(1), 0, MOST_FRAMES)), inner.seconds, inner.number, inner.parts)
    if long := _LONG_CLOCK.fullmatch(text):
        return Exposure(text, seconds=int(long.group(1)) * 3600.0 + int(long.group(2)) * 60 + float(long.group(3)))
    if clock := _CLOCK.fullmatch(text):
        return Exposure(text, parts=(int(clock.group(1)), int(clock.group(2))))
    if re.fullmatch(r"\d+(?:\.\d+)?", text, re.ASCII):
        return Exposure(text, number=float(text))
    return Exposure(text, seconds=read_duration_s(_in_english(text)))


def _in_english(text: str) -> str:
    plain = re.sub(r"[^\W\d]+\.?", lambda word: _WORDS.get(word.group().casefold().rstrip("."), word.group().rstrip(".")), text)
    for mark, unit in _MARKS:
        plain = plain.replace(mark, unit)
    return plain


class UnitTold(Struct, frozen=True):
    """`factor` of plain numbers, `parts_s` of the two parts of a clock, in seconds."""

    factor: float = 1.0
    parts_s: tuple[float, float] = (0.0, 0.0)
    why: str = ""


def unit_of(exposures: Sequence[Exposure], steps_s: Sequence[float], heading: str, unit: str) -> UnitTold:
    """`steps_s` between starts that follow each other, beside the exposure of the first of each: what a camera can have done
    tells the unit where the heading does not. Raises AskedFor."""
    parts = next((exposure for exposure in exposures if exposure.parts is not None), None)
    plain = [exposure.number for exposure in exposures if exposure.number is not None]
    if parts is not None:
        return _of_clocks(exposures, steps_s, heading, unit, parts)
    if unit in UNITS_S or not plain:
        return UnitTold(UNITS_S.get(unit, 1.0))
    if max(plain) > LONGEST_MINUTES:
        return UnitTold()
    numbers = [exposure.number or 0.0 for exposure in exposures]
    fitting = [name for name in ("s", "min") if _fits([number * UNITS_S[name] for number in numbers], steps_s)]
    if len(fitting) == 1:
        words = {"s": "seconds", "min": "minutes"}[fitting[0]]
        return UnitTold(UNITS_S[fitting[0]], why=f"'{heading}' is in {words}, as the starts follow each other")
    if not all(number.is_integer() for number in plain) or max(plain) < 1:
        return UnitTold()
    raise AskedFor(f"'{heading}' may be in seconds or in minutes: {plain[0]:g} is both possible",
                   either(answer("exposure_s", heading, "s"), answer("exposure_s", heading, "min")))  # fmt: skip


def _of_clocks(
    exposures: Sequence[Exposure], steps_s: Sequence[float], heading: str, unit: str, shown: Exposure
) -> UnitTold:
    ways = {"m:ss": (60.0, 1.0), "h:mm": (3600.0, 60.0)}
    unit = FORMS.get(unit, unit)
    if unit in ways:
        return UnitTold(parts_s=ways[unit])
    seconds = {name: [_in_parts(exposure, way) for exposure in exposures] for name, way in ways.items()}
    fitting = [name for name in ways if _fits(seconds[name], steps_s)]
    if len(fitting) == 1:
        return UnitTold(parts_s=ways[fitting[0]], why=f"{shown.text} is {fitting[0]}, as the starts follow each other")
    raise AskedFor(f"{shown.text} may be minutes and seconds, or hours and minutes",
                   either(answer("exposure_s", heading, "%M:%S"), answer("exposure_s", heading, "%H:%M")))  # fmt: skip


def _in_parts(exposure: Exposure, parts_s: tuple[float, float]) -> float:
    first, second = exposure.parts or (0, 0)
    return first * parts_s[0] + second * parts_s[1]


def _fits(seconds: Sequence[float], steps_s: Sequence[float]) -> bool:
    """Whether frames of such lengths begin one after the other, with half of the time lost at most; starts alone are no evidence
    for what is much shorter. `steps_s` holds 0 where nothing follows."""
    shares = [second / step for second, step in zip(seconds, steps_s, strict=True) if step > 0]
    return bool(shares) and 0.5 <= median(shares) <= 1.02 and max(shares) <= 1.1


def seconds_of(exposure: Exposure, unit: UnitTold) -> float:
    """Raises ValueProblem."""
    if exposure.seconds is not None:
        return within_a_day(exposure.seconds)
    if exposure.parts is not None:
        return within_a_day(_in_parts(exposure, unit.parts_s))
    return within_a_day(round((exposure.number or 0.0) * unit.factor, 6))
