"""The contract of a chart: a question, plain values, panels that answer it, and the same numbers as a table.

A chart is one or more panels, each 400 units wide. On a wide page they stand side by side, on a phone under each other, so that
one drawing serves every width and its text never falls below 11 px.
"""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any, Generic, Protocol, TypeVar

from msgspec import Struct, field

from sitegen.charts.clean_svg import clean_svg
from sitegen.charts.house_style import WIDTH
from sitegen.charts.map_figure import release, svg_of
from sitegen.charts.plot import Plot
from sitegen.charts.svg_writer import Frame, panel_svg, short
from sitegen.number_text import NumberText

if TYPE_CHECKING:
    from sitegen.charts.library import Figure

Values = TypeVar("Values")


class Translator(Protocol):
    """The theme's words, as `pages` holds them."""

    def say(self, key: str, **values: object) -> str: ...
    def count(self, key: str, number: int, **values: object) -> str: ...


Remember = Callable[[Any, Any, Callable[[], Any]], Any]
"""Asked with all that a text is made from and with its type: the one made before, else what the function makes."""


def made_now(_: Any, kind: Any, make: Callable[[], Any]) -> Any:
    """Remembers nothing."""
    return make()


class Localizer(Struct, frozen=True):
    """How a chart speaks: the words of its language and its numbers. `remember` is asked with all that a chart is made from,
    whether it was made before."""

    words: Translator
    numbers: NumberText
    remember: Remember = made_now

    def say(self, key: str, **values: object) -> str:
        """The word 'chart.KEY' of the theme."""
        return self.words.say(f"chart.{key}", **values)

    def count(self, key: str, number: int, **values: object) -> str:
        return self.words.count(f"chart.{key}", number, **values)


class Panel(Struct, frozen=True):
    """A plot, or a map's figure. `label` names it for who cannot see it, '' where the chart's title does; `links`: where its
    marks lead, and their names; `halo`: names stand over lines and need room around their letters."""

    figure: "Plot | Figure"
    described: str
    label: str = ""
    links: Mapping[str, str] = field(default_factory=dict)
    halo: bool = False


class Table(Struct, frozen=True):
    """The chart's numbers as text. `links` holds an address for the first cell of each row, or is empty."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    links: tuple[str, ...] = ()


class Chart(Generic[Values], Struct, frozen=True):
    """`draw` is asked only where `enough` says that there is something to show. `example` is what the charts' tests draw."""

    name: str
    question: str
    enough: Callable[[Values], bool]
    draw: Callable[[Values, Localizer], tuple[Panel, ...]]
    title: Callable[[Values, Localizer], str]
    table: Callable[[Values, Localizer], Table]
    example: Values


class Drawn(Struct, frozen=True):
    """A chart as a page shows it: text only, so that it can be kept. `key` tells it apart within its page."""

    name: str
    key: str
    title: str
    svgs: tuple[str, ...]
    table: Table
    note: str | None = None


def drawn(chart: Chart[Any], values: Any, voice: Localizer, key: str | None = None, note: str | None = None) -> Drawn | None:
    """The chart of these values, None where there is too little to show. `key` becomes the start of its ids: letters, digits
    and hyphens, one of its own for each chart of a page."""
    if not chart.enough(values):
        return None
    key = key or chart.name.replace("_", "-")
    drawn_chart: Drawn = voice.remember((chart.name, values, key, note), Drawn, lambda: _made(chart, values, voice, key, note))
    return drawn_chart


def _made(chart: Chart[Any], values: Any, voice: Localizer, key: str, note: str | None) -> Drawn:
    title = chart.title(values, voice)
    panels = enumerate(chart.draw(values, voice), start=1)
    svgs = tuple(_svg(panel, f"{key}-{number}", title) for number, panel in panels)
    return Drawn(chart.name, key, title, svgs, chart.table(values, voice), note)


def _svg(panel: Panel, key: str, title: str) -> str:
    label, links = panel.label or title, bool(panel.links)
    if isinstance(panel.figure, Plot):
        height = short(panel.figure.height)
        frame = Frame(key, label, panel.described, f"0 0 {short(WIDTH)} {height}", links, panel.halo)
        return panel_svg(frame, panel.figure.body())
    text = svg_of(panel.figure)
    release(panel.figure)
    return clean_svg(text, key, label, panel.described, panel.links, panel.halo)
