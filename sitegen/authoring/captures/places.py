"""Where frames point, and which of them belong to a target: mosaics grow from panel to panel, other fields stay apart."""

import math
import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from difflib import SequenceMatcher
from functools import lru_cache
from statistics import median

from msgspec import Struct

from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.catalogue.lookup import find_object
from sitegen.catalogue.sky_object import SkyObject
from sitegen.diary.rig import Rig
from sitegen.reading.capture_logs.standing_train import train_at

UNKNOWN_FIELD_DEG = 2.0
ALIKE = 0.85
_MOVING = re.compile(r"^(?:comet|komet|minor planet|asteroid|kleinplanet)\b|^(?:\d+p|[cpa])/|"
                     r"^(?:moon|mond|sun|sonne|mercury|merkur|venus|mars|jupiter|saturn|uranus|neptun|"
                     r"neptune|pluto)$", re.I)  # fmt: skip
_PLACE = re.compile(r"(\d{1,3}(?:\.\d+)?) ([+-]?\d{1,2}(?:\.\d+)?)")
Place = tuple[float, float]


class Target(Struct, frozen=True):
    """What a log shows. The place is None for what moves or no catalogue knows; `size_deg` is its longer axis."""

    name: str
    place: Place | None = None
    size_deg: float = 0.0


class TargetSorting(Struct, frozen=True):
    """`others`: by the number of a frame, the name of what it shows instead. `placeless` frames tell neither pointing nor a known
    object, and belong. `target` is None where nothing names one."""

    others: Mapping[int, str]
    placeless: int
    target: Target | None


@lru_cache(maxsize=4_000)
def catalogued(name: str) -> SkyObject | None:
    return find_object(name) if name else None


def target_called(name: str) -> Target:
    """By the catalogue's name, else a name of its own, else a place: right ascension and declination in degrees."""
    if place := _PLACE.fullmatch(name.strip()):
        return Target(name, (float(place.group(1)), float(place.group(2))))
    sky_object = catalogued(name)
    if sky_object is None:
        return Target(name)
    size_arcmin = sky_object.size_arcmin[0] if sky_object.size_arcmin else 0.0
    return Target(sky_object.name, (sky_object.ra_deg, sky_object.dec_deg), size_arcmin / 60)


def place_of(record: FrameRecord) -> Place | None:
    """The pointing, else where the catalogue has the object."""
    if record.ra_deg is not None and record.dec_deg is not None:
        return record.ra_deg, record.dec_deg
    sky_object = catalogued(record.object)
    return (sky_object.ra_deg, sky_object.dec_deg) if sky_object is not None else None


def field_deg(frames: Sequence[Frame], rig: Rig | None) -> float:
    """The diagonal of the field, by the headers, else by the rig, else 2°."""
    diagonals_deg = [diagonal for frame in frames if (diagonal := _diagonal_deg(frame.record)) is not None]
    if diagonals_deg:
        return median(diagonals_deg)
    if rig is not None and frames:
        train = train_at(rig, None, frames[0].start)
        across_mm = math.hypot(train.camera.width_px, train.camera.height_px) * train.camera.pixel_um / 1000
        return _angle_deg(across_mm, train.telescope.focal_length_mm * train.telescope.factor)
    return UNKNOWN_FIELD_DEG


def _diagonal_deg(record: FrameRecord) -> float | None:
    if not (record.focal_length_mm and record.pixel_um and record.width_px and record.height_px):
        return None
    return _angle_deg(math.hypot(record.width_px, record.height_px) * record.pixel_um / 1000, record.focal_length_mm)


def _angle_deg(across_mm: float, focal_length_mm: float) -> float:
    return math.degrees(2 * math.atan(across_mm / 2 / focal_length_mm))


def sort_targets(
    frames: Sequence[Frame], wanted: Sequence[Target], taken_in: Iterable[Frame], reach_deg: float
) -> TargetSorting:
    """Which light frames show something else than `wanted`; without it, than what most frames show, `taken_in` ones before all.

    `taken_in` are the frames that the log has already, from which a mosaic grows on.
    """
    taken = [frame.record for frame in taken_in]
    records = [frame.record for frame in frames]
    targets = tuple(wanted) or _of_most(taken, reach_deg) or _of_most(records, reach_deg)
    if not targets:
        return TargetSorting({}, sum(place_of(record) is None for record in records), None)
    belonging = _Belonging(targets, reach_deg)
    belonging.grow(place for record in (*taken, *records) if (place := place_of(record)) is not None)
    others = _shown_instead({number: record for number, record in enumerate(records) if not belonging.has(record)}, reach_deg)
    placeless = sum(place_of(record) is None and number not in others for number, record in enumerate(records))
    return TargetSorting(others, placeless, targets[0])


