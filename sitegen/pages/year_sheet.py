"""A year at a glance: its nights as thin ribbons under each other, on a common clock."""

from collections import Counter
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from sitegen.pages.card import NightCard
from sitegen.pages.diary_index import DiaryIndex


class SheetMonth(Struct, frozen=True):
    """Nights of one month, in order, with the light that counts in lists as their own; how many entries were published in it."""

    first_day: date
    total_s: float
    nights: tuple[NightCard, ...]
    published: int

    @property
    def night_count(self) -> int:
        return len({night.evening for night in self.nights})

    @property
    def has_page(self) -> bool:
        return bool(self.nights or self.published)


class YearSheet(Struct, frozen=True):
    """`night_count`: evenings that gave light."""

    year: int
    total_s: float
    night_count: int
    months: tuple[SheetMonth, ...]

    @property
    def has_pages(self) -> bool:
        """Whether there is a night, or an entry, of any of its months."""
        return any(month.has_page for month in self.months)


def year_sheet(year: int, book: DiaryIndex) -> YearSheet:
    nights = book.by_year.get(year, [])
    published = Counter(card.published.month for card in book.published_years.get(year, []))
    months = tuple(
        _month(date(year, month, 1), [night for night in nights if night.evening.month == month], published[month])
        for month in range(1, 13)
    )
    return YearSheet(
        year=year,
        total_s=sum(night.counted_s for night in nights),
        night_count=len({night.evening for night in nights if night.counted_s}),
        months=months,
    )


def _month(first_day: date, nights: list[NightCard], published: int) -> SheetMonth:
    """A night of which another entry tells everything is shown once, there; where nobody else has that evening, here all the
    same."""
    counted = {night.evening for night in nights if night.counts}
    shown = [night for night in nights if night.counts or night.evening not in counted]
    total_s = sum(night.counted_s for night in nights)
    return SheetMonth(first_day, total_s, tuple(replace(night, integration_s=night.counted_s) for night in shown), published)
