"""A number and its unit as a reader sees them: the only place a number is rounded for the eye.

Digits are those that mean something: a scale has three figures, an altitude whole degrees, a share whole percents.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, date, datetime, tzinfo
from functools import cache, lru_cache

from babel import Locale
from babel.dates import format_date, format_datetime
from babel.numbers import format_decimal
from msgspec import Struct

NARROW_SPACE = "\u202f"
UNKNOWN = "—"


class NumberText(Struct, frozen=True):
    """Writes numbers and dates in one language. `words` holds the units that are words ('h', 'min', 'nights')."""

    language: str
    words: Mapping[str, str]

    def number(self, value: float | None, decimals: int) -> str:
        """Fixed decimals, the language's own separators, a true minus sign."""
        if value is None or not math.isfinite(value):
            return UNKNOWN
        return _fixed(self.language, round(value, decimals) + 0.0, decimals)

    def figures(self, value: float | None, figures: int = 3) -> str:
        """That many significant figures: 1.02, 53.4, 0.331."""
        if value is None or not math.isfinite(value):
            return UNKNOWN
        whole_digits = math.floor(math.log10(abs(value))) + 1 if value else 1
        return self.number(value, max(0, figures - whole_digits))

    def quantity(self, value: float | None, unit: str) -> str:
        """A number with its unit, by the habits of that unit."""
        if value is None:
            return UNKNOWN
        return _BY_UNIT.get(unit, _plain)(self, value, unit)

    def duration(self, seconds: float | None) -> str:
        """'6 h 40 min'; minutes below an hour, seconds below a minute and a half."""
        if seconds is None:
            return UNKNOWN
        hour, minute, second = self.words["unit.h"], self.words["unit.min"], self.words["unit.s"]
        if abs(seconds) < 90:
            return f"{self.number(seconds, 0 if float(seconds).is_integer() else 1)}{NARROW_SPACE}{second}"
        minutes = round(seconds / 60)
        if minutes < 60:
            return f"{minutes}{NARROW_SPACE}{minute}"
        hours, rest = divmod(minutes, 60)
        return f"{self.number(hours, 0)}{NARROW_SPACE}{hour}" + (f" {rest}{NARROW_SPACE}{minute}" if rest else "")

    def exposure(self, seconds: float) -> str:
        """A single exposure: '300 s', '1/250 s'."""
        if 0 < seconds < 0.5:
            return f"1/{round(1 / seconds)}{NARROW_SPACE}{self.words['unit.s']}"
        decimals = 0 if float(seconds).is_integer() else 1
        return f"{self.number(seconds, decimals)}{NARROW_SPACE}{self.words['unit.s']}"

    def percent(self, share: float | None) -> str:
        """A fraction as whole percents; what is not quite nothing or everything never reads as such."""
        if share is None or not math.isfinite(share):
            return UNKNOWN
        whole = min(max(round(100 * share), 1 if share > 0 else 0), 100 if share >= 1 else 99)
        return f"{whole}{NARROW_SPACE}%"

    def angle(self, degrees: float | None) -> str:
        """An extent on the sky: 2.4°, 53′, 12″."""
        if degrees is None:
            return UNKNOWN
        if abs(degrees) >= 10:
            return f"{self.number(degrees, 1)}°"
        if abs(degrees) >= 2:
            return f"{self.number(degrees, 2)}°"
        if abs(degrees) * 60 >= 2:
            return f"{self.figures(degrees * 60, 2)}′"
        return f"{self.figures(degrees * 3600, 2)}″"

    def field(self, sides_deg: Sequence[float]) -> str:
        """Sides in one unit, the longest one's: 3.00° × 2.00°, 53′ × 35′."""
        longest = max(sides_deg)
        if longest >= 2:
            return " × ".join(f"{self.number(side, 1 if longest >= 10 else 2)}°" for side in sides_deg)
        parts, sign = (60, "′") if longest * 60 >= 2 else (3600, "″")
        return " × ".join(f"{self.figures(parts * side, 2)}{sign}" for side in sides_deg)

    def day(self, when: date) -> str:
        """'18 October 2026'."""
        return format_date(when, "long", locale=self._locale)

    def short_day(self, when: date) -> str:
        """'18 Oct': for lists whose year is clear."""
        return format_date(when, "d MMM", locale=self._locale)

    def month(self, when: date) -> str:
        return format_date(when, "LLLL", locale=self._locale)

    def short_month(self, when: date) -> str:
        """'Oct'."""
        return format_date(when, "LLL", locale=self._locale)

    def month_of_year(self, when: date) -> str:
        """'October 2026'."""
        return format_date(when, "LLLL y", locale=self._locale)

    def clock(self, moment: datetime | None, zone: tzinfo = UTC) -> str:
        """'21:42' in the zone; rounded to the minute."""
        if moment is None:
            return UNKNOWN
        local = datetime.fromtimestamp(round(moment.timestamp() / 60) * 60, zone)
        return format_datetime(local, "HH:mm", locale=self._locale)

    @property
    def _locale(self) -> Locale:
        return _locale_of(self.language)


@cache
def _locale_of(language: str) -> Locale:
    """Plain 'en' means day-month-year, as the trade writes dates; a region ('en-US') brings its own habits."""
    return Locale.parse("en_GB" if language == "en" else language.replace("-", "_"))


@lru_cache(maxsize=100_000)
def _fixed(language: str, value: float, decimals: int) -> str:
    """Remembered: a diary shows the same few thousand numbers over and over."""
    pattern = "#,##0" + ("." + "0" * decimals if decimals else "")
    return format_decimal(value, pattern, locale=_locale_of(language)).replace("-", "−")


def _plain(texts: NumberText, value: float, unit: str) -> str:
    return f"{texts.figures(value)}{NARROW_SPACE}{unit}" if unit else texts.figures(value)


_BY_UNIT: dict[str, Callable[[NumberText, float, str], str]] = {
    "s": lambda texts, value, _: texts.duration(value),
    "fraction": lambda texts, value, _: texts.percent(value),
    "°": lambda texts, value, _: f"{texts.number(value, 0 if abs(value) >= 10 else 1)}°",
    "″/px": lambda texts, value, _: f"{texts.figures(value)}″/px",
    "″": lambda texts, value, _: f"{texts.figures(value, 2)}″",
    "′": lambda texts, value, _: f"{texts.figures(value, 2)}′",
    "mm": lambda texts, value, _: f"{texts.number(value, 0)}{NARROW_SPACE}mm",
    "mag": lambda texts, value, _: f"{texts.number(value, 1)}{NARROW_SPACE}mag",
    "mag/arcsec²": lambda texts, value, _: f"{texts.number(value, 1)}{NARROW_SPACE}mag/arcsec²",
    "days": lambda texts, value, _: f"{texts.number(value, 1)}{NARROW_SPACE}{texts.words['unit.days']}",
    "px": lambda texts, value, _: f"{texts.number(value, 2 if 0 < abs(value) < 0.1 else 1)}{NARROW_SPACE}px",
    "″/min": lambda texts, value, _: f"{texts.figures(value, 2)}″/min",
    "°C": lambda texts, value, _: f"{texts.number(value, 0)}{NARROW_SPACE}°C",
    "%": lambda texts, value, _: f"{texts.number(value, 0)}{NARROW_SPACE}%",
    "m/s": lambda texts, value, _: f"{texts.number(value, 1)}{NARROW_SPACE}m/s",
}
