"""Where a FITS header says that its frame points and was taken, and by which camera: gathering and reading ask the same way."""

from collections.abc import Callable, Hashable

from sitegen.reading.capture_logs.fits_header import FitsHeader, Keywords
from sitegen.reading.capture_logs.header_angles import angle_deg, right_ascension_deg

LATITUDES = (b"SITELAT ", b"OBSGEO-B", b"LAT-OBS ", b"OBSLAT  ")
LONGITUDES = (b"SITELONG", b"OBSGEO-L", b"LONG-OBS", b"OBSLONG ")
SERIALS = (b"CAMSER  ", b"CAMSERNO", b"CAMSN   ", b"SERIAL  ", b"SERIALNO", b"SERNO   ", b"DETSER  ", b"CAMID   ", b"CAMERAID")
_POINTINGS = ((b"RA      ", b"DEC     "), (b"OBJCTRA ", b"OBJCTDEC"))
_POINTED = Keywords((*(keyword for pair in _POINTINGS for keyword in pair), b"CTYPE1  ", b"CTYPE2  ", b"CRVAL1  ", b"CRVAL2  "))
PLACE_DIGITS, POINTING_DIGITS = 1, 5
"""0.1° is some 11 km: enough to recognise a site and to doubt a clock; the exact place is kept nowhere."""

_MOST_REMEMBERED = 2_000

Pointing = tuple[float, float] | None
_remembered: dict[Hashable, Pointing] = {}


def pointing_of(header: FitsHeader) -> Pointing:
    """From the mount, else from a solution in the header. ICRS degrees. Right ascension and declination 0 are how programs write
    nothing."""
    likeness = header.likeness(_POINTED)
    if likeness not in _remembered:
        if len(_remembered) >= _MOST_REMEMBERED:
            _remembered.clear()
        _remembered[likeness] = _pointing_told(header)
    return _remembered[likeness]


def _pointing_told(header: FitsHeader) -> Pointing:
    for ra, dec in _POINTINGS:
        pointing = _pointing(_angle(header, ra, right_ascension_deg), _angle(header, dec, angle_deg))
        if pointing is not None and pointing != (0, 0):
            return pointing
    if header.text(b"CTYPE1  ").startswith("RA") and header.text(b"CTYPE2  ").startswith("DEC"):
        return _pointing(header.number(b"CRVAL1  "), header.number(b"CRVAL2  "))
    return None


def _pointing(ra_deg: float | None, dec_deg: float | None) -> Pointing:
    if ra_deg is None or dec_deg is None or abs(dec_deg) > 90:
        return None
    return round(ra_deg % 360, POINTING_DIGITS) % 360, round(dec_deg, POINTING_DIGITS) + 0.0


def _angle(header: FitsHeader, keyword: bytes, parsed: Callable[[str], float | None]) -> float | None:
    """A plain number is degrees already."""
    value = header.value(keyword)
    if isinstance(value, float):
        return value if abs(value) <= 360 else None
    return parsed(value.strip()) if isinstance(value, str) else None


def latitude_of(header: FitsHeader) -> float | None:
    return _place_deg(header, LATITUDES, 90)


def longitude_of(header: FitsHeader) -> float | None:
    """East of Greenwich, -180 to 180."""
    return _place_deg(header, LONGITUDES, 360)


def _place_deg(header: FitsHeader, keywords: tuple[bytes, ...], most: float) -> float | None:
    angles = (angle_deg(header.text(keyword)) for keyword in keywords)
    angle = next((angle for angle in angles if angle is not None and abs(angle) <= most), None)
    if angle is None:
        return None
    return round(angle if angle <= 180 else angle - 360, PLACE_DIGITS) + 0.0


def camera_id_of(header: FitsHeader) -> str:
    """The camera's serial number or name; '' where the header has none."""
    return next((text for keyword in SERIALS if (text := header.text(keyword))), "")
