"""A published value: what a source prints, how far one may be from it, and why that far.

Everything in this folder is such a record. `tests/gate/published.py` asks each for its source and the reason for its tolerance.
"""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

LAST_DIGIT = "the last digit printed"
COMMON_PRACTICE = "common practice, no source"
FROM_MEMORY = "from memory"
MEEUS = "J. Meeus, Astronomical Algorithms, 2nd ed. (1998), digits as quoted in the test suites of two general libraries"


def meeus(place: str) -> str:
    return f"{MEEUS}: {place}"


@dataclass(frozen=True, slots=True)
class Published:
    """`tolerance` is absolute, in the unit of the value; `why` says where it comes from."""

    value: float
    tolerance: float
    source: str
    why: str

    def agrees(self, computed: Any) -> bool:
        """Says the source and both numbers where they differ."""
        if abs(float(computed) - self.value) <= self.tolerance:
            return True
        raise AssertionError(f"{self.source}: printed {self.value}, computed {computed}, allowed {self.tolerance} ({self.why})")


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """Numbers of one source by what they belong to. `tolerance` is absolute, or a share of the number where `relative`."""

    numbers: Mapping[Any, float]
    tolerance: float
    source: str
    why: str
    relative: bool = False

    def __iter__(self) -> Iterator[Any]:
        return iter(self.numbers)

    def __len__(self) -> int:
        return len(self.numbers)

    def __contains__(self, argument: object) -> bool:
        return argument in self.numbers

    def at(self, argument: Any) -> Published:
        number = self.numbers[argument]
        allowed = self.tolerance * abs(number) if self.relative else self.tolerance
        return Published(number, allowed, f"{self.source}, at {argument}", self.why)


@dataclass(frozen=True, slots=True)
class Moments:
    """Moments in UTC that a source prints, by what happens then."""

    times: Mapping[Any, Any]
    tolerance_s: float
    source: str
    why: str


@dataclass(frozen=True, slots=True)
class Given:
    """What a worked example starts from, or what a source counts: exact, so that there is no tolerance to explain."""

    values: Any
    source: str


@dataclass(frozen=True, slots=True)
class Moment:
    """A time of day printed to the second."""

    text: str
    tolerance_s: float
    source: str
    why: str

    def agrees(self, computed: Any) -> bool:
        apart = datetime.fromisoformat(computed) - datetime.fromisoformat(self.text)
        return abs(apart.total_seconds()) <= self.tolerance_s


@dataclass(frozen=True, slots=True)
class Exactly:
    """Text, a truth value, or what is copied and counted: there is nothing to be near to."""

    value: Any
    source: str

    def agrees(self, computed: Any) -> bool:
        return bool(computed == self.value)


@dataclass(frozen=True, slots=True)
class Numbers:
    """Several numbers, each with the same tolerance."""

    values: tuple[float, ...]
    tolerance: float
    source: str
    why: str

    def agrees(self, computed: Any) -> bool:
        parts = (Published(value, self.tolerance, self.source, self.why) for value in self.values)
        return all(part.agrees(number) for part, number in zip(parts, computed, strict=True))


@dataclass(frozen=True, slots=True)
class Rows:
    """A CSV file of this folder: its heading names source, tolerance and why. `tolerance` None where it stands in the rows, or
    where there is none."""

    rows: list[list[str]]
    tolerance: float | None
    source: str
    why: str


def rows_of(file: Path) -> Rows:
    lines = file.read_text("utf-8").splitlines()
    heading = dict(line.removeprefix("# ").split(": ", 1) for line in lines if line.startswith("# ") and ": " in line)
    amount = heading.get("tolerance", "").split(" ")[0]
    rows = list(csv.reader(line for line in lines if not line.startswith("#")))
    return Rows(rows, float(amount) if amount.isdecimal() else None, heading.get("source", ""), heading.get("why", ""))


def published_rows(name: str) -> Rows:
    return rows_of(Path(__file__).parent / name)


def degrees(whole: float, minutes: float = 0.0, seconds: float = 0.0) -> float:
    """Sexagesimal to decimal; the sign of `whole` holds for all."""
    return (abs(whole) + minutes / 60.0 + seconds / 3600.0) * (-1.0 if whole < 0 else 1.0)
