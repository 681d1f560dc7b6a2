"""One exposure as a capture log tells it."""

from datetime import datetime, timedelta
from typing import Literal

from msgspec import Struct

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.readings import Readings

FrameKind = Literal["light", "dark", "flat", "bias", "dark-flat"]


class Sub(Struct, frozen=True, gc=False):
    """One frame. `start` is aware UTC; `rig`, `site` and `target` name records of the diary.

    `filter` is the rig's short name, None where the rig has no filters or the frame needs none.
    `target` is an index into the entry's targets, None for a gear entry.
    `panel` names the panel of a mosaic.
    `source` is the log it came from, relative to content/, POSIX. `clock` is None where the record itself told its clock (a `Z`,
    an offset, TIMESYS), else what its bare time was read as: 'UTC', or the IANA zone that the author named. `origin` is private.
    `readings` are those of instruments beside the camera.
    None elsewhere: the log does not say.
    """

    start: datetime
    exposure_s: float
    rig: str
    site: str
    target: int | None = None
    filter: str | None = None
    kind: FrameKind = "light"
    kept: bool = True
    reason: str | None = None
    binning: int | None = None
    gain: float | None = None
    sensor_c: float | None = None
    fwhm_arcsec: float | None = None
    elongation: float | None = None
    guiding_rms_arcsec: float | None = None
    stars: int | None = None
    note: str | None = None
    panel: str | None = None
    source: str = ""
    clock: str | None = None
    origin: FrameOrigin | None = None
    readings: Readings | None = None

    @property
    def end(self) -> datetime:
        return self.start + timedelta(seconds=self.exposure_s)

    @property
    def middle(self) -> datetime:
        return self.start + timedelta(seconds=self.exposure_s / 2)
