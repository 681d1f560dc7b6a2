"""Where one target lies: among its constellations, and close by with the camera's field to scale."""

from itertools import pairwise
from math import hypot

import numpy as np

from sitegen.catalogue.constellation import constellation_of
from sitegen.catalogue.star_field import stars_near
from sitegen.charts.chart import Chart, Drawn, Localizer, Panel, Table, drawn
from sitegen.charts.finder_values import CameraField, FinderValues
from sitegen.charts.house_style import LINE, THICK, WIDTH
from sitegen.charts.lettering import Lettering
from sitegen.charts.library import Axes, Circle, Ellipse, Patch, Polygon
from sitegen.charts.map_figure import INK, LINK, RULE, house, map_axes, write
from sitegen.charts.map_marks import draw_compass, draw_constellation_names, draw_figures, draw_scale, draw_stars
from sitegen.charts.projection import Array, SkyMap, from_tangent
from sitegen.number_text import UNKNOWN

HEIGHT = 340.0
WIDE_DEG, CLOSE_AT_LEAST_DEG = 40.0, 1.0
FIELDS_ACROSS, MOSAICS_ACROSS = 2.6, 1.7
ONE_PANEL_FROM_DEG = 20.0
BARS_DEG = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
DASHES = (0, (5, 4))
EDGE_STEPS = 8
NAME_INSIDE = 15.0  # units from a panel's side to the middle of its name
MARK, SMALLEST_FIELD = 7.0, 11.0  # units; a smaller field says nothing at the scale of the wide map


def finder_chart(values: FinderValues, voice: Localizer, key: str) -> Drawn:
    """The finder map of one target. `key` starts its ids in the page."""
    chart = drawn(CHART, values, voice, key, _note(values, voice))
    assert chart is not None  # a place is always enough
    return chart


def _note(values: FinderValues, voice: Localizer) -> str | None:
    fields = values.fields
    simulated = ", ".join(field.label for field in fields if field.is_simulated)
    dashed = any(field.rotation_deg is None for field in fields)
    notes = (
        voice.say("finder.dashed") if dashed else None,
        voice.say("finder.panels_dashed") if any(panel.rotation_deg is None for panel in values.panels) else None,
        voice.say("finder.simulated", trains=simulated) if simulated else None,
    )
    return " ".join(note for note in notes if note) or None


@house()
def draw(values: FinderValues, voice: Localizer) -> tuple[Panel, ...]:
    """Wide first. A field that fills the wide map needs no second one, nor does a target without any field."""
    largest_deg = 2 * values.reach_deg
    wide = _panel(values, voice, max(WIDE_DEG, 1.9 * largest_deg), "wide", 5.0)
    if not 0 < largest_deg < ONE_PANEL_FROM_DEG:
        return (wide,)
    across_deg = max(CLOSE_AT_LEAST_DEG, (MOSAICS_ACROSS if values.panels else FIELDS_ACROSS) * largest_deg)
    return wide, _panel(values, voice, across_deg, "close", _faintest(across_deg))


def _faintest(across_deg: float) -> float:
    """Fainter stars on a smaller map, to the catalogue's end at 10."""
    return float(np.clip(11.5 - 2.2 * np.log2(max(across_deg, 1.0)) / 1.6, 6.0, 10.0))


