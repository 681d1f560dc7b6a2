"""The canonical columns of a table, and how a cell of each is read."""

import math
from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Any

from msgspec import Struct, field

from sitegen.problems import hint_for
from sitegen.reading.capture_logs.durations import HOW_TO_WRITE, is_plain_number, read_duration_s
from sitegen.reading.capture_logs.frame_kind import KINDS, frame_kind
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import read_moment
from sitegen.reading.value_types.number import DECIMAL

# Electronic shutters of planetary cameras begin at some microseconds.
SHORTEST_EXPOSURE_S = 1e-6
LONGEST_EXPOSURE_S = 86_400.0
# What programs write where nothing was measured.
NOTHING = frozenset({"", "nan", "-", "--", "–", "n/a", "na", "null", "none", "masked"})
_YES = frozenset({"yes", "y", "true", "t", "1", "kept", "keep", "ok", "good", "✓", "✔"})
_NO = frozenset({"no", "n", "false", "f", "0", "discarded", "discard", "rejected", "reject", "bad", "✗", "✘"})

TIMES = {"s": 1.0, "sec": 1.0, "second": 1.0, "seconds": 1.0, "ms": 0.001, "min": 60.0, "minute": 60.0, "h": 3600.0, "hr": 3600.0}
TIMES |= {"hour": 3600.0, "d": 86400.0}
ANGLES = {"arcsec": 1.0, "arcsecond": 1.0, "″": 1.0, "mas": 0.001, "arcmin": 60.0, "deg": 3600.0, "degree": 3600.0}
ANGLES_DEG = {"deg": 1.0, "degree": 1.0}
TEMPERATURES = {"deg_C": 1.0, "°C": 1.0, "Celsius": 1.0, "celsius": 1.0, "C": 1.0, "K": 1.0, "Kelvin": 1.0}
ZERO_C_IN_K = 273.15


class Column(Struct, frozen=True):
    """`read` raises ValueProblem; `units` maps each unit that a table may declare to its size in the canonical one."""

    name: str
    read: Callable[[str], Any]
    units: Mapping[str, float] = field(default_factory=dict)


def _remembering(read: Callable[[str], Any]) -> Callable[[str], Any]:
    """Cells repeat from row to row: most are read once."""
    return lru_cache(maxsize=512)(read)


class _Number(Struct, frozen=True):
    """None for the words of `NOTHING`."""

    least: float
    most: float
    whole: bool = False

    def __call__(self, text: str) -> float | int | None:
        plain = text.replace("−", "-")
        if not DECIMAL.fullmatch(plain):
            if plain.casefold() in NOTHING:
                return None
            raise ValueProblem("not a number", _with_point(plain))
        value = float(plain)
        if not self.least <= value <= self.most:
            raise ValueProblem(out_of_range(self.least, self.most))
        if self.whole and not value.is_integer():
            raise ValueProblem("not a whole number")
        return int(value) if self.whole else value


def out_of_range(least: float, most: float) -> str:
    """What is wrong with a number beyond its limits; what only its log bounds has no upper one."""
    return f"below {least:g}" if most == math.inf else f"out of range ({least:g} to {most:g})"


def _with_point(text: str) -> str:
    pointed = text.replace(",", ".", 1)
    return f"write {pointed}, with a point" if text.count(",") == 1 and DECIMAL.fullmatch(pointed) else ""


def _read_exposure_s(text: str) -> float:
    return within_a_day(read_duration_s(text))


def within_a_day(exposure_s: float) -> float:
    """An exposure that can be one. Raises ValueProblem."""
    if not 0 <= exposure_s <= LONGEST_EXPOSURE_S:
        raise ValueProblem("longer than a day" if exposure_s > 0 or math.isnan(exposure_s) else "below zero")
    if 0 < exposure_s < SHORTEST_EXPOSURE_S:
        raise ValueProblem("shorter than a microsecond, which no camera exposes", HOW_TO_WRITE)
    return exposure_s


