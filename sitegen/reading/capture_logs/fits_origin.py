"""What a FITS header says of the instrument, the place and the pointing behind its frame: private, to recognise and doubt it."""

from collections.abc import Hashable

from msgspec.structs import replace

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.reading.capture_logs.fits_header import FitsHeader, Keywords
from sitegen.reading.capture_logs.fits_place import (
    LATITUDES,
    LONGITUDES,
    SERIALS,
    camera_id_of,
    latitude_of,
    longitude_of,
    pointing_of,
)
from sitegen.reading.capture_logs.fits_told import Told

_STEADY = Keywords((*LATITUDES, *LONGITUDES, *SERIALS))
_MOST_REMEMBERED = 2_000

_steady: dict[tuple[int, Hashable], tuple[Told, FrameOrigin]] = {}


def fits_origin(header: FitsHeader, told: Told) -> FrameOrigin:
    """What frames of one session share is made once."""
    origin = _steady_origin(header, told)
    pointing = pointing_of(header) if told.kind == "light" else None
    return origin if pointing is None else replace(origin, ra_deg=pointing[0], dec_deg=pointing[1])


def _steady_origin(header: FitsHeader, told: Told) -> FrameOrigin:
    """`told` is kept beside it, so that its identity stays taken."""
    key = id(told), header.likeness(_STEADY)
    known = _steady.get(key)
    if known is None:
        if len(_steady) >= _MOST_REMEMBERED:
            _steady.clear()
        known = _steady[key] = told, _origin(header, told)
    return known[1]


def _origin(header: FitsHeader, told: Told) -> FrameOrigin:
    width, height = (int(size) if size is not None and size >= 1 else None for size in told.frame_px)
    return FrameOrigin(
        object=next(iter(told.targets), None),
        filter_told=told.filter_words or None,
        focal_length_mm=told.focal_length_mm or None,
        pixel_um=told.pixel_um or None,
        width_px=width,
        height_px=height,
        latitude_deg=latitude_of(header),
        longitude_deg=longitude_of(header),
        camera_id=camera_id_of(header) or None,
    )
