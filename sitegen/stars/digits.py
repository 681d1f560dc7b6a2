"""Measured numbers with the digits that they mean.

Processors sum in different orders and differ in the last bit, and a fit makes more of that bit. So every number from a fit is
rounded once, when it is recorded; what is decided and derived later starts from the rounded one.
"""

from math import floor, isfinite, log10
from typing import overload

SIZE_DECIMALS = 3
"""Of widths in px or arcsec, and of elongations: a tenth of the error of a zone's."""

ANGLE_DECIMALS = 1
"""Of degrees: directions are good to a few of them."""

COMPONENT_DECIMALS = 4
"""Of a component of the shape vector."""


@overload
def rounded(value: float, decimals: int) -> float: ...
@overload
def rounded(value: None, decimals: int) -> None: ...
@overload
def rounded(value: float | None, decimals: int) -> float | None: ...
def rounded(value: float | None, decimals: int) -> float | None:
    """A plain float, never -0.0; None stays None."""
    return None if value is None else round(float(value), decimals) + 0.0


def significant(value: float, digits: int) -> float:
    """Rounded to so many digits, wherever the point stands; 0, infinity and what is no number stay."""
    return rounded(value, digits - 1 - floor(log10(abs(value)))) if value and isfinite(value) else float(value) + 0.0


def direction(angle_deg: float, whole_deg: float) -> float:
    """An angle in degrees in [0, whole)."""
    return rounded(rounded(angle_deg, ANGLE_DECIMALS) % whole_deg, ANGLE_DECIMALS)
