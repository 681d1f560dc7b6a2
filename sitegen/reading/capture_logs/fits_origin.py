"""What a FITS header says of the instrument, the place and the pointing behind its frame: private, to recognise and doubt it."""

from collections.abc import Hashable

from msgspec.structs import replace

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.reading.capture_logs.fits_header import FitsHeader, Keywords
from sitegen.reading.capture_logs.fits_told import Told
from sitegen.reading.capture_logs.header_angles import angle_deg, right_ascension_deg

_LATITUDES = (b"SITELAT ", b"OBSGEO-B", b"LAT-OBS ", b"OBSLAT  ")
_LONGITUDES = (b"SITELONG", b"OBSGEO-L", b"LONG-OBS", b"OBSLONG ")
_CAMERAS = (b"CAMERAID", b"DETSER  ", b"SERIALNO")
_STEADY = Keywords((*_LATITUDES, *_LONGITUDES, *_CAMERAS))
_PAIRS = ((b"RA      ", b"DEC     "), (b"OBJCTRA ", b"OBJCTDEC"))
_SOLVED = (b"CTYPE1  ", b"CTYPE2  ", b"CRVAL1  ", b"CRVAL2  ")
_POINTED = Keywords((*(keyword for pair in _PAIRS for keyword in pair), *_SOLVED))
_MOST_REMEMBERED = 2_000
PLACE_DIGITS = 1

Pointing = tuple[float, float] | None
_steady: dict[tuple[int, Hashable], tuple[Told, FrameOrigin]] = {}
_pointed: dict[Hashable, Pointing] = {}


def fits_origin(header: FitsHeader, told: Told) -> FrameOrigin:
    """What frames of one session share is made once; the pointing of each likeness of its cards too."""
    origin = _steady_origin(header, told)
    pointing = _pointing_of(header) if told.kind == "light" else None
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
        latitude_deg=_rounded(_first_angle(header, _LATITUDES, 90)),
        longitude_deg=_rounded(_first_angle(header, _LONGITUDES, 360)),
        camera_id=next((text for keyword in _CAMERAS if (text := header.text(keyword))), None),
    )


def _first_angle(header: FitsHeader, keywords: tuple[bytes, ...], most: float) -> float | None:
    angles = (angle_deg(header.text(keyword)) for keyword in keywords)
    return next((angle for angle in angles if angle is not None and abs(angle) <= most), None)


def _rounded(angle: float | None) -> float | None:
    """Nothing finer than that is remembered of an observer's place."""
    return None if angle is None else round(angle, PLACE_DIGITS) + 0.0


def _pointing_of(header: FitsHeader) -> Pointing:
    likeness = header.likeness(_POINTED)
    if likeness not in _pointed:
        if len(_pointed) >= _MOST_REMEMBERED:
            _pointed.clear()
        _pointed[likeness] = _pointing(header)
    return _pointed[likeness]


def _pointing(header: FitsHeader) -> Pointing:
    """From the mount, else from a solution in the header. ICRS degrees."""
    for ra, dec in _PAIRS:
        ra_deg, dec_deg = right_ascension_deg(header.text(ra)), angle_deg(header.text(dec))
        if ra_deg is not None and dec_deg is not None and abs(dec_deg) <= 90:
            return ra_deg, dec_deg
    if header.text(b"CTYPE1  ").startswith("RA") and header.text(b"CTYPE2  ").startswith("DEC"):
        ra_deg, dec_deg = header.number(b"CRVAL1  "), header.number(b"CRVAL2  ")
        return None if ra_deg is None or dec_deg is None else (ra_deg % 360, dec_deg)
    return None
