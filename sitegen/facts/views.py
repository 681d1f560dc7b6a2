"""The rows that facts are computed from: an entry beside the sky it was made under.

Built by hand in tests, by `diary_in_sky` for a diary. Everything position-dependent in them comes from the public site.
"""

from collections.abc import Mapping
from datetime import date
from typing import Literal

from msgspec import Struct

from sitegen.diary.entry import Entry, NightNote, PictureType
from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import Filter, FilterKind, Rig, Train, Work
from sitegen.diary.settings import MoonRule
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target
from sitegen.facts.contradiction import Contradiction
from sitegen.sky.advice import NARROW_KINDS
from sitegen.sky.answer import NightSky, SubSky, TargetNight
from sitegen.stars.measured import RingedFrame, SurveyedFrame
from sitegen.stars.solving.solution import Solution


class TrainLight(Struct, frozen=True):
    """Light frames through one filter, of one train or of one panel."""

    filter_key: str
    kept: int
    kept_s: float
    discarded: int


class OpticsView(Struct, frozen=True):
    """One train of one rig, at one binning, as this entry used it; `measured_by` is the file of the picture that told, and
    `simulated_by` that of the simulated picture, whose scale is no measurement; `light` what was taken with it, by filter
    as they first occur."""

    rig: Rig
    train: Train
    binning: int
    seeing_arcsec: float | None
    measured_scale_arcsec_px: float | None = None
    measured_by: str | None = None
    simulated_scale_arcsec_px: float | None = None
    simulated_by: str | None = None
    light: tuple[TrainLight, ...] = ()


PanelSource = Literal["author", "frames", "pointings"]
"""Who tells of a panel: the author's `panels`, the names in logs and headers, or where the frames were pointed."""


class PanelView(Struct, frozen=True):
    """One panel of a mosaic: ICRS degrees of its middle, the rig with which most of it was taken and its field (of a panel
    without a frame, those of the others; None where there is none at all). `rotation_deg` is the position angle of the camera's
    up; `turned_by` says who tells it."""

    name: str
    source: PanelSource
    ra_deg: float | None
    dec_deg: float | None
    rig: str | None
    field_deg: tuple[float, float] | None
    rotation_deg: float | None
    turned_by: Literal["author", "picture"] | None
    light: tuple[TrainLight, ...]


class MosaicView(Struct, frozen=True):
    """`elsewhere`: light frames of the target that belong to no panel."""

    panels: tuple[PanelView, ...]
    elsewhere: tuple[TrainLight, ...]


class PointedPicture(Struct, frozen=True):
    """A picture: its file and upright size in pixels, its solution and who gave it ('author', 'header', 'avm', 'stars').
    Both are None where there is none; `reason` then says why, and is None where nobody asked for its place."""

    file: str
    width_px: int
    height_px: int
    solution: Solution | None
    origin: str | None
    reason: str | None
    type: PictureType = "observation"


class SubInSky(Struct, frozen=True, gc=False):
    """A light frame with what its total is filed under and the kind of its band; `moon_altitude_deg` at mid-exposure,
    None where the site is hidden.

    `targets`: slugs of all that it gathers light for, the one it was pointed at first. `earlier` and `later`: slugs of the listed
    entries published before and after this one that tell of the same frame.
    """

    sub: Sub
    filter_key: str
    kind: FilterKind
    moon_altitude_deg: float | None
    targets: tuple[str, ...] = ()
    earlier: tuple[str, ...] = ()
    later: tuple[str, ...] = ()

    @property
    def narrow(self) -> bool:
        """Narrowband, dual-band included."""
        return self.kind in NARROW_KINDS


class NightView(Struct, frozen=True):
    """One night at one site. `sky` is None where the site is hidden; `target_sky` also without a fixed target. `trains` by rig:
    what stood there that evening."""

    evening: date
    site: PublicSite
    lights: tuple[SubInSky, ...]
    sky: NightSky | None
    target: Target | None
    target_sky: TargetNight | None
    rule: MoonRule
    note: NightNote | None = None
    trains: Mapping[str, Train] = {}

    @property
    def kept(self) -> tuple[SubInSky, ...]:
        return tuple(light for light in self.lights if light.sub.kept)


class SurveyView(Struct, frozen=True):
    """Star shapes over one frame; `rig` names the one it was taken with, None where that is not known; `type` says what the
    frame is where it is no observation."""

    frame: SurveyedFrame
    evening: date
    rig: str | None
    type: PictureType = "observation"


class RingView(Struct, frozen=True):
    """One defocused star."""

    frame: RingedFrame
    evening: date
    rig: str | None
    type: PictureType = "observation"


class EntryView(Struct, frozen=True):
    """`lights` in time order; `sub_sky` holds one array element a light. `work` is what was done to this entry's rigs
    since the entry before it with the same rig, `changes` the trains that they became since then. `surveys` and `rings` in the
    order the entry names their frames.
    `contradictions`: where entries published before tell otherwise of its frames. `mosaic` is None for a single field.
    `sky_note`: a sentence for the author where nights lie outside the installed table of the Earth's rotation."""

    entry: Entry
    optics: tuple[OpticsView, ...]
    nights: tuple[NightView, ...]
    lights: tuple[SubInSky, ...]
    sub_sky: SubSky
    filters: tuple[tuple[str, Filter], ...]
    work: tuple[tuple[Rig, Work], ...] = ()
    changes: tuple[tuple[Rig, Train], ...] = ()
    pictures: tuple[PointedPicture, ...] = ()
    surveys: tuple[SurveyView, ...] = ()
    rings: tuple[RingView, ...] = ()
    sky_note: str | None = None
    contradictions: tuple[Contradiction, ...] = ()
    mosaic: MosaicView | None = None

    @property
    def kept(self) -> tuple[SubInSky, ...]:
        return tuple(light for light in self.lights if light.sub.kept)
