"""What a frame's own header and path say of it. Private: it serves to recognise and to doubt a frame, and is never published."""

from msgspec import Struct


class FrameOrigin(Struct, frozen=True):
    """None where the record does not say.

    `file` is the path below the folder that was gathered, POSIX; `folder` names that folder. `object` and `filter_told` are the
    header's own words. Angles in degrees: the pointing as the header gives it, the place north and east positive, rounded to 0.1.
    `pixel_um`, `width_px` and `height_px` count binned pixels. `camera_id` is a serial number. `discarded_by` says why gathering
    discarded the frame, and is None where gathering kept it.
    """

    file: str | None = None
    folder: str | None = None
    object: str | None = None
    ra_deg: float | None = None
    dec_deg: float | None = None
    filter_told: str | None = None
    focal_length_mm: float | None = None
    pixel_um: float | None = None
    width_px: int | None = None
    height_px: int | None = None
    latitude_deg: float | None = None
    longitude_deg: float | None = None
    camera_id: str | None = None
    discarded_by: str | None = None
