"""What can be laid over a solved picture: grid, north and east, the catalogue's objects with outlines and names.

Lines and outlines are in picture pixels, for a drawing that is stretched with the picture; letters stand at shares of its
width and height, so that they keep their size on every screen.
"""

from collections.abc import Iterable, Iterator, Sequence
from math import cos, hypot, radians, sin

from msgspec import Struct
from msgspec.structs import replace

from sitegen.catalogue import lookup
from sitegen.catalogue.sky_object import SkyObject as CatalogueObject
from sitegen.charts.lettering import LETTER, width_of
from sitegen.diary import addresses
from sitegen.diary.target import Target
from sitegen.stars.solving.grid import GridLine, compass, grid_lines, scale_bar_px
from sitegen.stars.solving.placing import PlacedObject, SkyObject, place_objects
from sitegen.stars.solving.solution import Solution

OBJECTS_AT_MOST, ON_A_PHONE = 14, 5
LETTER_PX, LINE_PX = 7.6, 17.0
DESK_PX, PHONE_PX = 1000.0, 360.0
SMALLEST_SHARE = 0.006  # of the diagonal: what is shorter is shown as a ring
LARGEST_SHARE = 1.4
LEFT_OUT = ("star", "double star", "of unknown kind", "duplicate")
SURVEYS = ("PGC", "UGC", "UGCA", "ESO", "MCG", "MWSC", "ACO", "PK", "PN", "SNR")
BARS_ARCMIN = (1, 2, 5, 10, 20, 30, 60, 120, 300, 600)
LONGEST_BAR = 0.25
SURE_SHARE = 0.6
"""Of half the diagonal: what a solution that is unsure of its corners is still good for."""


class Letters(Struct, frozen=True):
    """Words at a share (0..1) of width and height; `anchor` as in SVG: start, middle or end of the line stands there; `dx`
    and `dy` in px. `is_lesser`: left out where there is little room."""

    text: str
    x: float
    y: float
    anchor: str = "start"
    dx: float = 0.0
    dy: float = 0.0
    is_lesser: bool = False


class Ellipse(Struct, frozen=True):
    """Picture pixels; degrees clockwise from the x axis, as SVG's rotate() takes them."""

    x_px: float
    y_px: float
    semi_major_px: float
    semi_minor_px: float
    angle_deg: float


class Marked(Struct, frozen=True):
    """An object: its outline, or its middle where it is too small for one. `slugs` are all its names as target pages spell
    them."""

    letters: Letters
    x: float
    y: float
    outline: Ellipse | None
    slugs: tuple[str, ...]
    is_target: bool


class Overlay(Struct, frozen=True):
    """`grid`: lines as 'x,y x,y …' in picture pixels; `north` and `east` unit vectors, y down; `bar` its length as a share of the
    width, and the arcminutes it stands for."""

    width_px: int
    height_px: int
    grid: tuple[str, ...]
    grid_letters: tuple[Letters, ...]
    objects: tuple[Marked, ...]
    north: tuple[float, float]
    east: tuple[float, float]
    bar: tuple[float, float]


class _Candidate(Struct, frozen=True):
    name: str
    slugs: tuple[str, ...]
    is_target: bool
    placed: PlacedObject


_FieldObject = tuple[str, tuple[str, ...], bool, SkyObject]
"""Name, slugs of all names, whether it is a target of the entry, and where it lies."""


def overlay_of(solution: Solution, targets: Sequence[Target]) -> Overlay:
    """`targets` of the entry: they are always named, as the author calls them."""
    lines = grid_lines(solution)
    turned = compass(solution)
    letters = _thinned(solution, [placed for line in lines if (placed := _grid_letters(line, solution)) is not None])
    return Overlay(
        width_px=solution.width_px,
        height_px=solution.height_px,
        grid=tuple(_points(part) for line in lines for part in line.parts),
        grid_letters=tuple(letters),
        objects=tuple(_named(list(_candidates(solution, targets)), solution, letters)),
        north=_rounded(turned.north),
        east=_rounded(turned.east),
        bar=_bar(solution),
    )


def _rounded(vector: tuple[float, float]) -> tuple[float, float]:
    return round(vector[0], 4) + 0.0, round(vector[1], 4) + 0.0


def _points(part: Iterable[tuple[float, float]]) -> str:
    """Pixel centres to drawing units, whose 0 is the picture's outer edge; every fourth sample is enough for the eye."""
    every = list(part)
    kept = [*every[:-1:4], every[-1]]
    return " ".join(f"{_tenths(x + 0.5)},{_tenths(y + 0.5)}" for x, y in kept)