def _read_kind(text: str) -> str:
    kind = frame_kind(text)
    if kind is None:
        raise ValueProblem("no kind of frame", hint_for(text, KINDS))
    return kind


def _read_kept(text: str) -> bool:
    word = text.casefold()
    if word not in _YES | _NO:
        raise ValueProblem("neither yes nor no", "write yes or no")
    return word in _YES


def _read_binning(text: str) -> float | int | None:
    """`2`, or `2x2` as some programs write it."""
    first, _, second = text.casefold().replace("×", "x").partition("x")
    return _WHOLE_BINNING(first.strip() if first.strip() == second.strip() else text)


_WHOLE_BINNING = _Number(1, 16, whole=True)

COLUMNS = (
    Column("start", read_moment),
    Column("exposure_s", _remembering(_read_exposure_s), TIMES),
    Column("filter", str),
    Column("kind", _remembering(_read_kind)),
    Column("kept", _remembering(_read_kept)),
    Column("reason", str),
    Column("binning", _remembering(_read_binning)),
    Column("gain", _remembering(_Number(0, 1e6))),
    Column("sensor_c", _remembering(_Number(-273.15, 100)), TEMPERATURES),
    Column("fwhm_arcsec", _remembering(_Number(0, 600)), ANGLES),
    Column("elongation", _remembering(_Number(1, 100))),
    Column("guiding_rms_arcsec", _remembering(_Number(0, 3600)), ANGLES),
    Column("stars", _remembering(_Number(0, 1e7, whole=True))),
    Column("count", _remembering(_Number(1, math.inf, whole=True))),
    Column("gap_s", _remembering(_Number(0, 86_400)), TIMES),
    Column("panel", str),
    Column("note", str),
)
# What gathering writes beside them (`diary.frame_origin`, and the clock of a sub). A log's author need not know of these.
ORIGIN_COLUMNS = (
    Column("file", str),
    Column("folder", str),
    Column("object", str),
    Column("ra_deg", _remembering(_Number(0, 360)), ANGLES_DEG),
    Column("dec_deg", _remembering(_Number(-90, 90)), ANGLES_DEG),
    Column("filter_told", str),
    Column("focal_length_mm", _remembering(_Number(0, 1e5))),
    Column("pixel_um", _remembering(_Number(0, 1e4))),
    Column("width_px", _remembering(_Number(1, 1e6, whole=True))),
    Column("height_px", _remembering(_Number(1, 1e6, whole=True))),
    Column("latitude_deg", _remembering(_Number(-90, 90)), ANGLES_DEG),
    Column("longitude_deg", _remembering(_Number(-180, 360)), ANGLES_DEG),
    Column("camera_id", str),
    Column("discarded_by", str),
)
GATHERED_COLUMNS = (*ORIGIN_COLUMNS, Column("clock", str))
ORIGIN_NAMES = tuple(column.name for column in ORIGIN_COLUMNS)
CANONICAL = {column.name: column for column in COLUMNS}
READ = {**CANONICAL, **{column.name: column for column in GATHERED_COLUMNS}}
REQUIRED = ("start", "exposure_s")


def in_unit(column: Column, unit: str) -> Callable[[str], Any]:
    """The column's reader for a table that gives it in one of its other units; the range still holds in the canonical one."""
    if unit in ("K", "Kelvin"):
        return lambda text: column.read(_shifted(text))
    factor = column.units[unit]
    return column.read if factor == 1 else lambda text: column.read(_scaled(text, factor))


def _scaled(text: str, factor: float) -> str:
    """A plain number in the canonical unit; `5m` carries its own unit already."""
    return repr(float(text) * factor) if is_plain_number(text) else text


def _shifted(text: str) -> str:
    return repr(round(float(text) - ZERO_C_IN_K, 6)) if is_plain_number(text) else text
