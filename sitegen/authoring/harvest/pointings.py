"""What each light frame of one rig shows: OBJECT before all, then the pointing, then folders and names; None where none tells."""

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from statistics import median

from msgspec import Struct

from sitegen.authoring.captures.places import (
    Cells,
    Place,
    alike_name,
    catalogued,
    field_deg,
    is_moving_name,
    names_are_alike,
    place_of,
)
from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.authoring.panel_names import without_panel
from sitegen.authoring.target_fit import NEAR_DEG, TargetFit, moving_fit
from sitegen.catalogue.lookup import objects_near, separation_deg
from sitegen.catalogue.sky_object import SkyObject

_CATALOGUE_NUMBER = re.compile(r"(?<![a-z0-9])(?:(?:ngc|ic|messier|sh ?2|ldn|lbn|vdb|abell)[ _-]?|m ?)\d+(?![0-9])", re.I)
_OF_THE_TRADE = frozenset({
    "frame", "frames", "field", "fields", "image", "images", "light", "lights", "session", "target", "object", "night", "nights",
    "mirror", "telescope", "camera",
})  # fmt: skip
PANELS = 3
"""A mosaic reaches so many fields from what it is called after."""


class Shown(Struct, frozen=True):
    """`name` is the catalogue's where `kind` is 'catalogue', else what headers call it; `field` tells fields of one name apart.
    `by` says what it was guessed from, where no header says it."""

    kind: str
    name: str
    field: object = None
    by: str = ""


CATALOGUE, MOVING, OWN, FIELD, NAMED = "catalogue", "moving", "own", "field", "named by its author"


def shown_by(frames: Sequence[Frame]) -> list[Shown | None]:
    """In the order of the frames."""
    pointings = _Pointings(frames)
    shown = [pointings.by_header(frame.record) for frame in frames]
    pointings.learn(frames, shown)
    shown = [pointings.by_field(frame.record) if what is None else pointings.joined(what) for frame, what in
             zip(frames, shown, strict=True)]  # fmt: skip
    shown = [_by_path(frame) if what is None else what for frame, what in zip(frames, shown, strict=True)]
    beside = _beside(frames, shown)
    return [beside.get(_directory(frame)) if what is None else what for frame, what in zip(frames, shown, strict=True)]


class _Pointings:
    def __init__(self, frames: Sequence[Frame]) -> None:
        self.reach_deg = field_deg(frames, None)
        self.cells = Cells(self.reach_deg)
        places = {place for frame in frames if (place := _pointing(frame.record)) is not None}
        self.fields = self.cells.fields({self.cells.rounded(place) for place in places})
        self.fitting: dict[tuple[str, object], Shown | None] = {}
        self.names: dict[object, Counter[Shown]] = {}
        self.own: dict[str, set[Shown]] = {}

    def field(self, record: FrameRecord) -> object:
        """None for a frame that does not tell where it points."""
        place = _pointing(record)
        return None if place is None else self.fields[self.cells.rounded(place)]

    def by_header(self, record: FrameRecord) -> Shown | None:
        """Worked out once for each name and step of pointing: thousands of frames say the same."""
        if not record.object:
            return None
        place = _pointing(record)
        key = record.object, None if place is None else self.cells.rounded(place)
        if key not in self.fitting:
            self.fitting[key] = self._by_header(record)
        return self.fitting[key]

    def _by_header(self, record: FrameRecord) -> Shown | None:
        name = record.object
        if is_moving_name(name):
            return Shown(MOVING, alike_name(name))
        sky_object = _object_called(name)
        if sky_object is None:
            return Shown(OWN, alike_name(without_panel(name)), self.field(record))
        return Shown(CATALOGUE, sky_object.name) if self._fits(sky_object, record) else None

    def _fits(self, sky_object: SkyObject, record: FrameRecord) -> bool:
        """Whether the frame points at what it is called after; the panel of a mosaic may lie some fields off."""
        place = _pointing(record)
        if place is None:
            return True
        size_deg = (sky_object.size_arcmin[0] if sky_object.size_arcmin else 0.0) / 60
        fields = PANELS if catalogued(record.object) is None else 1
        return separation_deg(*place, sky_object.ra_deg, sky_object.dec_deg) <= fields * self.reach_deg + size_deg / 2

    def learn(self, frames: Iterable[Frame], shown: Iterable[Shown | None]) -> None:
        fields = ((what, self.field(frame.record)) for frame, what in zip(frames, shown, strict=True) if what is not None)
        for (what, field), count in Counter(fields).items():
            if field is not None:
                self.names.setdefault(field, Counter())[what] += count
            if what.kind == OWN:
                self.own.setdefault(what.name, set()).add(what)

    def joined(self, what: Shown) -> Shown:
        """A name of the author's own that is another spelling of the catalogue's in its field; one without a pointing joins the
        only field of its name."""
        if what.kind != OWN:
            return what
        if what.field is None:
            placed = [other for other in self.own[what.name] if other.field is not None]
            return placed[0] if len(placed) == 1 else what
        near = [other for other in self.names[what.field] if other.kind == CATALOGUE]
        alike = [other for other in near if names_are_alike(what.name, alike_name(other.name))]
        return alike[0] if len(alike) == 1 else what

    def by_field(self, record: FrameRecord) -> Shown | None:
        """What most frames of the same field show, else the best known object in its middle."""
        place = _pointing(record)
        if place is None:
            return None
        field = self.field(record)
        if field in self.names:
            names = self.names[field]
            most = min(names, key=lambda what: (-names[what], what.kind, what.name))
            return self.joined(most)
        near = next(iter(objects_near(*_rounded(place), NEAR_DEG)), None)
        if near is not None:
            return Shown(CATALOGUE, near.name, by="the pointing; the headers name nothing that lies there")
        return Shown(FIELD, "", field, by="the pointing; the headers name nothing")


