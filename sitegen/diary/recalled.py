"""Totals of which no log is left: what an author remembers, or an old list says."""

import calendar
from datetime import date
from typing import Literal

from msgspec import Struct

Season = Literal["spring", "summer", "autumn", "winter"]


class When(Struct, frozen=True):
    """A year, a month or a day of it, or a season. `to_next`: a season that goes on in the next year, as in 'winter 2019/20'."""

    year: int
    month: int | None = None
    day: int | None = None
    season: Season | None = None
    to_next: bool = False

    @property
    def first(self) -> date:
        """The earliest day that is meant; of a season, which has other months in the other hemisphere, that of its year."""
        return date(self.year, self.month or 1, self.day or 1)

    @property
    def last(self) -> date:
        year, month = self.year + self.to_next, self.month or 12
        return date(year, month, self.day or calendar.monthrange(year, month)[1])


class Recalled(Struct, frozen=True):
    """Light of which only the total is known, in s. `target` is an index into the entry's targets, None where it has none; `rig`
    and `site` are the entry's own. Of everything else None means that nobody knows it."""

    total_s: float
    filter: str | None = None
    count: int | None = None
    exposure_s: float | None = None
    when: When | None = None
    target: int | None = None
    rig: str | None = None
    site: str | None = None
