"""In which month of the year the light was gathered, all years together."""

from collections.abc import Sequence

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.columns import Column, any_light, as_table, stacked

Months = Sequence[Column]  # January to December; `label` the month's whole name
SHOWN_LETTERS = 1  # twelve of three letters run into each other on a phone


def draw(months: Months, voice: Localizer) -> tuple[Panel, ...]:
    short = [Column(month.label[:SHOWN_LETTERS], month.broad_s, month.narrow_s) for month in months]
    return (Panel(stacked(short, voice, totals=False), voice.say("by_month.desc")),)


def title(months: Months, voice: Localizer) -> str:
    richest = max(months, key=lambda month: month.total_s)
    return voice.say("by_month.title", month=richest.label, hours=voice.numbers.duration(richest.total_s))


def table(months: Months, voice: Localizer) -> Table:
    return as_table(voice.say("by_month.head"), months, voice)


NAMES = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December")

CHART: Chart[Months] = Chart(
    name="hours_by_month",
    question="Which months of the year give light here?",
    enough=any_light,
    draw=draw,
    title=title,
    table=table,
    example=tuple(Column(name, 9_000.0 * (place % 5), 7_000.0 * (place % 3)) for place, name in enumerate(NAMES)),
)