def _tenths(value: float) -> str:
    """An edge is met at 0 to within a last bit: never at -0.0."""
    return f"{round(value, 1) + 0.0:.1f}"


def _thinned(solution: Solution, letters: list[Letters]) -> list[Letters]:
    """Those that find no room on a phone are marked so."""
    room = _Room(solution, PHONE_PX, ())
    return [replace(label, is_lesser=not room.takes(label)) for label in letters]


def _grid_letters(line: GridLine, solution: Solution) -> Letters | None:
    """Just inside the edge where the line comes in; none in the corners, where two would meet."""
    x, y = (line.label_at[0] + 0.5) / solution.width_px, (line.label_at[1] + 0.5) / solution.height_px
    if line.axis == "ra":
        anchor, dx = ("end", -5.0) if x > 0.9 else ("start", 5.0)
        return Letters(line.label, round(x, 5), round(min(y, 1.0), 5), anchor, dx, -6.0 if y > 0.1 else 16.0)
    if not 0.13 < y < 0.9:
        return None
    anchor, dx = ("end", -6.0) if x > 0.85 else ("start", 6.0)
    return Letters(line.label, round(max(x, 0.0), 5), round(y, 5), anchor, dx, -5.0)


def _bar(solution: Solution) -> tuple[float, float]:
    """The longest round length that takes no more than a quarter of the width."""
    lengths = [(scale_bar_px(solution, arcmin) / solution.width_px, float(arcmin)) for arcmin in BARS_ARCMIN]
    fitting = [(share, arcmin) for share, arcmin in lengths if share <= LONGEST_BAR] or lengths[:1]
    return round(fitting[-1][0], 5), fitting[-1][1]


def _candidates(solution: Solution, targets: Sequence[Target]) -> Iterator[_Candidate]:
    """The entry's targets, then what the catalogue has in the field, the best known first; each once."""
    reach_deg = hypot(*solution.field_deg) / 2
    objects = lookup.objects_near(solution.ra_deg, solution.dec_deg, reach_deg)
    seen: set[str] = set()
    for name, slugs, is_target, where in (*_targets(targets, objects), *_catalogued(objects)):
        placed = place_objects(solution, [where])
        if placed and _can_be_named(placed[0], solution) and not seen & set(slugs):
            seen |= set(slugs)
            if is_target or _is_worth(placed[0], solution):
                yield _Candidate(name, slugs, is_target, placed[0])


def _can_be_named(placed: PlacedObject, solution: Solution) -> bool:
    """In the frame; in its corners only where the solution vouches for them."""
    if not placed.inside or solution.is_sure_of_corners:
        return placed.inside
    middle = solution.centre_px
    return hypot(placed.x_px - middle[0], placed.y_px - middle[1]) <= SURE_SHARE * _diagonal_px(solution) / 2


def _targets(targets: Sequence[Target], objects: Sequence[CatalogueObject]) -> Iterator[_FieldObject]:
    """Outlines with the catalogue's own direction where it knows the target, and with the author's size."""
    for target in targets:
        if target.ra_deg is None or target.dec_deg is None:
            continue
        slugs = tuple(dict.fromkeys((target.slug, *_slugs((target.name, *target.aliases)))))
        same = next((listed for listed in objects if set(_slugs((listed.name, *listed.aliases))) & set(slugs)), None)
        major, minor = target.size_arcmin or (None, None)
        angle = same.position_angle_deg if same else None
        yield target.name, slugs, True, SkyObject(target.name, target.ra_deg, target.dec_deg, major, minor, angle)


def _catalogued(objects: Sequence[CatalogueObject]) -> Iterator[_FieldObject]:
    for listed in objects:
        if listed.kind not in LEFT_OUT and listed.name.split(" ")[0] not in SURVEYS:
            major, minor = listed.size_arcmin or (None, None)
            placed = SkyObject(listed.name, listed.ra_deg, listed.dec_deg, major, minor, listed.position_angle_deg)
            yield listed.name, _slugs((listed.name, *listed.aliases)), False, placed


def _slugs(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(addresses.slug_of(name) for name in names))


def _is_worth(placed: PlacedObject, solution: Solution) -> bool:
    """Neither lost in the field nor larger than all of it."""
    return placed.semi_minor_px is None or placed.semi_minor_px < LARGEST_SHARE * _diagonal_px(solution) / 2


