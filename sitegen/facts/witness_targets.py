"""Whether the frames of a log were pointed at what the entry is about."""

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from math import hypot
from shlex import quote

from sitegen.catalogue.lookup import find_object, separation_deg
from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig, Train
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.witness_logs import WitnessedLog, gather_command, how_many, item_with
from sitegen.sky.optics import effective_focal_length_mm, field_deg
from sitegen.sky.rough_altitude import of_date

Place = tuple[float, float]
# Pointings are told apart to a hundredth of a degree.
DIGITS = 2


def strangers(log: WitnessedLog, entry: Entry, rig: Rig) -> tuple[str, str] | None:
    """What is wrong and its cure, where frames point farther than a field's diagonal from every target of the entry and from
    every frame that belongs (the panels of a mosaic). A frame with neither pointing nor known object belongs."""
    if not entry.targets or any(target.ra_deg is None for target in entry.targets):
        return None
    places = {sub: place for sub in log.subs if (place := _place_of(sub)) is not None}
    far = _far_from_all(set(places.values()), entry, _diagonal_deg(rig), log.subs[0].start.timestamp())
    foreign = [sub for sub in log.subs if places.get(sub) in far]
    return _told(foreign, places, log, entry) if foreign else None


def _far_from_all(places: set[Place], entry: Entry, diagonal_deg: float, unix_s: float) -> set[Place]:
    far = {place for place in places if not any(_at_target(place, target, diagonal_deg, unix_s) for target in entry.targets)}
    accepted = sorted(places - far)
    while accepted:
        centre = accepted.pop()
        joined = {place for place in far if separation_deg(*place, *centre) <= diagonal_deg}
        far -= joined
        accepted += sorted(joined)
    return far


def _at_target(place: Place, target: Target, diagonal_deg: float, unix_s: float) -> bool:
    """A mount may speak of the equinox of date, and a program write hours without parts; neither is another place."""
    if target.ra_deg is None or target.dec_deg is None:
        return False
    reach_deg = diagonal_deg + max(target.size_arcmin or (0.0,)) / 120
    in_hours = place[0] * 15 % 360, place[1]
    here, of_its_date = (target.ra_deg, target.dec_deg), of_date(target.ra_deg, target.dec_deg, unix_s)
    pairs = ((place, here), (place, of_its_date), (in_hours, here))
    return any(separation_deg(*pointing, *wanted) <= reach_deg for pointing, wanted in pairs)


def _place_of(sub: Sub) -> Place | None:
    """The pointing, but for the zeros or the pole of a mount that was not asked; else the catalogue's place of OBJECT."""
    origin = sub.origin
    if origin is None:
        return None
    ra_deg, dec_deg = origin.ra_deg, origin.dec_deg
    if ra_deg is not None and dec_deg is not None and (ra_deg, dec_deg) != (0, 0) and abs(dec_deg) < 90:
        return round(ra_deg, DIGITS), round(dec_deg, DIGITS)
    return _catalogued(origin.object) if origin.object else None


@lru_cache(maxsize=500)
def _catalogued(name: str) -> Place | None:
    sky_object = find_object(name)
    return None if sky_object is None else (sky_object.ra_deg, sky_object.dec_deg)


def _diagonal_deg(rig: Rig) -> float:
    """The widest that any train of the rig had."""
    return max(map(_field_diagonal_deg, rig.trains))


def _field_diagonal_deg(train: Train) -> float:
    focal_mm = effective_focal_length_mm(train.telescope.focal_length_mm, train.telescope.factor)
    return field_deg(hypot(train.camera.width_px, train.camera.height_px), train.camera.pixel_um, focal_mm)


def _told(foreign: Sequence[Sub], places: dict[Sub, Place], log: WitnessedLog, entry: Entry) -> tuple[str, str]:
    main = entry.targets[0]
    names = Counter(sub.origin.object for sub in foreign if sub.origin is not None and sub.origin.object)
    apart_deg = min(separation_deg(*places[sub], main.ra_deg or 0.0, main.dec_deg or 0.0) for sub in foreign)
    called = f" (OBJECT: {', '.join(name for name, _ in names.most_common(3))})" if names else ""
    point = "point" if len(foreign) != 1 else "points"
    wrong = f"{how_many(len(foreign), log)} {point} {apart_deg:.1f}° or more from {main.name}{called}"
    if log.gathered:
        return wrong, f"to set them aside, {gather_command(log, f'--target {quote(main.name)}')}"
    other = next(iter(names), "NAME")
    item = item_with(log, f"target: {other}")
    return wrong, f"if another target, add it to 'target' and write {item}; if none, leave the files out"
