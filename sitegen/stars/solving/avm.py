"""Solutions as AVM's Spatial keywords, and from them (Astronomy Visualization Metadata 1.2, Hurt et al. 2011).

AVM counts pixels from 1, and rows from the bottom. Its Scale and Rotation are CDELT and CROTA2 of FITS (Calabretta
& Greisen 2002, section 6.2), whose signs are part of the matrix: [+, -] is [-, +] turned by half a circle, and two equal
signs are a mirrored picture. AVM presumes that there is none: other readers may take the first sign as negative whatever
it is. Where Scale and Rotation cannot say the whole (mirrored, or pixels not square), CDMatrix, deprecated but read, is
given as well. AVM has no lens distortion: a bent solution is replaced by the straight one
that comes nearest to it over the whole frame.
"""

from collections.abc import Mapping, Sequence
from math import atan2, cos, degrees, floor, hypot, isfinite, log10, radians, sin
from typing import TypeAlias

import numpy as np
from msgspec.structs import replace

from sitegen.stars.digits import rounded
from sitegen.stars.solving.accepting import PLACE_DECIMALS
from sitegen.stars.solving.solution import Matrix, NotSolved, Solution
from sitegen.stars.solving.tangent_plane import to_plane
from sitegen.stars.solving.transforms import resized

AvmValue: TypeAlias = str | float | list[float]

_SQUARE_WITHIN = 1e-6
_SIZES_AGREE_WITHIN = 0.02

_PIXEL_DECIMALS = 3
_TURN_DECIMALS = 5
_SCALE_DIGITS = 7
"""What is written moves no corner of 10,000 pixels by more than a few thousandths of one."""


def avm_spatial(solution: Solution, width_px: int, height_px: int) -> dict[str, AvmValue]:
    """Spatial.* keywords of the solved picture published at a size (its own, or resized as a whole)."""
    shown = straight(resized(solution, width_px, height_px))
    cd = _upward(shown.cd)
    (_, b), (_, d) = cd
    along_x, along_y = hypot(cd[0][0], cd[1][0]), hypot(b, d)
    decimals = _SCALE_DIGITS - 1 - floor(log10(along_y))
    keywords: dict[str, AvmValue] = {
        "Spatial.CoordinateFrame": "ICRS", "Spatial.Equinox": "2000.0", "Spatial.CoordsystemProjection": "TAN",
        "Spatial.ReferenceValue": [rounded(shown.reference_ra_deg, PLACE_DECIMALS),
                                   rounded(shown.reference_dec_deg, PLACE_DECIMALS)],
        "Spatial.ReferenceDimension": [float(width_px), float(height_px)],
        "Spatial.ReferencePixel": [rounded(shown.reference_x_px + 1, _PIXEL_DECIMALS),
                                   rounded(height_px - shown.reference_y_px, _PIXEL_DECIMALS)],
        "Spatial.Scale": [rounded(along_x if shown.mirrored else -along_x, decimals), rounded(along_y, decimals)],
        "Spatial.Rotation": rounded(degrees(atan2(-b, d)), _TURN_DECIMALS) % 360,
        "Spatial.Quality": _quality(solution, width_px, height_px)}
    if shown.mirrored or not _square(cd):
        keywords["Spatial.CDMatrix"] = [rounded(value, decimals) for row in cd for value in row]
    return keywords


def _quality(solution: Solution, width_px: int, height_px: int) -> str:
    """Full, or Position: only the reference value is to be relied on (AVM 1.2). The straight one's corners count."""
    if not solution.is_sure_of_corners:
        return "Position"
    shown = resized(solution, width_px, height_px)
    x, y = [-0.5, width_px - 0.5] * 2, [-0.5] * 2 + [height_px - 0.5] * 2
    there = straight(shown).to_pixel(*shown.to_sky(x, y))
    return "Full" if np.hypot(there[0] - x, there[1] - y).max() <= shown.corner_limit_px else "Position"


def straight(solution: Solution) -> Solution:
    """The solution without distortion that is nearest to it over the frame, by least squares; itself if it has none."""
    if solution.distortion is None:
        return solution
    across, down = np.linspace(0, solution.width_px - 1, 21), np.linspace(0, solution.height_px - 1, 21)
    x, y = (place.ravel() for place in np.meshgrid(across, down))
    ra, dec = solution.to_sky(x, y)
    xi, eta = to_plane(ra, dec, solution.reference_ra_deg, solution.reference_dec_deg)
    design = np.column_stack([np.ones_like(x), x - solution.reference_x_px, y - solution.reference_y_px])
    (shift, (a, c), (b, d)), *_ = np.linalg.lstsq(design, np.column_stack([xi, eta]), rcond=None)
    moved_x, moved_y = np.linalg.solve([[a, b], [c, d]], -shift)
    return replace(solution, cd=((float(a), float(b)), (float(c), float(d))), distortion=None,
                   reference_x_px=solution.reference_x_px + float(moved_x),
                   reference_y_px=solution.reference_y_px + float(moved_y))


