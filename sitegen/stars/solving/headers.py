"""Solutions from FITS headers.

Greisen & Calabretta (2002), A&A 395, 1061 (CD; PC and CDELT; CROTA2); Calabretta & Greisen (2002), A&A 395, 1077
(TAN); Shupe et al. (2005), ASP Conf. 347, 491 (SIP). Row 0 of a solution is the first row of the FITS
array. A viewer that shows FITS with its first row at the bottom shows flipped_top_bottom(solution).
"""

from collections.abc import Mapping
from math import cos, isfinite, radians, sin

from sitegen.stars.solving.distortion import Distortion, Terms, sorted_terms
from sitegen.stars.solving.solution import Matrix, NotSolved, Solution

# Not astropy.wcs: its WCSLIB reads a garbled card as a missing one, and a missing one as its default. CD1_2 = 'abc' shows another
# place without a word, and so does a header without CRPIX1. Here either is refused, and the stars are asked. What is read agrees
# with WCSLIB to a millionth of an arcsecond (tests).

_TRUSTED_BEYOND = 0.25
_FRAMES_AT_J2000 = ("ICRS", "FK5")


def from_header_keywords(header: Mapping[str, object], width_px: int | None = None,
                         height_px: int | None = None) -> Solution | NotSolved:
    """The solution a header states, or why it states none that can be used.

    Read: RA---TAN and DEC--TAN, with -SIP or not, axes in this order, degrees, ICRS or FK5/J2000 (which
    differ by 0.02 arcsec). The frame is NAXIS1 x NAXIS2 unless given.
    """
    try:
        unusable = _unusable(header) or _unusable_plane(header)
        if unusable is not None:
            return NotSolved(unusable)
        width, height = width_px or int(_number(header, "NAXIS1")), height_px or int(_number(header, "NAXIS2"))
        reference = tuple(_number(header, key) for key in ("CRVAL1", "CRVAL2", "CRPIX1", "CRPIX2"))
        cd = _matrix(header)
        distortion = _sip(header, (width, height), (reference[2], reference[3]))
    except ValueError as missing:
        return NotSolved(str(missing))
    if cd[0][0] * cd[1][1] == cd[0][1] * cd[1][0]:
        return NotSolved("the scale in the header (CD, or PC and CDELT) is zero along one direction")
    return Solution(width, height, reference[0] % 360, reference[1], reference[2] - 1, reference[3] - 1, cd, distortion)


def _unusable(header: Mapping[str, object]) -> str | None:
    axes = [str(header.get(key, "")).strip() for key in ("CTYPE1", "CTYPE2")]
    if not any(axes):
        return "the header has no CTYPE1 and CTYPE2, so no place on the sky"
    if axes not in (["RA---TAN", "DEC--TAN"], ["RA---TAN-SIP", "DEC--TAN-SIP"]):
        return f"the projection {' and '.join(axes)} is not read; RA---TAN and DEC--TAN, with -SIP or not, are"
    if axes[0] == "RA---TAN" and any(key.startswith(("PV1_", "PV2_")) for key in header):
        return "the header bends TAN by PV keywords, which are not read"
    frame = str(header.get("RADESYS", header.get("RADECSYS", ""))).strip().upper()
    if frame and frame not in _FRAMES_AT_J2000:
        return f"the header's places are in {frame}; ICRS and FK5 are read"
    equinox = _or(header, "EQUINOX", _or(header, "EPOCH", 2000.0))
    return None if frame == "ICRS" or equinox == 2000.0 else f"the header's equinox is {equinox:g}; 2000 is read"


def _unusable_plane(header: Mapping[str, object]) -> str | None:
    """Of units and of the plane's turn: LONPOLE, not stated, is 180, and 0 at the pole (Calabretta & Greisen, section 2.4)."""
    units = {str(header.get(key) or "deg").strip() for key in ("CUNIT1", "CUNIT2")}
    unread = sorted(unit for unit in units if not unit.lower().startswith("deg"))
    if unread:
        return f"the header's units are {' and '.join(unread)}; deg is read"
    pole_deg = _or(header, "LONPOLE", 180.0 if _number(header, "CRVAL2") < 90 else 0.0)
    return None if pole_deg == 180 else f"the header turns its plane by LONPOLE {pole_deg:g}; 180 is read"


def _number(header: Mapping[str, object], key: str) -> float:
    """A finite number; ValueError, worded for the author, where there is none."""
    value = header.get(key)
    try:
        number = float(str(value))
    except ValueError:
        number = float("nan")
    if value is None or not isfinite(number):
        raise ValueError(f"the header's {key} is {'missing' if value is None else f'not a number: {value}'}")
    return number


def _or(header: Mapping[str, object], key: str, default: float) -> float:
    return default if header.get(key) is None else _number(header, key)


def _matrix(header: Mapping[str, object]) -> Matrix:
    """CDi_j; else PCi_j times CDELTi; else CDELTi turned by CROTA2."""
    indices = ((1, 1), (1, 2), (2, 1), (2, 2))
    if any(f"CD{i}_{j}" in header for i, j in indices):
        a, b, c, d = (_or(header, f"CD{i}_{j}", 0.0) for i, j in indices)
        return (a, b), (c, d)
    across, up = _number(header, "CDELT1"), _number(header, "CDELT2")
    if any(f"PC{i}_{j}" in header for i, j in indices):
        a, b, c, d = (_or(header, f"PC{i}_{j}", float(i == j)) for i, j in indices)
        return (a * across, b * across), (c * up, d * up)
    turn = radians(_or(header, "CROTA2", 0.0))
    return (across * cos(turn), -up * sin(turn)), (across * sin(turn), up * cos(turn))


def _sip(header: Mapping[str, object], frame: tuple[int, int], crpix: tuple[float, float]) -> Distortion | None:
    """A and B, trusted as far as a quarter of the frame beyond it; None where the header has neither."""
    if not str(header.get("CTYPE1", "")).strip().endswith("-SIP"):
        return None
    a, b = _terms(header, "A"), _terms(header, "B")
    across, up = (_TRUSTED_BEYOND * side for side in frame)
    trusted = (1 - crpix[0] - across, frame[0] - crpix[0] + across, 1 - crpix[1] - up, frame[1] - crpix[1] + up)
    return Distortion(a, b, trusted) if a or b else None


def _terms(header: Mapping[str, object], letter: str) -> Terms:
    order = int(_or(header, f"{letter}_ORDER", 0.0))
    powers = [(p, q) for p in range(order + 1) for q in range(order + 1 - p)]
    return sorted_terms({(p, q): _or(header, f"{letter}_{p}_{q}", 0.0) for p, q in powers})
