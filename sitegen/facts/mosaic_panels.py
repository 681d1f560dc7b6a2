"""The panels of a mosaic: named by the author, by logs and headers, or found where the frames of one target were pointed."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from math import hypot

from msgspec import Struct

from sitegen.diary.addresses import slug_of
from sitegen.diary.entry import Entry
from sitegen.diary.panel import Panel
from sitegen.diary.rig import Rig, Train
from sitegen.diary.sub import Sub
from sitegen.facts.pointing_clusters import PARTED, TOGETHER, Place, apart_deg, clusters_of, middle_of
from sitegen.facts.train_light import train_light
from sitegen.facts.views import MosaicView, PanelSource, PanelView, SubInSky
from sitegen.sky.optics import effective_focal_length_mm, field_deg

WIDER = 1.5


class _Framed(Struct, frozen=True, eq=False):
    """A light frame; `place` is None where its log does not say where it points."""

    light: SubInSky
    field_deg: tuple[float, float]
    place: Place | None

    @property
    def sub(self) -> Sub:
        return self.light.sub

    @property
    def reach_deg(self) -> float:
        """From the middle to a corner."""
        return hypot(*self.field_deg) / 2


class _Group(Struct):
    """A panel with its frames; `own` is what the author says of it."""

    name: str
    source: PanelSource
    frames: list[_Framed]
    own: Panel | None = None

    @property
    def place(self) -> Place | None:
        if self.own is not None and self.own.ra_deg is not None and self.own.dec_deg is not None:
            return self.own.ra_deg, self.own.dec_deg
        places = [frame.place for frame in self.frames if frame.place is not None]
        return middle_of(places) if places else None


def mosaic_of(
    entry: Entry, lights: Sequence[SubInSky], evenings: Sequence[date], rigs: Mapping[str, Rig]
) -> MosaicView | None:
    """Of the entry's first target; None where its frames show one field."""
    if entry.panels == ():
        return None
    trains = [rigs[light.sub.rig].train_on(evening) for light, evening in zip(lights, evenings, strict=True)]
    fields = {id(train): field_of(train) for train in trains}
    frames = [_Framed(light, fields[id(train)], _place_of(light.sub)) for light, train in zip(lights, trains, strict=True)
              if not light.sub.target]  # fmt: skip
    groups = {slug_of(panel.name): _Group(panel.name, "author", [], panel) for panel in entry.panels or ()}
    left = _by_name(frames, groups, entry.panels is None)
    left = _by_place(left, groups, entry.panels is None)
    if entry.panels is None and _stands_still(entry):
        left = _from_pointings(left, groups)
    if entry.panels is None and (len(groups) < 2 or _is_one_field(groups)):
        return None
    usual = _most_of(frames)
    panels = tuple(_view(group, usual) for group in groups.values())
    return MosaicView(panels, train_light((frame.light.filter_key, frame.sub) for frame in left))


def _is_one_field(groups: Mapping[str, _Group]) -> bool:
    """Names that look like those of panels, of frames that were all pointed at one place."""
    places = [place for group in groups.values() if (place := group.place) is not None]
    shorter_deg = min(min(frame.field_deg) for group in groups.values() for frame in group.frames)
    return len(places) > 1 and all(apart_deg(place, places[0]) < TOGETHER * shorter_deg for place in places)


def _stands_still(entry: Entry) -> bool:
    return bool(entry.targets) and entry.targets[0].ra_deg is not None


def field_of(train: Train) -> tuple[float, float]:
    """Width and height, degrees."""
    telescope, camera = train.telescope, train.camera
    focal_length_mm = effective_focal_length_mm(telescope.focal_length_mm, telescope.factor)
    return (field_deg(camera.width_px, camera.pixel_um, focal_length_mm),
            field_deg(camera.height_px, camera.pixel_um, focal_length_mm))


def _place_of(sub: Sub) -> Place | None:
    """But for the zeros or the pole of a mount that was not asked."""
    origin = sub.origin
    if origin is None or origin.ra_deg is None or origin.dec_deg is None:
        return None
    is_asked = (origin.ra_deg, origin.dec_deg) != (0, 0) and abs(origin.dec_deg) < 90
    return (origin.ra_deg, origin.dec_deg) if is_asked else None


