"""When something was, as exactly as people remember it: a year, a month, a day, a season."""

import re
from datetime import date

from msgspec import Struct

from sitegen.diary.recalled import Season, When
from sitegen.problems import did_you_mean
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.value_types.day import EARLIEST_YEAR, ISO_DAY
from sitegen.reading.value_types.value_type import JsonSchema, text_of

SEASONS: dict[str, Season] = {
    "spring": "spring", "summer": "summer", "autumn": "autumn", "fall": "autumn", "winter": "winter",
    "frühling": "spring", "frühjahr": "spring", "sommer": "summer", "herbst": "autumn",
}  # fmt: skip
MONTHS = {
    "january": 1, "february": 2, "march": 3, "april": 4, "may": 5, "june": 6, "july": 7, "august": 8, "september": 9,
    "october": 10, "november": 11, "december": 12, "januar": 1, "februar": 2, "märz": 3, "mai": 5, "juni": 6, "juli": 7,
    "oktober": 10, "dezember": 12,
}  # fmt: skip
_SHORT = {name[:3]: number for name, number in MONTHS.items()} | {"sept": 9}
_YEAR = re.compile(r"\d{4}", re.ASCII)
_TWO_YEARS = re.compile(r"(\d{4})[/-](\d{2}|\d{4})", re.ASCII)
_YEAR_AND_MONTH = re.compile(r"(\d{4})-(\d{2})", re.ASCII)
_MONTH_FIRST = re.compile(r"(\d{1,2})[./-](\d{4})", re.ASCII)
_DAY_OF_MONTH = re.compile(r"(\d{1,2})(?:\.|st|nd|rd|th)?", re.ASCII)
_FILLERS = frozenset({"in", "im", "of", "the"})
HOW_TO_WRITE = "write a year, a month, a day, or a season with its year, as in 2019, 2018-04, 2018-04-21, autumn 2019"


class Period(Struct, frozen=True):
    """Words in English and German. What lies in the future is worth a warning."""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> When | None:
        text = text_of(node, label, diagnostics, "a time", HOW_TO_WRITE)
        if text is None:
            return None
        when = understood(text)
        if when is None:
            diagnostics.error(node, f"{label} is {quoted(text)}, which is not understood", _remedy(text))
        elif when.first > diagnostics.today:
            diagnostics.warn(node, f"{label} is {quoted(text)}, in the future", "is the year right?")
        return when

    def schema(self) -> JsonSchema:
        return {"type": ["string", "integer"]}

    def words(self) -> str:
        return "year, month, day, or season with its year"


def understood(text: str) -> When | None:
    """None for what is no such time."""
    when = _numeric(text) or _in_words(text)
    return when if when is not None and when.year >= EARLIEST_YEAR and _is_possible(when) else None


def _numeric(text: str) -> When | None:
    """2019, 2018-04, 2018-04-21."""
    for pattern in (_YEAR, _YEAR_AND_MONTH, ISO_DAY):
        if pattern.fullmatch(text):
            year, month, day = (*map(int, text.split("-")), None, None)[:3]
            return When(year or 0, month, day)
    return None


def _in_words(text: str) -> When | None:
    """'autumn 2019', 'Winter 2019/20', 'April 2018', '21. April 2018', in any order."""
    words = [word for word in text.casefold().replace(",", " ").split() if word not in _FILLERS]
    years = [word for word in words if _YEAR.fullmatch(word) or _TWO_YEARS.fullmatch(word)]
    others = [word for word in words if word not in years]
    if len(years) != 1:
        return None
    if len(others) == 1 and others[0] in SEASONS:
        return _season(SEASONS[others[0]], years[0])
    months = [_month(word) for word in others if _month(word)]
    days = [match[1] for word in others if (match := _DAY_OF_MONTH.fullmatch(word))]
    if not _YEAR.fullmatch(years[0]) or len(months) != 1 or len(days) > 1 or len(others) != len(months) + len(days):
        return None
    return When(int(years[0]), months[0], int(days[0]) if days else None)


def _season(season: Season, years: str) -> When | None:
    """The second year follows the first."""
    if _YEAR.fullmatch(years):
        return When(int(years), season=season)
    first, second = _TWO_YEARS.fullmatch(years).groups()  # type: ignore[union-attr] # one of the two patterns holds
    follows = int(second) % 100 == (int(first) + 1) % 100 and (len(second) == 2 or int(second) == int(first) + 1)
    return When(int(first), season=season, to_next=True) if follows else None


def _month(word: str) -> int | None:
    return MONTHS.get(word) or _SHORT.get(word.removesuffix("."))


def _is_possible(when: When) -> bool:
    """No month has a number 13, and February no 30th day."""
    try:
        date(when.year, when.month or 1, when.day or 1)
    except ValueError:
        return False
    return True


def _remedy(text: str) -> str:
    """The month that was meant, the season that was misspelt; else how to write it."""
    if (match := _MONTH_FIRST.fullmatch(text)) and understood(meant := f"{match[2]}-{match[1]:0>2}"):
        return f"write {meant}"
    for word in re.findall(r"[^\W\d]{3,}", text.casefold()):
        near = did_you_mean(word, [*SEASONS, *MONTHS])
        if near is not None and near != word:
            return f"did you mean '{near}'?"
    return HOW_TO_WRITE
