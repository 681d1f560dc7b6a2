"""How much light each filter gathered, and how much is still wanted."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.filter_colour import sign_of
from sitegen.charts.house_style import DIM, INK, NIGHT, WIDTH, passband
from sitegen.charts.lettering import width_of
from sitegen.charts.plot import Bar, Plot, plot
from sitegen.charts.round_steps import hour_text, round_steps

ROW, BAR = 27.0, 0.58
PLOT = 344.0  # units for the bars and the words behind them


class FilterLight(Struct, frozen=True):
    """One filter: `bands` its passbands as `filter_colour` names them, none for no hue; `missing_s` what open wishes lack."""

    short: str
    name: str
    bands: tuple[str, ...]
    gathered_s: float
    missing_s: float = 0.0


Lights = Sequence[FilterLight]


def draw(lights: Lights, voice: Localizer) -> tuple[Panel, ...]:
    scale_h = max(_whole_h(light) * PLOT / (PLOT - 8 - width_of(_words(light, voice))) for light in lights)
    rows = len(lights)
    drawing = plot(ROW * rows + 34, WIDTH - PLOT, 0, 4, 26, (0.0, scale_h), (rows - 0.5, -0.5))
    marks = round_steps(0.0, max(map(_whole_h, lights)), 4)
    drawing.label_x(marks, hour_text(marks, voice.numbers, voice.words.say("unit.h")))
    drawing.label_y(range(rows), lambda row: lights[round(row)].short, rules=False, role=INK)
    for row, light in enumerate(lights):
        _bar(drawing, row, light)
        drawing.write((drawing.x.place(_whole_h(light)) + 5, drawing.y.place(row)), _words(light, voice))
    return (Panel(drawing, voice.say("gathered.desc")),)


def _whole_h(light: FilterLight) -> float:
    return (light.gathered_s + light.missing_s) / 3600


def _bar(drawing: Plot, row: int, light: FilterLight) -> None:
    """On night ground, as the passbands fill it; what is missing is hollow."""
    gathered_h, top = light.gathered_s / 3600, row - BAR / 2
    if gathered_h:
        drawing.add(Bar((0.0, top), (gathered_h, top + BAR), NIGHT))
        for part in sign_of(light.bands, top, BAR):
            drawing.add(Bar((0.0, part.y), (gathered_h, part.y + part.height), passband(part.band)))
    if light.missing_s:
        drawing.add(Bar((gathered_h, top), (_whole_h(light), top + BAR), DIM, hollow=True))


def _words(light: FilterLight, voice: Localizer) -> str:
    gathered, missing = (_hours(seconds, voice) for seconds in (light.gathered_s, light.missing_s))
    return voice.say("gathered.lacking", gathered=gathered, missing=missing) if light.missing_s else gathered


def _hours(seconds: float, voice: Localizer) -> str:
    """In hours, as the axis; the table has the minutes."""
    return f"{voice.numbers.number(seconds / 3600, 1)}\u202f{voice.words.say('unit.h')}"


def title(lights: Lights, voice: Localizer) -> str:
    most = max(lights, key=lambda light: light.gathered_s)
    total_s = sum(light.gathered_s for light in lights)
    return voice.say("gathered.title", filter=most.short, most=voice.numbers.duration(most.gathered_s),
                     total=voice.numbers.duration(total_s))  # fmt: skip


def table(lights: Lights, voice: Localizer) -> Table:
    heads = tuple(voice.say(f"gathered.{name}") for name in ("filter", "hours", "missing"))
    say = voice.numbers.duration
    rows = tuple((f"{light.short}, {light.name}", say(light.gathered_s), say(light.missing_s)) for light in lights)
    return Table(heads, rows)


EXAMPLE = (
    FilterLight("L", "Luminance", (), 70_000.0),
    FilterLight("R", "Red", ("635-broad",), 20_400.0, 7_200.0),
    FilterLight("HO", "Two bands", ("656-line", "501-line"), 32_000.0),
)

CHART: Chart[Lights] = Chart(
    name="light_gathered",
    question="How much light did each filter gather, and what is still wanted?",
    enough=lambda lights: any(light.gathered_s for light in lights),
    draw=draw,
    title=title,
    table=table,
    example=EXAMPLE,
)