def _of_most(records: Sequence[FrameRecord], reach_deg: float) -> tuple[Target, ...]:
    """The field, or the name of something without a place, that most frames show."""
    counted: Counter[object] = Counter()
    cells = Cells(reach_deg)
    for record in records:
        place = place_of(record)
        if is_moving_name(record.object):
            counted[alike_name(record.object)] += 1
        elif place is not None:
            counted[cells.rounded(place)] += 1
        elif record.object:
            counted[alike_name(record.object)] += 1
    fields = cells.fields([key for key in counted if isinstance(key, tuple)])
    groups: dict[object, int] = {}
    for key, count in counted.items():
        group = fields.get(key, key)
        groups[group] = groups.get(group, 0) + count
    if not groups:
        return ()
    most = max(groups, key=lambda group: (groups[group], str(group)))
    return (_named(most, fields, records, cells),)


def _named(most: object, fields: Mapping[object, object], records: Sequence[FrameRecord], cells: "Cells") -> Target:
    """By the name that most of its frames have."""
    if isinstance(most, str):
        names = Counter(record.object for record in records if alike_name(record.object) == most)
        return Target(min(names, key=lambda name: (-names[name], name)))
    inside = [record for record in records
              if (place := place_of(record)) is not None and not is_moving_name(record.object)
              and fields[cells.rounded(place)] == most]  # fmt: skip
    names = Counter(record.object for record in inside if record.object)
    name = min(names, key=lambda name: (-names[name], name)) if names else ""
    places = Counter(place for record in inside if (place := place_of(record)) is not None)
    sky_object = catalogued(name)
    place = min(places, key=lambda place: (-places[place], place))
    return Target(sky_object.name if sky_object else name or "a field without a name", place)


class _Belonging:
    """What belongs to targets: fields that hang together with them, and names like theirs where they have no place."""

    def __init__(self, targets: Sequence[Target], reach_deg: float) -> None:
        self.targets, self.cells = targets, Cells(reach_deg)
        self.names = [alike_name(target.name) for target in targets if target.place is None]
        self.inside: set[tuple[int, int, int]] = set()

    def grow(self, places: Iterable[Place]) -> None:
        rounded = sorted({self.cells.rounded(place) for place in places})
        waiting = [place for place in rounded if any(self._near(target, place) for target in self.targets)]
        self.inside = self.cells.reached(waiting, rounded)

    def has(self, record: FrameRecord) -> bool:
        place = place_of(record)
        if self.names and record.object and any(names_are_alike(name, alike_name(record.object)) for name in self.names):
            return True
        if place is None:
            return not (record.object and self.names and len(self.names) == len(self.targets))
        return self.cells.rounded(place) in self.inside

    def _near(self, target: Target, place: tuple[int, int, int]) -> bool:
        """The field reaches the target: within its diagonal, or somewhere on a large one."""
        if target.place is None:
            return False
        reach = self.cells.reach + _chord(target.size_deg / 2)
        return math.dist(_direction(target.place), self.cells.direction(place)) <= reach