def _panel(values: FinderValues, voice: Localizer, across_deg: float, kind: str, faintest: float) -> Panel:
    figure, axes = map_axes(HEIGHT, WIDTH / 2)
    sky = SkyMap(values.ra_deg, values.dec_deg, WIDTH / across_deg)
    reach_deg = 0.5 * hypot(WIDTH, HEIGHT) / sky.units_deg
    _frame(axes)
    draw_figures(axes, sky, reach_deg)
    draw_stars(axes, sky, stars_near(values.ra_deg, values.dec_deg, reach_deg, faintest), faintest - 5.0, faintest)
    lettering = Lettering((-WIDTH / 2 + 6, -HEIGHT / 2 + 6, WIDTH / 2 - 6, HEIGHT / 2 - 6))
    _furniture(axes, across_deg, lettering, voice)
    reach = max(_fields(axes, sky, values, lettering, kind == "close"), _panels(axes, sky, values, lettering, kind == "close"))
    _target(axes, values, sky, lettering, reach)
    if kind == "wide":
        draw_constellation_names(axes, sky, lettering, lambda x, y: abs(x) < WIDTH / 2 and abs(y) < HEIGHT / 2, 3)
    across, magnitude = voice.numbers.angle(across_deg), voice.numbers.number(faintest, 0)
    outline = voice.say("finder.ellipse" if values.is_turned else "finder.circle")
    described = voice.say(f"finder.desc_{kind}", across=across, faintest=magnitude, outline=outline)
    return Panel(figure, described, voice.say(f"finder.{kind}", name=values.name), halo=True)


def _frame(axes: Axes) -> None:
    x, y = WIDTH / 2 - 1, HEIGHT / 2 - 1
    axes.add_artist(Polygon([(-x, -y), (x, -y), (x, y), (-x, y)], fill=False, edgecolor=RULE, linewidth=1.4))


def _furniture(axes: Axes, across_deg: float, lettering: Lettering, voice: Localizer) -> None:
    """Scale at the lower left, compass at the lower right; names keep out of both."""
    bar_deg = max(bar for bar in BARS_DEG if bar <= 0.25 * across_deg)
    left, low, right = -WIDTH / 2 + 12, -HEIGHT / 2 + 14, WIDTH / 2 - 14
    length = bar_deg * WIDTH / across_deg
    draw_scale(axes, length, _bar_words(bar_deg, voice), left, low)
    draw_compass(axes, right, low, voice.say("finder.north"), voice.say("finder.east"))
    lettering.taken += [(left, low - 10, left + length + 60, low + 12), (right - 40, low - 10, right + 14, low + 44)]


def _bar_words(bar_deg: float, voice: Localizer) -> str:
    return f"{voice.numbers.number(bar_deg, 0)}°" if bar_deg >= 1 else voice.numbers.angle(bar_deg)


def _fields(axes: Axes, sky: SkyMap, values: FinderValues, lettering: Lettering, close: bool) -> float:
    """Fields that are large enough to be seen; how far from the middle they reach, in units."""
    reach = 0.0
    for field in values.fields:
        radius = sky.radius(field.diagonal_deg / 2)
        if radius < SMALLEST_FIELD:
            continue
        top = _reach(axes, sky, values, field)
        reach = max(reach, top)
        place = lettering.first_free([(0, top + 13, "center"), (0, -top - 13, "center")], field.label) if close else None
        if place:
            write(axes, place[0], place[1], field.label, LINK, ha="center")
    return reach


def _panels(axes: Axes, sky: SkyMap, values: FinderValues, lettering: Lettering, close: bool) -> float:
    """Each where it lies, with its name in it; with north up and dashed where nobody knows how it was turned. How far they reach
    above and below the middle, in units."""
    if not values.panels or sky.radius(values.reach_deg) < SMALLEST_FIELD:
        return 0.0
    reach = 0.0
    for panel in values.panels:
        x, y = sky.place(*outline(values, panel, panel.rotation_deg or 0.0))
        style = {"linewidth": THICK} if panel.rotation_deg is not None else {"linewidth": LINE, "linestyle": DASHES}
        axes.add_artist(Polygon(np.column_stack([x, y]), fill=False, edgecolor=LINK, **style))
        reach = max(reach, float(y.max()), -float(y.min()))
        if close:
            _name_panel(axes, np.column_stack([x, y]), panel.label, lettering)
    return reach


