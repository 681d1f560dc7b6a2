"""How much of the dark hours each night used, over time."""

from collections.abc import Sequence
from datetime import date, timedelta

from msgspec import Struct

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.house_style import BROAD, INK, RULE, THICK, THIN, dots, figure_with_axes, ticks
from sitegen.charts.library import Axes

PAD_DAYS = 12
NARROWEST = 0.1  # share of the plot below which a year has no room for its name


class UsedNight(Struct, frozen=True):
    """`share` 0..1 of the `dark_s` seconds of darkness had a kept sub exposing."""

    evening: date
    share: float
    dark_s: float


Nights = Sequence[UsedNight]


def draw(nights: Nights, voice: Localizer) -> tuple[Panel, ...]:
    figure, axes = figure_with_axes(250, 54, 8, 12, 46)
    axes.set_xlim(nights[0].evening.toordinal() - PAD_DAYS, nights[-1].evening.toordinal() + PAD_DAYS)
    axes.set_ylim(-0.02, 1.02)
    ticks(axes, "y", (0, 0.25, 0.5, 0.75, 1), voice.numbers.percent)
    by_year = yearly(nights)
    if len(by_year) > 1:
        _year_ticks(axes, by_year, voice)
    else:
        _month_ticks(axes, nights, voice)
    for year, mean in by_year.items():
        axes.plot(_stretch(year, axes), [mean, mean], color=BROAD, linewidth=THICK, solid_capstyle="butt")
    dots(axes, [night.evening.toordinal() for night in nights], [night.share for night in nights], 6.5, INK, alpha=0.75, zorder=3)
    return (Panel(figure, voice.say("used.desc")),)


def yearly(nights: Nights) -> dict[int, float]:
    """Each year's share of the dark hours of its nights: hours used over dark hours, so that long nights weigh more."""
    years = sorted({night.evening.year for night in nights})
    return {year: share_of([night for night in nights if night.evening.year == year]) for year in years}


def share_of(nights: Nights) -> float:
    return sum(night.share * night.dark_s for night in nights) / sum(night.dark_s for night in nights)


def _stretch(year: int, axes: Axes) -> tuple[float, float]:
    """The part of the year that is shown, as ordinals of days."""
    low, high = axes.get_xlim()
    return max(low, date(year, 1, 1).toordinal()), min(high, date(year + 1, 1, 1).toordinal())


def _year_ticks(axes: Axes, by_year: dict[int, float], voice: Localizer) -> None:
    """Each year's name and its mean in the middle of its stretch; a rule where years meet."""
    middles = {sum(_stretch(year, axes)) / 2: year for year in by_year if _width(year, axes) > NARROWEST}
    ticks(axes, "x", sorted(middles), lambda place: _year_words(middles[place], by_year, voice), grid=False)
    for year in list(by_year)[1:]:
        axes.axvline(date(year, 1, 1).toordinal(), color=RULE, linewidth=THIN, zorder=0)


def _width(year: int, axes: Axes) -> float:
    """Of the year's stretch, as a share of the plot."""
    (start, end), (low, high) = _stretch(year, axes), axes.get_xlim()
    return (end - start) / (high - low)


def _year_words(year: int, by_year: dict[int, float], voice: Localizer) -> str:
    return f"{year}\n{voice.numbers.percent(by_year[year])}"


def _month_ticks(axes: Axes, nights: Nights, voice: Localizer) -> None:
    year, (low, high) = nights[0].evening.year, axes.get_xlim()
    places = [place for month in range(1, 13) if low <= (place := date(year, month, 1).toordinal()) <= high]
    step = 1 + len(places) // 6
    ticks(axes, "x", places[::step], lambda place: voice.numbers.short_day(date.fromordinal(round(place))))


def title(nights: Nights, voice: Localizer) -> str:
    return voice.say("used.title", share=voice.numbers.percent(share_of(nights)), nights=voice.count("used.nights", len(nights)))


def table(nights: Nights, voice: Localizer) -> Table:
    heads = tuple(voice.say(f"used.{name}") for name in ("evening", "dark", "share"))
    numbers = voice.numbers
    return Table(heads, tuple((numbers.day(n.evening), numbers.duration(n.dark_s), numbers.percent(n.share)) for n in nights))


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
