"""Where all targets lie on the sky: two discs, one around each pole, over the Milky Way and the constellations' figures."""

from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from sitegen.catalogue.constellation import constellation_of
from sitegen.catalogue.sky_lines import milky_way
from sitegen.catalogue.star_field import stars_near
from sitegen.charts.chart import Chart, Localizer, Panel, Table
from sitegen.charts.house_style import THICK, THIN, WIDTH
from sitegen.charts.lettering import Lettering, box_of
from sitegen.charts.library import Axes, Circle, Patch, PathPatch
from sitegen.charts.map_figure import DIM, INK, LINK, MILKY, RULE, WASH, house, map_axes, write
from sitegen.charts.map_marks import draw_constellation_names, draw_figures, draw_stars, near, path_of
from sitegen.charts.projection import SkyMap

REACH_DEG = 102.0  # a little beyond the equator, so that no constellation on it is cut in both discs
DISC = 182.0
HEIGHT = 400.0
FAINTEST = 3.4
LEVELS = 4


class SkyTarget(Struct, frozen=True):
    """`address` is the link as it stands in the page; `total_s` the light gathered on it."""

    name: str
    ra_deg: float
    dec_deg: float
    total_s: float
    address: str


Targets = Sequence[SkyTarget]


@house()
def draw(targets: Targets, voice: Localizer) -> tuple[Panel, ...]:
    """The disc with more targets first."""
    south = sum(target.dec_deg < 0 for target in targets)
    poles = (-90.0, 90.0) if 2 * south >= len(targets) else (90.0, -90.0)
    return tuple(_disc(pole, targets, voice) for pole in poles)


def _disc(pole_deg: float, targets: Targets, voice: Localizer) -> Panel:
    figure, axes = map_axes(HEIGHT, WIDTH / 2)
    sky = SkyMap(0.0, pole_deg, DISC / SkyMap(0.0, 90.0, 1.0).radius(REACH_DEG))
    rim = Circle((0, 0), DISC, facecolor=WASH, edgecolor=RULE, linewidth=THIN)
    axes.add_artist(rim)
    _milky_way(axes, sky, rim)
    _circles(axes, sky)
    draw_figures(axes, sky, REACH_DEG, rim)
    draw_stars(axes, sky, stars_near(0.0, pole_deg, REACH_DEG - 1, FAINTEST), 0.0, FAINTEST)
    lettering = Lettering((-WIDTH / 2 + 2, -HEIGHT / 2, WIDTH / 2 - 2, HEIGHT / 2))
    _hours(axes, sky, lettering, voice)
    shown = [target for target in targets if abs(target.dec_deg - pole_deg) < REACH_DEG]
    _targets(axes, sky, shown, lettering)
    draw_constellation_names(axes, sky, lettering, lambda x, y: np.hypot(x, y) < 0.86 * DISC, 1)
    side = "north" if pole_deg > 0 else "south"
    described = voice.say("sky.desc", names=", ".join(target.name for target in shown) or voice.say("sky.nothing"))
    links = {target.address: target.name for target in shown}
    return Panel(figure, described, voice.say(f"sky.{side}"), links, halo=True)


def _milky_way(axes: Axes, sky: SkyMap, rim: Patch) -> None:
    for level in milky_way()[:LEVELS]:
        path = path_of(sky, near(sky, level.rings, REACH_DEG), closed=True)
        if path is not None:
            band = axes.add_artist(PathPatch(path, facecolor=MILKY, linewidth=0, alpha=0.28))
            band.set_clip_path(rim)


def _circles(axes: Axes, sky: SkyMap) -> None:
    """The equator, and 30 and 60 degrees from it."""
    for distance_deg in (30.0, 60.0, 90.0):
        width = 1.6 if distance_deg == 90.0 else THIN
        axes.add_artist(Circle((0, 0), sky.radius(distance_deg), fill=False, edgecolor=RULE, linewidth=width))


def _hours(axes: Axes, sky: SkyMap, lettering: Lettering, voice: Localizer) -> None:
    """Right ascension around the rim."""
    for hour in range(0, 24, 4):
        x, y = (float(value) for value in sky.place(15.0 * hour, 0.0))
        outside = (DISC + 9) / np.hypot(x, y)
        side = "center" if abs(x) < 1 else "right" if x < 0 else "left"
        text = f"{hour}\u202f{voice.words.say('unit.h')}"
        lettering.taken.append(box_of(x * outside, y * outside, side, text))
        write(axes, x * outside, y * outside, text, DIM, ha=side)


def _targets(axes: Axes, sky: SkyMap, targets: Targets, lettering: Lettering) -> None:
    """A ring for each target, its area as the light gathered, with its name where there is room."""
    most_s = max((target.total_s for target in targets), default=0.0) or 1.0
    placed = []
    for target in targets:
        x, y = (float(value) for value in sky.place(target.ra_deg, target.dec_deg))
        radius = 4.0 + 6.0 * float(np.sqrt(target.total_s / most_s))
        lettering.keep_clear(x, y, radius)
        placed.append((target, x, y, radius))
    for order, (target, x, y, radius) in enumerate(placed):
        ring = Circle((x, y), radius, facecolor=(LINK, 0.2), edgecolor=LINK, linewidth=THICK, zorder=10 + order)
        ring.set_url(target.address)
        axes.add_artist(ring)
        place = lettering.find(x, y, target.name, radius + 4)
        if place:
            write(axes, place[0], place[1], target.name, INK, ha=place[2], url=target.address, zorder=10 + order)


def title(targets: Targets, voice: Localizer) -> str:
    south = sum(target.dec_deg < 0 for target in targets)
    if south in (0, len(targets)):
        return voice.count("sky.all_north" if south == 0 else "sky.all_south", len(targets))
    return voice.say("sky.title", south=south, targets=voice.count("sky.targets", len(targets)))


def table(targets: Targets, voice: Localizer) -> Table:
    heads = tuple(voice.say(f"sky.{name}") for name in ("target", "ra", "dec", "constellation", "hours"))
    numbers = voice.numbers
    rows = tuple(
        (
            target.name,
            f"{numbers.number(target.ra_deg / 15, 1)}\u202f{voice.words.say('unit.h')}",
            f"{numbers.number(target.dec_deg, 1)}°",
            constellation_of(target.ra_deg, target.dec_deg),
            numbers.duration(target.total_s),
        )
        for target in targets
    )
    return Table(heads, rows, tuple(target.address for target in targets))


EXAMPLE = (
    SkyTarget("NGC 253", 11.888, -25.288, 48_000.0, "a/index.html"),
    SkyTarget("NGC 3372", 161.265, -59.867, 90_000.0, "b/index.html"),
    SkyTarget("NGC 6992", 314.079, 31.717, 12_000.0, "c/index.html"),
)

CHART: Chart[Targets] = Chart(
    name="sky_map",
    question="Where on the sky do the targets lie?",
    enough=bool,
    draw=draw,
    title=title,
    table=table,
    example=EXAMPLE,
)
