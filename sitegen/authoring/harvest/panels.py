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
from sitegen.facts.mosaic_panels import mosaic_of
from sitegen.facts.views import PanelView, SubInSky


def panels_of(subs: Sequence[Sub], evenings: Sequence[date], target: TargetFit | None, rig: Rig) -> tuple[PanelView, ...]:
    """Of light frames as their log has them; none for a single field, and for what moves."""
    if target is None or target.moving:
        return ()
    place = target_called(target.name).place if target.catalogued else (target.ra_deg, target.dec_deg)
    entry = Entry("", "", date.min, "", targets=(Target("", target.name, *(place or (None, None))),))
    lights = [SubInSky(replace(sub, rig=rig.slug, target=0), sub.filter or "light", "broadband", None) for sub in subs]
    mosaic = mosaic_of(entry, lights, evenings, {rig.slug: rig})
    return mosaic.panels if mosaic is not None else ()