def _diagonal_px(solution: Solution) -> float:
    return hypot(solution.width_px, solution.height_px)


def _named(candidates: Sequence[_Candidate], solution: Solution, grid: Sequence[Letters]) -> Iterator[Marked]:
    """Those whose names find room, first come first served; on a phone there is less of it."""
    room = _Room(solution, DESK_PX, grid)
    small_room = _Room(solution, PHONE_PX, [label for label in grid if not label.is_lesser])
    shown = on_phone = 0
    for candidate in candidates:
        marked = _marked(candidate, solution)
        if shown == OBJECTS_AT_MOST or not (room.takes(marked.letters) or candidate.is_target):
            continue
        fits = candidate.is_target or (on_phone < ON_A_PHONE and small_room.takes(marked.letters))
        shown, on_phone = shown + 1, on_phone + fits
        yield replace(marked, letters=replace(marked.letters, is_lesser=not fits))


def _marked(candidate: _Candidate, solution: Solution) -> Marked:
    placed = candidate.placed
    x, y = (placed.x_px + 0.5) / solution.width_px, (placed.y_px + 0.5) / solution.height_px
    outline = _ellipse(placed, solution)
    letters = _letters(candidate.name, x, y, outline, solution)
    return Marked(letters, round(x, 5), round(y, 5), outline, candidate.slugs, candidate.is_target)


def _ellipse(placed: PlacedObject, solution: Solution) -> Ellipse | None:
    major, minor = placed.semi_major_px, placed.semi_minor_px
    if major is None or minor is None or 2 * major < SMALLEST_SHARE * _diagonal_px(solution):
        return None
    if minor > LARGEST_SHARE * _diagonal_px(solution) / 2:
        return None
    return Ellipse(*(round(value, 1) + 0.0 for value in (placed.x_px + 0.5, placed.y_px + 0.5, major, minor, placed.angle_deg)))


def _letters(name: str, x: float, y: float, outline: Ellipse | None, solution: Solution) -> Letters:
    """Over the outline's upper end, under it where that is outside, in its middle where both are; beside a ring."""
    if outline is None:
        near_edge = x > 0.85
        return Letters(name, round(x, 5), round(y, 5), "end" if near_edge else "start", -10.0 if near_edge else 10.0, 4.0)
    right_px, down_px = _lowest_point(outline)
    right, down = right_px / solution.width_px, down_px / solution.height_px
    for at, edge, dy in ((x - right, y - down, -6.0), (x + right, y + down, 15.0)):
        if 0.06 < edge < 0.93 and 0.02 < at < 0.98:
            return Letters(name, round(at, 5), round(edge, 5), _anchor(at), 0.0, dy)
    return Letters(name, round(x, 5), round(y, 5), _anchor(x), 0.0, 4.0)


def _anchor(x: float) -> str:
    return "start" if x < 0.08 else "end" if x > 0.92 else "middle"


def _lowest_point(outline: Ellipse) -> tuple[float, float]:
    """From the middle, pixels; the uppermost one lies opposite."""
    turn, major, minor = radians(outline.angle_deg), outline.semi_major_px, outline.semi_minor_px
    down = hypot(major * sin(turn), minor * cos(turn))
    return (major**2 - minor**2) * sin(turn) * cos(turn) / down, down


class _Room:
    """Where letters stand already, on a picture shown at some width."""

    def __init__(self, solution: Solution, width_px: float, grid: Sequence[Letters]) -> None:
        self.width, self.height = width_px, width_px * solution.height_px / solution.width_px
        self.boxes = [self._box(letters) for letters in grid]
        self.boxes.append((self.width - 90, 0.0, self.width, 90.0))  # the compass

    def takes(self, letters: Letters) -> bool:
        """Whether the letters find room, and if so takes it."""
        box = self._box(letters)
        inside = box[0] >= 0 and box[2] <= self.width and box[1] >= 0 and box[3] <= self.height
        if not inside or any(_meet(box, other) for other in self.boxes):
            return False
        self.boxes.append(box)
        return True

    def _box(self, letters: Letters) -> tuple[float, float, float, float]:
        length = LETTER_PX * width_of(letters.text) / LETTER
        left = letters.x * self.width + letters.dx - {"start": 0.0, "middle": length / 2, "end": length}[letters.anchor]
        base = letters.y * self.height + letters.dy
        return left, base - LINE_PX + 4, left + length, base + 4


def _meet(box: tuple[float, float, float, float], other: tuple[float, float, float, float]) -> bool:
    return box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3]
