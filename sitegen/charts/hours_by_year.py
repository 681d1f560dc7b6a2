"""In which year the light was gathered."""

from collections.abc import Sequence

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.columns import Column, any_light, as_table, stacked

Years = Sequence[Column]
MOST_WITH_SUMS = 6


def draw(years: Years, voice: Localizer) -> tuple[Panel, ...]:
    return (Panel(stacked(years, voice, totals=len(years) <= MOST_WITH_SUMS), voice.say("by_year.desc"), halo=True),)


def title(years: Years, voice: Localizer) -> str:
    richest = max(years, key=lambda year: year.total_s)
    if sum(bool(year.total_s) for year in years) == 1:
        return voice.say("by_year.one", year=richest.label, hours=voice.numbers.duration(richest.total_s))
    return voice.say("by_year.title", year=richest.label, hours=voice.numbers.duration(richest.total_s))


def table(years: Years, voice: Localizer) -> Table:
    return as_table(voice.say("by_year.head"), years, voice)


CHART: Chart[Years] = Chart(
    name="hours_by_year",
    question="Which year gave the most light?",
    enough=any_light,
    draw=draw,
    title=title,
    table=table,
    example=(Column("2024", 90_000.0, 12_000.0), Column("2025", 0.0, 0.0), Column("2026", 150_000.0, 80_000.0)),
)
