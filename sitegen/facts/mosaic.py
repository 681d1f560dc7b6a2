"""The facts of a mosaic: hours and filters of each panel, and the field of the whole."""

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG
from sitegen.facts.mosaic_field import turned_by, whole_field_deg
from sitegen.facts.optics_light import TrainFilter
from sitegen.facts.views import MosaicView, PanelView, TrainLight

POINTINGS = "the author, else where the frames of the log were pointed"
GEOMETRY = "geometry of a flat sensor behind a distortion-free lens"


def _seconds(light: tuple[TrainLight, ...]) -> float:
    return sum((row.kept_s for row in light), 0.0)


def by_filter(panel: PanelView) -> dict[str, TrainFilter]:
    return {row.filter_key: TrainFilter(round(row.kept_s, 3), row.kept, row.discarded) for row in panel.light}


NAME: Fact[PanelView] = Fact(
    "Panel", "", lambda panel: panel.name,
    "As the author, a log or a header names it, else a number in the order in which the panels were begun.",
    "the author, else the log",
)  # fmt: skip
SOURCE: Fact[PanelView] = Fact(
    "Panel told by", "", lambda panel: panel.source,
    "Who tells of the panel: its author, the names in logs and headers, or pointings that cluster half a field or more apart.",
    "common practice, no source",
)  # fmt: skip
RA_DEG: Fact[PanelView] = Fact(
    "Right ascension of the panel", "°", lambda panel: panel.ra_deg,
    "As the author gives it, else the middle of where its frames were pointed.", POINTINGS, 4,
)  # fmt: skip
DEC_DEG: Fact[PanelView] = Fact(
    "Declination of the panel", "°", lambda panel: panel.dec_deg,
    "As the author gives it, else the middle of where its frames were pointed.", POINTINGS, 4,
)  # fmt: skip
FIELD_DEG: Fact[PanelView] = Fact(
    "Field of the panel", "°", lambda panel: list(panel.field_deg) if panel.field_deg else None,
    "Width and height of the field of the train that took most of it.", GEOMETRY, 4,
)  # fmt: skip
ROTATION_DEG: Fact[PanelView] = Fact(
    "Rotation of the panel", "°", lambda panel: None if panel.rotation_deg is None else round(panel.rotation_deg, 2) % 360,
    "Position angle of the camera's up, from north through east, as the author gives it, else that of a solved picture taken "
    "with the same rig.",
    "the author, else the picture's plate solution", 2,
)  # fmt: skip
INTEGRATION_S: Fact[PanelView] = Fact(
    "Integration of the panel", "s", lambda panel: _seconds(panel.light), "Sum of the panel's kept light frames.", LOG, 3
)
KEPT: Fact[PanelView] = Fact(
    "Kept subs of the panel", "", lambda panel: sum(row.kept for row in panel.light), "Kept light frames of the panel.", LOG
)
DISCARDED: Fact[PanelView] = Fact(
    "Discarded subs of the panel", "", lambda panel: sum(row.discarded for row in panel.light),
    "Discarded light frames of the panel.", LOG,
)  # fmt: skip
BY_FILTER: Fact[PanelView] = Fact("By filter in the panel", "", by_filter, "The panel's light frames by filter.", LOG)

WHOLE_FIELD_DEG: Fact[MosaicView] = Fact(
    "Field of the whole mosaic", "°", whole_field_deg,
    "Width and height of the box around all panels, along the camera's sides, seen from its middle; along east and north where "
    "it is not known how a panel was turned, as if all stood with north up.",
    GEOMETRY, 4,
)  # fmt: skip
TURNED_BY: Fact[MosaicView] = Fact(
    "Rotation of the panels told by", "", turned_by,
    "The author, a solved picture taken with the same rig, or nobody: then north is taken to be up.",
    "the author, else the picture",
)  # fmt: skip
ELSEWHERE_S: Fact[MosaicView] = Fact(
    "Integration outside the panels", "s", lambda mosaic: _seconds(mosaic.elsewhere),
    "Sum of the target's kept light frames that belong to no panel.", LOG, 3,
)  # fmt: skip
ELSEWHERE: Fact[MosaicView] = Fact(
    "Kept subs outside the panels", "", lambda mosaic: sum(row.kept for row in mosaic.elsewhere),
    "The target's kept light frames that belong to no panel.", LOG,
)  # fmt: skip
