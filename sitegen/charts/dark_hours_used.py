"""How much of the dark hours each night used, over time."""

from collections.abc import Sequence
from datetime import date, timedelta

from msgspec import Struct

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.house_style import BROAD, INK, THICK
from sitegen.charts.plot import Dots, Line, Plot, Rules, Scale, plot

PAD_DAYS = 12
NARROWEST = 0.1  # share of the plot below which a year has no room for its name
MOST_ROWS = 200
"""Of the table; of more nights it tells the years."""


class UsedNight(Struct, frozen=True):
    """`share` 0..1 of the `dark_s` seconds of darkness had a kept sub exposing."""

    evening: date
    share: float
    dark_s: float


Nights = Sequence[UsedNight]
Rows = tuple[tuple[str, ...], ...]


def draw(nights: Nights, voice: Localizer) -> tuple[Panel, ...]:
    days = tuple(night.evening.toordinal() for night in nights)
    drawing = plot(250, 54, 8, 12, 46, (days[0] - PAD_DAYS, days[-1] + PAD_DAYS), (-0.02, 1.02))
    drawing.label_y((0, 0.25, 0.5, 0.75, 1), voice.numbers.percent)
    by_year = yearly(nights)
    if len(by_year) > 1:
        _label_years(drawing, by_year, voice)
    else:
        _label_months(drawing, nights, voice)
    for year, mean in by_year.items():
        start, end = _stretch(year, drawing.x)
        drawing.add(Line(((start, mean), (end, mean)), BROAD, THICK))
    points = tuple((day, night.share) for day, night in zip(days, nights, strict=True))
    drawing.add(Dots(points, 6.5, INK, opacity=0.75))
    return (Panel(drawing, voice.say("used.desc")),)


def yearly(nights: Nights) -> dict[int, float]:
    """Each year's share of the dark hours of its nights: hours used over dark hours, so that long nights weigh more."""
    years = sorted({night.evening.year for night in nights})
    return {year: share_of([night for night in nights if night.evening.year == year]) for year in years}


def share_of(nights: Nights) -> float:
    return sum(night.share * night.dark_s for night in nights) / sum(night.dark_s for night in nights)


def _stretch(year: int, days: Scale) -> tuple[float, float]:
    """The part of the year that is shown, as ordinals of days."""
    return max(days.low, date(year, 1, 1).toordinal()), min(days.high, date(year + 1, 1, 1).toordinal())


def _label_years(drawing: Plot, by_year: dict[int, float], voice: Localizer) -> None:
    """Each year's name and its mean in the middle of its stretch; a rule where years meet."""
    middles = {sum(_stretch(year, drawing.x)) / 2: year for year in by_year if _width(year, drawing.x) > NARROWEST}
    drawing.label_x(sorted(middles), lambda place: _year_words(middles[place], by_year, voice), rules=False)
    drawing.add(Rules("x", tuple(date(year, 1, 1).toordinal() for year in list(by_year)[1:])))


def _width(year: int, days: Scale) -> float:
    """Of the year's stretch, as a share of the plot."""
    start, end = _stretch(year, days)
    return (end - start) / (days.high - days.low)


def _year_words(year: int, by_year: dict[int, float], voice: Localizer) -> str:
    return f"{year}\n{voice.numbers.percent(by_year[year])}"


def _label_months(drawing: Plot, nights: Nights, voice: Localizer) -> None:
    year, days = nights[0].evening.year, drawing.x
    places = [place for month in range(1, 13) if days.low <= (place := date(year, month, 1).toordinal()) <= days.high]
    step = 1 + len(places) // 6
    drawing.label_x(places[::step], lambda place: voice.numbers.short_day(date.fromordinal(round(place))))


def title(nights: Nights, voice: Localizer) -> str:
    return voice.say("used.title", share=voice.numbers.percent(share_of(nights)), nights=voice.count("used.nights", len(nights)))


def table(nights: Nights, voice: Localizer) -> Table:
    first, rows = ("evening", _by_night(nights, voice)) if len(nights) <= MOST_ROWS else ("year", _by_year(nights, voice))
    return Table(tuple(voice.say(f"used.{name}") for name in (first, "dark", "share")), rows)


def _by_night(nights: Nights, voice: Localizer) -> Rows:
    numbers = voice.numbers
    return tuple((numbers.day(n.evening), numbers.duration(n.dark_s), numbers.percent(n.share)) for n in nights)


def _by_year(nights: Nights, voice: Localizer) -> Rows:
    numbers = voice.numbers
    dark_s = {year: sum(n.dark_s for n in nights if n.evening.year == year) for year in yearly(nights)}
    return tuple((str(year), numbers.duration(dark_s[year]), numbers.percent(share)) for year, share in yearly(nights).items())


CHART: Chart[Nights] = Chart(
    name="dark_hours_used",
    question="How much of the dark hours was used?",
    enough=lambda nights: len(nights) > 1,
    draw=draw,
    title=title,
    table=table,
    example=tuple(
        UsedNight(date(2025, 3, 1) + timedelta(days=23 * step), (step * 37 % 100) / 100, 20_000.0 + 800 * step)
        for step in range(24)
    ),
)