class Cells:
    """Places in steps of a twentieth of the reach, so that many frames are few places, and neighbours are looked up."""

    def __init__(self, reach_deg: float) -> None:
        self.reach = _chord(min(reach_deg, 90.0))
        self.step = self.reach / 20
        self.known: dict[Place, tuple[int, int, int]] = {}

    def rounded(self, place: Place) -> tuple[int, int, int]:
        rounded = self.known.get(place)
        if rounded is None:
            rounded = self.known[place] = self._rounded(place)
        return rounded

    def _rounded(self, place: Place) -> tuple[int, int, int]:
        x, y, z = _direction((round(place[0], 3), round(place[1], 3)))  # dithered subs are then few places
        return round(x / self.step), round(y / self.step), round(z / self.step)

    def direction(self, rounded: tuple[int, int, int]) -> tuple[float, float, float]:
        return rounded[0] * self.step, rounded[1] * self.step, rounded[2] * self.step

    def reached(self, seeds: Iterable[tuple[int, int, int]], places: Iterable[tuple[int, int, int]]) -> set[tuple[int, int, int]]:
        """All places that hang together with the seeds, no gap wider than the reach."""
        boxes: dict[tuple[int, ...], list[tuple[int, int, int]]] = {}
        for place in places:
            boxes.setdefault(_box(place), []).append(place)
        inside = set(seeds)
        waiting = list(inside)
        while waiting:
            place = waiting.pop()
            for box in _boxes_around(place):
                near = [other for other in boxes.get(box, ()) if math.dist(place, other) <= 20]
                boxes[box] = [other for other in boxes.get(box, ()) if other not in near]
                waiting += (other for other in near if other not in inside)
                inside.update(near)
        return inside

    def fields(self, places: Iterable[tuple[int, int, int]]) -> dict[object, object]:
        """By place, the first place of the field that it belongs to."""
        left = set(places)
        fields: dict[object, object] = {}
        for first in sorted(left):
            if first in fields:
                continue
            for place in self.reached([first], left):
                fields[place] = first
            left = {place for place in left if place not in fields}
        return fields


def _box(place: tuple[int, int, int]) -> tuple[int, ...]:
    return tuple(part // 20 for part in place)


def _boxes_around(place: tuple[int, int, int]) -> Iterable[tuple[int, ...]]:
    x, y, z = _box(place)
    return ((x + i, y + j, z + k) for i in (-1, 0, 1) for j in (-1, 0, 1) for k in (-1, 0, 1))


@lru_cache(maxsize=16_384)
def _direction(place: Place) -> tuple[float, float, float]:
    ra, dec = map(math.radians, place)
    return math.cos(dec) * math.cos(ra), math.cos(dec) * math.sin(ra), math.sin(dec)


def _chord(angle_deg: float) -> float:
    return 2 * math.sin(math.radians(angle_deg) / 2)


def _shown_instead(records: Mapping[int, FrameRecord], reach_deg: float) -> dict[int, str]:
    """The name that fits the pointing, of this frame or of most in its field; else where the field lies.

    A name left over from the target before is not believed: the command that it would make gathers nothing.
    """
    cells = Cells(reach_deg)
    places = {number: place for number, record in records.items() if (place := place_of(record)) is not None}
    first_in = {cells.rounded(place): place for place in sorted(places.values(), reverse=True)}
    fields = cells.fields(first_in)
    names: dict[object, Counter[str]] = {}
    for number, place in places.items():
        if name := _fitting_name(records[number], place, reach_deg):
            names.setdefault(fields[cells.rounded(place)], Counter())[name] += 1
    shown = {}
    for number, record in records.items():
        if number not in places:
            shown[number] = record.object
            continue
        field = fields[cells.rounded(places[number])]
        first = first_in[field]  # type: ignore[index]
        nearest = f"{first[0]:.1f} {first[1]:.1f}"
        own = _fitting_name(record, places[number], reach_deg)
        shown[number] = own or (min(names[field], key=lambda name: (-names[field][name], name)) if field in names else nearest)
    return shown


def _fitting_name(record: FrameRecord, place: Place, reach_deg: float) -> str:
    """The catalogue's name where its place is in the field, a name of the author's own; '' for a name that points elsewhere."""
    sky_object = catalogued(record.object)
    if sky_object is None:
        return record.object
    apart = math.dist(_direction(place), _direction((sky_object.ra_deg, sky_object.dec_deg)))
    size_deg = (sky_object.size_arcmin[0] if sky_object.size_arcmin else 0.0) / 60
    return sky_object.name if apart <= _chord(reach_deg) + _chord(size_deg / 2) else ""


def is_moving_name(name: str) -> bool:
    return _MOVING.search(name.strip()) is not None


def alike_name(name: str) -> str:
    """Without what people spell one way today and another tomorrow."""
    return re.sub(r"[\W_]+", "", name.casefold())


def names_are_alike(name: str, other: str) -> bool:
    if name == other or (min(len(name), len(other)) >= 4 and (name in other or other in name)):
        return True
    digits = re.findall(r"\d+", name), re.findall(r"\d+", other)
    return digits[0] == digits[1] and SequenceMatcher(None, name, other).ratio() >= ALIKE