def _name_panel(axes: Axes, edge: Array, name: str, lettering: Lettering) -> None:
    """Inside, however it is turned: by the middle of its upper side, of its lower one, else in its middle."""
    middle = edge.mean(axis=0)
    by_sides = (edge[side * EDGE_STEPS + EDGE_STEPS // 2] - middle for side in (1, 3))
    inside = [middle + way * max(0.0, 1 - NAME_INSIDE / float(np.hypot(*way))) for way in by_sides]
    place = lettering.first_free([(float(x), float(y), "center") for x, y in (*inside, middle)], name)
    if place:
        write(axes, place[0], place[1], name, LINK, ha="center")


def _reach(axes: Axes, sky: SkyMap, values: FinderValues, field: CameraField) -> float:
    if field.rotation_deg is None:
        return _any_turn(axes, sky, field)
    return _box(axes, sky, values, field, field.rotation_deg)


def _box(axes: Axes, sky: SkyMap, values: FinderValues, field: CameraField, rotation_deg: float) -> float:
    """The field's outline; how high it reaches, for the label."""
    x, y = sky.place(*outline(values, field, rotation_deg))
    axes.add_artist(Polygon(np.column_stack([x, y]), fill=False, edgecolor=LINK, linewidth=THICK))
    return float(y.max())


def outline(values: FinderValues, field: CameraField, rotation_deg: float) -> tuple[Array, Array]:
    """ICRS degrees along the field's edge, eight steps a side, from its lower right corner as the camera sees it."""
    corners = np.array([(1, -1), (1, 1), (-1, 1), (-1, -1), (1, -1)]) / 2.0
    steps = np.linspace(0.0, 1.0, EDGE_STEPS, endpoint=False)[:, None]
    sides = np.concatenate([start + steps * (end - start) for start, end in pairwise(corners)])
    # a camera sees east on the left: its right-hand side points west of its up
    left, up = -sides[:, 0] * _span(field.width_deg), sides[:, 1] * _span(field.height_deg)
    sine, cosine = np.sin(np.radians(rotation_deg)), np.cos(np.radians(rotation_deg))
    middle = (values.ra_deg if field.ra_deg is None else field.ra_deg, values.dec_deg if field.dec_deg is None else field.dec_deg)
    return from_tangent(*middle, left * cosine + up * sine, up * cosine - left * sine)


def _span(field_deg: float) -> float:
    """The side of a field on the tangent plane, in degrees of tangent."""
    return float(2.0 * np.degrees(np.tan(np.radians(field_deg) / 2.0)))


def _any_turn(axes: Axes, sky: SkyMap, field: CameraField) -> float:
    """The circle that the camera never leaves however it is turned, and the one that it always covers."""
    for across_deg in (field.diagonal_deg, min(field.width_deg, field.height_deg)):
        axes.add_artist(Circle((0, 0), sky.radius(across_deg / 2), fill=False, edgecolor=LINK, linewidth=LINE, linestyle=DASHES))
    return sky.radius(field.diagonal_deg / 2)


def _target(axes: Axes, values: FinderValues, sky: SkyMap, lettering: Lettering, reach: float) -> None:
    """Its extent where it can be seen at this scale, else a mark around its place; the name clear of it and of the field."""
    size_deg = values.size_arcmin[0] / 60 if values.size_arcmin else 0.0
    radius = max(MARK, sky.radius(size_deg / 2))
    if reach < 2 * MARK or radius > MARK:
        axes.add_artist(_outline(values, sky, radius))
    clear = max(radius, reach)
    place = lettering.first_free(((0, -clear - 13, "center"), (0, clear + 13, "center"), (clear + 5, 0, "left")), values.name)
    if place:
        write(axes, place[0], place[1], values.name, INK, ha=place[2], fontweight="bold")


def _outline(values: FinderValues, sky: SkyMap, radius: float) -> Patch:
    """An ellipse where the direction of the target's longer axis is known and can be seen; else a circle. North is up and east to
    the left, so that a position angle turns counter-clockwise from upright."""
    angle_deg = values.position_angle_deg
    if not values.is_turned or values.size_arcmin is None or angle_deg is None or radius <= MARK:
        return Circle((0, 0), radius, fill=False, edgecolor=INK, linewidth=LINE)
    long, short = (2 * sky.radius(axis / 120) for axis in values.size_arcmin)
    return Ellipse((0, 0), short, long, angle=angle_deg, fill=False, edgecolor=INK, linewidth=LINE)


def title(values: FinderValues, voice: Localizer) -> str:
    constellation = constellation_of(values.ra_deg, values.dec_deg)
    if values.panels:
        return _mosaic_title(values, constellation, voice)
    if not values.fields:
        return voice.say("finder.plain", name=values.name, constellation=constellation)
    field = min(values.fields, key=lambda field: field.diagonal_deg)
    frame = extent(voice, field.width_deg, field.height_deg)
    if values.size_arcmin is None:
        return voice.say("finder.framed", name=values.name, constellation=constellation, field=frame)
    size = extent(voice, values.size_arcmin[0] / 60)
    return voice.say("finder.sized", name=values.name, constellation=constellation, size=size, field=frame)


def _mosaic_title(values: FinderValues, constellation: str, voice: Localizer) -> str:
    panels = voice.count("finder.panels", len(values.panels))
    if values.whole_deg is None:
        return voice.say("finder.mosaic", name=values.name, constellation=constellation, panels=panels)
    field = extent(voice, *values.whole_deg)
    return voice.say("finder.mosaic_field", name=values.name, constellation=constellation, panels=panels, field=field)


def extent(voice: Localizer, *sides_deg: float) -> str:
    """Sides in one unit: '3.5° × 2.3°' from two degrees on, else '50′ × 34′'."""
    if max(sides_deg) >= 2:
        return " × ".join(f"{voice.numbers.number(side, 1)}°" for side in sides_deg)
    return " × ".join(f"{voice.numbers.figures(60 * side, 2)}′" for side in sides_deg)


def table(values: FinderValues, voice: Localizer) -> Table:
    numbers = voice.numbers
    rows = [
        (voice.say("sky.ra"), f"{numbers.number(values.ra_deg / 15, 2)}\u202f{voice.words.say('unit.h')}"),
        (voice.say("sky.dec"), f"{numbers.number(values.dec_deg, 2)}°"),
        (voice.say("sky.constellation"), constellation_of(values.ra_deg, values.dec_deg)),
        (voice.say("finder.size"), _size_words(values, voice)),
        *((field.label, _field_words(field, voice)) for field in values.fields),
        *((voice.say("finder.panel", name=panel.label), _field_words(panel, voice)) for panel in values.panels),
    ]
    return Table((voice.say("finder.what"), values.name), tuple(rows))


def _size_words(values: FinderValues, voice: Localizer) -> str:
    if values.size_arcmin is None:
        return UNKNOWN
    size = extent(voice, *(side / 60 for side in values.size_arcmin))
    if not values.is_turned:
        return size
    return voice.say("finder.size_turned", size=size, angle=voice.numbers.number(values.position_angle_deg, 0))


def _field_words(field: CameraField, voice: Localizer) -> str:
    frame = extent(voice, field.width_deg, field.height_deg)
    if field.rotation_deg is None:
        return voice.say("finder.any_turn", field=frame)
    key = "finder.turned_simulated" if field.is_simulated else "finder.turned"
    return voice.say(key, field=frame, angle=voice.numbers.number(field.rotation_deg % 360, 0))


CHART: Chart[FinderValues] = Chart(
    name="finder_map",
    question="Where does the target lie, and how does the camera's field cover it?",
    enough=lambda values: True,
    draw=draw,
    title=title,
    table=table,
    example=FinderValues("NGC 253", 11.888, -25.288, (27.5, 6.8), (CameraField("long train", 0.9, 0.6, 52.0),), 52.0),
)
