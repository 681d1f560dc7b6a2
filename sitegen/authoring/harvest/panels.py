"""The panels that a project's page will show, for its draft."""

from collections.abc import Sequence
from datetime import date

from msgspec.structs import replace

from sitegen.authoring.captures.places import target_called
from sitegen.authoring.target_fit import TargetFit
from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.mosaic_panels import field_of, mosaic_of
from sitegen.facts.pointing_clusters import PARTED
from sitegen.facts.views import PanelView, SubInSky


def panels_of(subs: Sequence[Sub], evenings: Sequence[date], target: TargetFit | None, rig: Rig) -> tuple[PanelView, ...]:
    """Of light frames as their log has them; none for a single field, and for what moves."""
    if target is None or target.moving or not _are_spread(subs, rig):
        return ()
    place = target_called(target.name).place if target.catalogued else (target.ra_deg, target.dec_deg)
    entry = Entry("", "", date.min, "", targets=(Target("", target.name, *(place or (None, None))),))
    lights = [SubInSky(replace(sub, rig=rig.slug, target=0), sub.filter or "light", "broadband", None) for sub in subs]
    mosaic = mosaic_of(entry, lights, evenings, {rig.slug: rig})
    return mosaic.panels if mosaic is not None else ()


def _are_spread(subs: Sequence[Sub], rig: Rig) -> bool:
    """Whether a frame names a panel, or they reach so far that there may be some: thousands of frames mostly show one field."""
    if any(sub.panel for sub in subs):
        return True
    origins = [sub.origin for sub in subs if sub.origin is not None]
    axes = ([origin.ra_deg for origin in origins], [origin.dec_deg for origin in origins])
    known_axes = ([place for place in axis if place is not None] for axis in axes)
    spans_deg = [max(places) - min(places) for places in known_axes if places]
    shortest_deg = min(min(field_of(train)) for train in rig.trains)
    return max(spans_deg, default=0.0) >= PARTED * shortest_deg / 2
