"""What frames were pointed at, by the name in their headers; what else it may be is offered, never put in its place."""

from collections import Counter
from collections.abc import Iterable, Sequence
from statistics import median

from msgspec import Struct

from sitegen.authoring.captures.places import catalogued, is_moving_name
from sitegen.authoring.captures.record import Frame
from sitegen.authoring.panel_names import without_panel
from sitegen.catalogue.lookup import objects_near, separation_deg
from sitegen.diary.target import Target
from sitegen.facts.moving_body import body_of

# Within this of the frame's middle, the best known object may be what was meant.
NEAR_DEG = 0.25


class TargetFit(Struct, frozen=True):
    """`name` of the catalogue where `catalogued`, else as the header has it; the place only where no catalogue has one.

    `by` is what it was guessed from, '' where the header names it; `offered` is a catalogue's object near an unknown name.
    """

    name: str
    catalogued: bool
    ra_deg: float | None = None
    dec_deg: float | None = None
    by: str = ""
    offered: str = ""
    moving: bool = False


def target_of(frames: Iterable[Frame]) -> TargetFit | None:
    """Of light frames that belong together; None where they tell neither a name nor a place."""
    frames = tuple(frames)
    names = Counter(frame.record.object for frame in frames if frame.record.object)
    name = min(names, key=lambda name: (-names[name], name)) if names else ""
    sky_object = catalogued(name)
    if sky_object is not None:
        return TargetFit(sky_object.name, catalogued=True)
    if name and is_moving_name(name):
        return moving_fit(name)
    if (whole := catalogued(without_panel(name))) is not None:
        return TargetFit(whole.name, True, by=f"the panel's name '{name}'")
    return _by_place(name, _middle(frames))


def moving_fit(name: str) -> TargetFit:
    """The Moon and the planets are known; a comet is guessed from what it is called."""
    is_known = body_of(Target("", name, None, None, "moving")) is not None
    return TargetFit(name, False, by="" if is_known else "its name", moving=True)


def _middle(frames: Sequence[Frame]) -> tuple[float, float] | None:
    pointings = [(frame.record.ra_deg, frame.record.dec_deg) for frame in frames
                 if frame.record.ra_deg is not None and frame.record.dec_deg is not None]  # fmt: skip
    if not pointings:
        return None
    return sorted(pointings)[len(pointings) // 2][0], median(dec for _, dec in pointings)


def _by_place(name: str, place: tuple[float, float] | None) -> TargetFit | None:
    """A name of the author's own is kept, with its place; without any name, the place alone is all there is to guess from."""
    if place is None:
        return TargetFit(name, False) if name else None
    ra_deg, dec_deg = round(place[0], 4), round(place[1], 4)
    near = next(iter(objects_near(ra_deg, dec_deg, NEAR_DEG)), None)
    if not name and near is not None:
        apart = 60 * separation_deg(ra_deg, dec_deg, near.ra_deg, near.dec_deg)
        return TargetFit(near.name, True, by=f"the pointing, {apart:.0f}′ from it; the headers name nothing")
    if not name:
        return TargetFit("a field without a name", False, ra_deg, dec_deg, by="the pointing; the headers name nothing")
    return TargetFit(name, False, ra_deg, dec_deg, by="the headers' own name and pointing", offered=near.name if near else "")
