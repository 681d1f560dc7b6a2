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


def fits_origin(header: FitsHeader, claims: Told) -> FrameOrigin:
    """What frames of one session share is made once."""
    origin = _steady_origin(header, claims)
    pointing = pointing_of(header) if claims.kind == "light" else None
    return origin if pointing is None else replace(origin, ra_deg=pointing[0], dec_deg=pointing[1])


def _steady_origin(header: FitsHeader, claims: Told) -> FrameOrigin:
    """`told` is kept beside it, so that its identity stays taken."""
    key = id(claims), header.likeness(_STEADY)
    steady = _steady.get(key)
    if steady is None:
        if len(_steady) >= _MOST_REMEMBERED:
            _steady.clear()
        steady = _steady[key] = claims, _origin(header, claims)
    return steady[1]


def _origin(header: FitsHeader, claims: Told) -> FrameOrigin:
    width, height = (int(size) if size is not None and size >= 1 else None for size in claims.frame_px)
    return FrameOrigin(
        object=next(iter(claims.targets), None),
        filter_told=claims.filter_words or None,
        focal_length_mm=claims.focal_length_mm or None,
        pixel_um=claims.pixel_um or None,
        width_px=width,
        height_px=height,
        latitude_deg=latitude_of(header),
        longitude_deg=longitude_of(header),
        camera_id=camera_id_of(header) or None,
    )
