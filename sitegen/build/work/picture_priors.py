"""What an entry says about its pictures before they are opened: where they may point, what they were made from, the ribbon of
their card."""

from sitegen.diary.entry import Picture
from sitegen.facts.integration_totals import seconds
from sitegen.facts.optics_scale import scale_arcsec_px
from sitegen.facts.utc_text import utc_text
from sitegen.facts.views import EntryView, OpticsView, SubInSky
from sitegen.pages.card import bands_of
from sitegen.pages.ribbon import night_span, ribbon_of
from sitegen.pages.ribbon_card import ribbon_svg
from sitegen.pictures.packet_values import Exposures
from sitegen.pictures.pointing_records import PointingPrior, ScalePrior

ASKED = ("result", "sub")
"""Roles of pictures that show one field of the sky; of these alone the stars are asked."""


def pointing_prior(view: EntryView, picture: Picture) -> PointingPrior:
    stated = ((target.ra_deg, target.dec_deg) for target in view.entry.targets)
    places = tuple((ra_deg, dec_deg) for ra_deg, dec_deg in stated if ra_deg is not None and dec_deg is not None)
    trains = tuple(dict.fromkeys(_frame(row) for row in view.optics))
    return PointingPrior(picture.solution, places, trains, bool(places) and picture.role in ASKED)


def _frame(row: OpticsView) -> ScalePrior:
    camera = row.train.camera
    return ScalePrior(camera.width_px // row.binning, camera.height_px // row.binning, scale_arcsec_px(row))


def exposures(view: EntryView) -> tuple[Exposures, ...]:
    """Kept subs by rig and filter, in the order of the entry's filters."""
    cameras = {row.rig.slug: (row.rig.name, row.train.camera.name) for row in view.optics}
    grouped: dict[tuple[str, str], list[SubInSky]] = {}
    for short, _ in view.filters:
        for light in view.kept:
            if light.filter_key == short:
                grouped.setdefault((light.sub.rig, short), []).append(light)
    return tuple(_exposures(view, cameras[rig], short, lights) for (rig, short), lights in grouped.items() if rig in cameras)


def _exposures(view: EntryView, named: tuple[str, str | None], short: str, lights: list[SubInSky]) -> Exposures:
    used = dict(view.filters)[short]
    centre_nm = used.centre_nm[0] if len(used.centre_nm) == 1 else None
    return Exposures(*named, used.name, centre_nm, utc_text(lights[0].sub.start), seconds(lights))


def fullest_ribbon(view: EntryView) -> str | None:
    """The night in which most was gathered; None for an entry without nights."""
    night = max(view.nights, key=lambda evening: (seconds(evening.kept), evening.evening), default=None)
    span = night_span(night) if night else None
    return ribbon_svg(ribbon_of(night, span, bands_of(view.filters), "card", named=False)) if night and span else None
