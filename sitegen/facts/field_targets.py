"""Which targets of its entry a frame gathers light for: the one it was pointed at, and the others that lie within its field."""

from datetime import date
from math import hypot

from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig, Train
from sitegen.diary.target import Target
from sitegen.sky.optics import effective_focal_length_mm, field_deg
from sitegen.sky.separation import separation_deg


class FieldTargets:
    """Asked for every light frame of an entry, so each train and target is looked at once."""

    def __init__(self, entry: Entry) -> None:
        self.targets = entry.targets
        self.known: dict[tuple[int, str, date], tuple[str, ...]] = {}

    def of(self, pointed: int | None, rig: Rig, evening: date) -> tuple[str, ...]:
        """Slugs of the targets, the pointed one first; none for a frame without a target."""
        if pointed is None:
            return ()
        key = pointed, rig.slug, evening
        if key not in self.known:
            self.known[key] = self._within(self.targets[pointed], rig.train_on(evening))
        return self.known[key]

    def _within(self, target: Target, train: Train) -> tuple[str, ...]:
        radius_deg = _diagonal_deg(train) / 2
        near = (other.slug for other in self.targets if _apart_deg(target, other) <= radius_deg)
        return tuple(dict.fromkeys((target.slug, *near)))


def _diagonal_deg(train: Train) -> float:
    camera, telescope = train.camera, train.telescope
    focal_length_mm = effective_focal_length_mm(telescope.focal_length_mm, telescope.factor)
    return field_deg(hypot(camera.width_px, camera.height_px), camera.pixel_um, focal_length_mm)


def _apart_deg(target: Target, other: Target) -> float:
    """360 where one of them has no fixed place: it lies in no field but its own."""
    if target.ra_deg is None or target.dec_deg is None or other.ra_deg is None or other.dec_deg is None:
        return 360.0
    return float(separation_deg(target.ra_deg, target.dec_deg, other.ra_deg, other.dec_deg))
