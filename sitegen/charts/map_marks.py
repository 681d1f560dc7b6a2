"""What maps of the sky have in common: constellation figures, their names, stars by magnitude, the compass and the scale."""

from collections.abc import Callable
from functools import cache
from itertools import accumulate

import numpy as np
from msgspec import Struct

from sitegen.catalogue.sky_lines import Line, constellation_figures
from sitegen.catalogue.star_field import StarField
from sitegen.charts.house_style import LINE, THIN
from sitegen.charts.lettering import Lettering
from sitegen.charts.library import Axes, Patch, Path, PathPatch
from sitegen.charts.map_figure import DIM, INK, STAR, dots, write
from sitegen.charts.projection import Array, SkyMap

Fits = Callable[[float, float], bool]

STAR_CLASSES = 6
LARGEST_STAR, SMALLEST_STAR = 7.5, 1.5


def path_of(sky: SkyMap, lines: list[Line], closed: bool = False) -> Path | None:
    """Several lines of the sky as one path, None where there are none."""
    if not lines:
        return None
    vertices, codes = [], []
    for line in lines:
        ra, dec = np.array(line).T
        vertices.append(np.column_stack(sky.place(ra, dec)))
        codes += [Path.MOVETO, *[Path.LINETO] * (len(line) - 1)]
        if closed:
            vertices.append(vertices[-1][:1])
            codes.append(Path.CLOSEPOLY)
    return Path(np.concatenate(vertices), codes)


def near(sky: SkyMap, lines: tuple[Line, ...], reach_deg: float) -> list[Line]:
    """Those lines that come within the reach of the map's centre."""
    return [line for line in lines if sky.distance_deg(*np.array(line).T).min() <= reach_deg]


class _FigureLines(Struct, frozen=True):
    """The lines of all constellations end to end, and where each of them starts."""

    lines: tuple[Line, ...]
    ra_deg: Array
    dec_deg: Array
    starts: tuple[int, ...]


@cache
def _figure_lines() -> _FigureLines:
    lines = tuple(line for figure in constellation_figures() for line in figure.lines)
    ra, dec = np.array([point for line in lines for point in line]).T
    return _FigureLines(lines, ra, dec, (0, *accumulate(len(line) for line in lines[:-1])))


def draw_figures(axes: Axes, sky: SkyMap, reach_deg: float, clip: Patch | None = None) -> None:
    """Those lines that come within the reach of the map's centre."""
    figures = _figure_lines()
    nearest = np.minimum.reduceat(sky.distance_deg(figures.ra_deg, figures.dec_deg), figures.starts)
    path = path_of(sky, [line for line, distance in zip(figures.lines, nearest, strict=True) if distance <= reach_deg])
    if path is not None:
        axes.add_artist(_clipped(PathPatch(path, fill=False, edgecolor=DIM, linewidth=THIN, alpha=0.55), clip))


def _clipped(patch: PathPatch, clip: Patch | None) -> PathPatch:
    if clip is not None:
        patch.set_clip_path(clip)
    return patch


def draw_stars(axes: Axes, sky: SkyMap, stars: StarField, brightest: float, faintest: float) -> None:
    """Six sizes from the brightest to the faintest magnitude; brighter stars are drawn as the brightest."""
    steps = np.clip((stars.magnitude - brightest) / (faintest - brightest) * STAR_CLASSES, 0, STAR_CLASSES - 1).astype(int)
    x, y = sky.place(stars.ra_deg, stars.dec_deg)
    for step in range(STAR_CLASSES):
        size = LARGEST_STAR + (SMALLEST_STAR - LARGEST_STAR) * step / (STAR_CLASSES - 1)
        chosen = steps == step
        dots(axes, x[chosen], y[chosen], size, STAR)


def draw_constellation_names(axes: Axes, sky: SkyMap, lettering: Lettering, fits: Fits, least: int) -> None:
    """Names where the catalogue wants them and there is room; `least` the least prominent class still named."""
    figures = [figure for figure in constellation_figures() if figure.prominence <= least]
    for figure in sorted(figures, key=lambda figure: (figure.prominence, figure.abbreviation)):
        x, y = (float(value) for value in sky.place(*figure.labels[0]))
        places = [(x, y + shift, "center") for shift in (0, -16, 16)] if fits(x, y) else []
        place = lettering.first_free(places, figure.name)
        if place:
            write(axes, place[0], place[1], figure.name, DIM, ha="center", fontstyle="italic")


def draw_scale(axes: Axes, length: float, text: str, x: float, y: float) -> None:
    """A bar of that length in units with its angle written after it."""
    axes.plot([x, x, x + length, x + length], [y + 4, y, y, y + 4], color=INK, linewidth=LINE, solid_capstyle="butt")
    write(axes, x + length + 7, y + 2, text, INK, ha="left")


def draw_compass(axes: Axes, x: float, y: float, north: str, east: str) -> None:
    """North up, east to the left."""
    axes.plot([x - 22, x, x], [y, y, y + 22], color=INK, linewidth=LINE)
    write(axes, x, y + 31, north, INK, ha="center")
    write(axes, x - 32, y, east, INK, ha="center")