def _pointing(record: FrameRecord) -> Place | None:
    return place_of(record) if record.ra_deg is not None else None


@lru_cache(maxsize=4_096)
def _rounded(place: Place) -> Place:
    return round(place[0], 2), round(place[1], 2)


@lru_cache(maxsize=4_096)
def _object_called(name: str) -> SkyObject | None:
    return catalogued(name) or catalogued(without_panel(name))


def _directory(frame: Frame) -> str:
    return frame.file.directory if frame.file is not None else ""


def _by_path(frame: Frame) -> Shown | None:
    if frame.file is None:
        return None
    folders, _, name = frame.file.with_folder.rpartition("/")
    sky_object = _by_folders(folders) or _by_number(name)
    return Shown(CATALOGUE, sky_object.name, by="its folder's or its file's name") if sky_object is not None else None


@lru_cache(maxsize=4_096)
def _by_folders(folders: str) -> SkyObject | None:
    """The deepest folder that bears the name of something."""
    parts = reversed(folders.split("/"))
    return next((sky_object for part in parts if (sky_object := _by_number(part) or _by_name(part)) is not None), None)


def _by_number(part: str) -> SkyObject | None:
    """A number of a catalogue, somewhere in it."""
    number = _CATALOGUE_NUMBER.search(part)
    return catalogued(number.group()) if number is not None else None


def _by_name(folder: str) -> SkyObject | None:
    """A name of five letters or more, that is no word of the trade: a galaxy is called the Frame."""
    words = re.sub(r"[\W_\d]+", " ", folder).strip()
    return catalogued(words) if len(words) >= 5 and words.casefold() not in _OF_THE_TRADE else None


def _beside(frames: Iterable[Frame], shown: Iterable[Shown | None]) -> dict[str, Shown]:
    """By directory, what its other frames show, where all show the same."""
    by_directory: dict[str, set[Shown]] = {}
    for frame, what in zip(frames, shown, strict=True):
        if what is not None:
            by_directory.setdefault(_directory(frame), set()).add(what)
    return {directory: next(iter(whats)) for directory, whats in by_directory.items() if len(whats) == 1}


def fit_of(what: Shown, frames: Sequence[Frame]) -> TargetFit:
    """As an entry names it."""
    if what.kind == CATALOGUE:
        return TargetFit(what.name, True, by=what.by)
    names = Counter(frame.record.object for frame in frames if frame.record.object)
    name = min(names, key=lambda word: (-names[word], word)) if names and what.kind != NAMED else what.name
    if what.kind == MOVING:
        return moving_fit(name)
    middle = _middle(frames)
    if middle is None:
        return TargetFit(name, False, by="the headers' own name")
    ra_deg, dec_deg = middle
    if what.kind == FIELD:
        return TargetFit(f"Field at {ra_deg:.1f} {dec_deg:+.1f}", False, ra_deg, dec_deg, by=what.by)
    if what.kind == NAMED:
        return TargetFit(name, False, ra_deg, dec_deg)
    near = next(iter(objects_near(ra_deg, dec_deg, NEAR_DEG)), None)
    offered = near.name if near else ""
    return TargetFit(without_panel(name), False, ra_deg, dec_deg, by="the headers' own name and pointing", offered=offered)


def _middle(frames: Iterable[Frame]) -> Place | None:
    places = sorted(place for frame in frames if (place := _pointing(frame.record)) is not None)
    if not places:
        return None
    return round(places[len(places) // 2][0], 4), round(median(dec for _, dec in places), 4)
