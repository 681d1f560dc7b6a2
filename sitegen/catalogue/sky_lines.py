"""What is drawn on a map of the whole sky: the figures and names of the constellations, and the Milky Way."""

from functools import cache

from msgspec import Struct

from sitegen.catalogue.tables import constellations, drawing

Line = tuple[tuple[float, float], ...]  # (ra_deg 0..360, dec_deg); a step over 0 h jumps between 360 and 0


class Figure(Struct, frozen=True):
    """One constellation as it is drawn. Serpens has two labels, Caput first."""

    abbreviation: str  # IAU, 'UMa'
    name: str  # Latin
    labels: Line  # good places for the name
    prominence: int  # 1 the most prominent, 3 the least
    lines: tuple[Line, ...]


class MilkyWayLevel(Struct, frozen=True):
    """One step of brightness of the Milky Way: closed rings, to be filled by the even-odd rule.

    The rings are simplified to a quarter of a degree.
    """

    brightness: int  # 1 the faintest and widest, 5 the brightest
    rings: tuple[Line, ...]


@cache
def constellation_figures() -> tuple[Figure, ...]:
    """The 88 constellations by abbreviation."""
    lines = {short: tuple(_line(points) for points in drawn) for short, drawn in drawing("figures").items()}
    labels: dict[str, list[tuple[float, float]]] = {}
    for short, _, _, ra_deg, dec_deg, _ in constellations():
        labels.setdefault(short, []).append((ra_deg, dec_deg))
    shown = {row[0]: row for row in constellations()}
    return tuple(Figure(short, shown[short][1], tuple(labels[short]), shown[short][5], lines[short]) for short in sorted(shown))


@cache
def milky_way() -> tuple[MilkyWayLevel, ...]:
    """Five levels, the faintest first."""
    levels = drawing("milky_way")
    return tuple(MilkyWayLevel(step, tuple(_line(ring) for ring in rings)) for step, rings in enumerate(levels, start=1))


def _line(points: list[list[float]]) -> Line:
    return tuple((ra_deg, dec_deg) for ra_deg, dec_deg in points)