def _by_name(frames: Iterable[_Framed], groups: dict[str, _Group], grows: bool) -> list[_Framed]:
    """Puts each frame whose log names its panel into it; gives back the others. `grows`: a name that nobody told yet is a
    panel, too, in the order of names."""
    left, named = [], dict[str, list[_Framed]]()
    for frame in frames:
        key = slug_of(frame.sub.panel) if frame.sub.panel else ""
        if key in groups or (key and grows):
            named.setdefault(key, []).append(frame)
        else:
            left.append(frame)
    for key in sorted(named, key=_natural):
        names = Counter(frame.sub.panel or "" for frame in named[key])
        group = groups.setdefault(key, _Group(min(names, key=lambda name: (-names[name], name)), "frames", []))
        group.frames += named[key]
    return left


def _natural(name: str) -> list[tuple[int, int, str]]:
    """2 before 10."""
    return [(0, int(part), "") if part.isdigit() else (1, 0, part) for part in re.findall(r"\d+|\D+", name)]


def _by_place(frames: Sequence[_Framed], groups: Mapping[str, _Group], grows: bool) -> list[_Framed]:
    """Into the panel nearest to where a frame points, if that is inside it, and in its middle where more panels may be found;
    gives back the others. A field much wider than the smallest one shows several panels, and is none of them."""
    places = {key: place for key, group in groups.items() if (place := group.place) is not None}
    widest_deg = WIDER * min((frame.reach_deg for frame in frames), default=0.0)
    left: list[_Framed] = []
    nearest: dict[Place, tuple[float, str]] = {}
    for frame in frames:
        if frame.place is None or not places or frame.reach_deg > widest_deg:
            left.append(frame)
            continue
        if frame.place not in nearest:
            nearest[frame.place] = min((apart_deg(frame.place, place), key) for key, place in places.items())
        apart, key = nearest[frame.place]
        reach_deg = PARTED * min(frame.field_deg) if grows else frame.reach_deg
        (groups[key].frames if apart <= reach_deg else left).append(frame)
    return left


def _from_pointings(frames: Sequence[_Framed], groups: dict[str, _Group]) -> list[_Framed]:
    """New panels where frames of one rig cluster at several places; gives back what belongs to none."""
    by_rig: dict[str, list[_Framed]] = {}
    for frame in frames:
        by_rig.setdefault(frame.sub.rig if frame.place is not None else "", []).append(frame)
    left = by_rig.pop("", [])
    for rig, its in sorted(by_rig.items()):
        clusters = clusters_of([frame.place for frame in its if frame.place], min(min(frame.field_deg) for frame in its))
        is_mosaic = len(clusters) > 1 or any(frame.sub.rig == rig for group in groups.values() for frame in group.frames)
        clustered = {number for cluster in clusters for number in cluster} if is_mosaic else set()
        left += (frame for number, frame in enumerate(its) if number not in clustered)
        for cluster in clusters if is_mosaic else ():
            _take_in([its[number] for number in cluster], groups)
    return left


def _take_in(frames: Sequence[_Framed], groups: dict[str, _Group]) -> None:
    """As a panel of its own, or as one that another rig has shot too."""
    middle = middle_of([frame.place for frame in frames if frame.place is not None])
    for group in groups.values():
        place = group.place
        if place is not None and apart_deg(middle, place) < PARTED * min(frames[0].field_deg):
            group.frames += frames
            return
    name = next(str(number) for number in range(1, len(groups) + 2) if str(number) not in groups)
    groups[name] = _Group(name, "pointings", list(frames))


def _view(group: _Group, usual: _Framed | None) -> PanelView:
    """A panel that is still without a frame has the `usual` one's field."""
    own, place, most = group.own, group.place, _most_of(group.frames) or usual
    turn = own.rotation_deg if own is not None else None
    in_order = sorted(group.frames, key=lambda frame: frame.sub.start)
    return PanelView(
        name=group.name,
        source=group.source,
        ra_deg=place[0] if place else None,
        dec_deg=place[1] if place else None,
        rig=most.sub.rig if most else None,
        field_deg=most.field_deg if most else None,
        rotation_deg=turn,
        turned_by=None if turn is None else "author",
        light=train_light((frame.light.filter_key, frame.sub) for frame in in_order),
    )


def _most_of(frames: Iterable[_Framed]) -> _Framed | None:
    """A frame of the rig and field that gathered most."""
    seconds: Counter[tuple[str, tuple[float, float]]] = Counter()
    first: dict[tuple[str, tuple[float, float]], _Framed] = {}
    for frame in frames:
        key = frame.sub.rig, frame.field_deg
        first.setdefault(key, frame)
        seconds[key] += int(frame.sub.exposure_s * 1000) if frame.sub.kept else 1
    return first[max(first, key=lambda key: (seconds[key], key))] if first else None
