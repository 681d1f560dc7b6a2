"""Under which Moon the light was gathered: four classes of the lit part, broadband and narrowband."""

from collections.abc import Sequence
from itertools import pairwise

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.columns import Column, any_light, as_table, stacked

Nights = Sequence[tuple[float, float, float]]  # the Moon's lit fraction 0..1, broadband s, narrowband s
STEPS = (0.0, 0.25, 0.5, 0.75, 1.0)


def classes(nights: Nights) -> tuple[Column, ...]:
    """Four classes of the lit part, each with its lower bound; the last holds the full Moon."""
    columns = []
    for low, high in pairwise(STEPS):
        inside = [night for night in nights if low <= night[0] < high or night[0] == high == 1.0]
        label = f"{100 * low:.0f}–{100 * high:.0f}\u202f%"
        columns.append(Column(label, sum(night[1] for night in inside), sum(night[2] for night in inside)))
    return tuple(columns)


def draw(nights: Nights, voice: Localizer) -> tuple[Panel, ...]:
    return (Panel(stacked(classes(nights), voice), voice.say("by_moon.desc"), halo=True),)


def title(nights: Nights, voice: Localizer) -> str:
    """How much of each kind was gathered with the Moon at least half lit."""
    broad, narrow = _bright_share(nights, 1), _bright_share(nights, 2)
    if broad is None or narrow is None:
        only = broad if narrow is None else narrow
        return voice.say("by_moon.title_one", share=voice.numbers.percent(only))
    return voice.say("by_moon.title", broad=voice.numbers.percent(broad), narrow=voice.numbers.percent(narrow))


def _bright_share(nights: Nights, kind: int) -> float | None:
    total_s = sum(night[kind] for night in nights)
    return sum(night[kind] for night in nights if night[0] >= 0.5) / total_s if total_s else None


def table(nights: Nights, voice: Localizer) -> Table:
    return as_table(voice.say("by_moon.head"), classes(nights), voice)


CHART: Chart[Nights] = Chart(
    name="hours_by_moon",
    question="Was narrowband kept for the bright Moon?",
    enough=lambda nights: any_light(classes(nights)),
    draw=draw,
    title=title,
    table=table,
    example=((0.03, 20_000.0, 0.0), (0.4, 9_000.0, 3_000.0), (0.62, 1_200.0, 14_000.0), (1.0, 0.0, 22_000.0)),
)