def _upward(cd: Matrix) -> Matrix:
    """cd for rows counted the other way."""
    (a, b), (c, d) = cd
    return (a, -b), (c, -d)


def _square(cd: Matrix) -> bool:
    """Whether cd is a turn and one scale, unmirrored."""
    (a, b), (c, d) = cd
    return max(abs(a + d), abs(b - c)) <= _SQUARE_WITHIN * hypot(a, c)


def from_avm(avm: Mapping[str, object], width_px: int, height_px: int) -> Solution | NotSolved:
    """The solution that Spatial.* keywords state for a picture of a size, or why they state none that can be used.

    Values are numbers or text, as readers of XMP hand them out. The size that AVM calls its reference may differ from the
    picture's by a whole resize, not by a crop.
    """
    unusable = _unusable(avm)
    if unusable is not None:
        return NotSolved(unusable)
    try:
        value, pixel = (_numbers(avm, f"Spatial.{name}", 2) for name in ("ReferenceValue", "ReferencePixel"))
        across, up = _size(avm, width_px, height_px)
        cd = _upward(_matrix(avm))
    except ValueError as wrong:
        return NotSolved(str(wrong))
    if abs(across / up / (width_px / height_px) - 1) > _SIZES_AGREE_WITHIN:
        return NotSolved(f"AVM describes a picture of {across:g} x {up:g}, not of this one's shape, {width_px} x {height_px}")
    stated = Solution(round(across), round(up), value[0] % 360, value[1], pixel[0] - 1, up - pixel[1], cd)
    return resized(stated, width_px, height_px)


def _unusable(avm: Mapping[str, object]) -> str | None:
    if not avm.get("Spatial.ReferenceValue"):
        return "the picture carries no place in AVM (Spatial.ReferenceValue)"
    frame, projection = (str(avm.get(f"Spatial.{name}") or usual).strip().upper()
                         for name, usual in (("CoordinateFrame", "ICRS"), ("CoordsystemProjection", "TAN")))
    if frame not in ("ICRS", "FK5"):
        return f"AVM's places are in {frame}; ICRS and FK5 are read"
    if projection != "TAN":
        return f"AVM's projection {projection} is not read; TAN is"
    equinox = str(avm.get("Spatial.Equinox") or "2000").strip().upper().removeprefix("J")
    return None if frame == "ICRS" or equinox in ("2000", "2000.0") else f"AVM's equinox is {equinox}; 2000 is read"


def _size(avm: Mapping[str, object], width_px: int, height_px: int) -> tuple[float, float]:
    if not avm.get("Spatial.ReferenceDimension"):
        return width_px, height_px
    across, up = _numbers(avm, "Spatial.ReferenceDimension", 2)
    if min(across, up) < 1:
        raise ValueError(f"AVM's Spatial.ReferenceDimension is not a size: {across:g} x {up:g}")
    return across, up


def _matrix(avm: Mapping[str, object]) -> Matrix:
    if avm.get("Spatial.CDMatrix"):
        a, b, c, d = _numbers(avm, "Spatial.CDMatrix", 4)
    else:
        across, up = _numbers(avm, "Spatial.Scale", 2)
        turn = radians(_number(avm, "Spatial.Rotation", avm.get("Spatial.Rotation") or 0.0))
        a, b, c, d = across * cos(turn), -up * sin(turn), across * sin(turn), up * cos(turn)
    if a * d == b * c:
        raise ValueError("AVM's scale is zero along one direction")
    return (a, b), (c, d)


def _numbers(avm: Mapping[str, object], key: str, count: int) -> list[float]:
    values = avm.get(key)
    if isinstance(values, str) or not isinstance(values, Sequence) or len(values) != count:
        raise ValueError(f"AVM's {key} is not {count} numbers: {values}")
    return [_number(avm, key, value) for value in values]


def _number(avm: Mapping[str, object], key: str, value: object) -> float:
    try:
        number = float(str(value))
    except ValueError:
        number = float("nan")
    if not isfinite(number):
        raise ValueError(f"AVM's {key} is not a number: {avm.get(key)}")
    return number
