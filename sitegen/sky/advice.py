"""The rule of thumb for broadband or narrowband, and whether the subs followed it.

Common practice, no source; both thresholds are the diary's to set.
"""

from collections.abc import Iterable

ANY = "any"
NARROWBAND = "narrowband"
BROADBAND_WHILE_MOON_DOWN = "broadband-while-moon-down"
NARROW_KINDS = frozenset({"narrowband", "dual-band"})


def advice(
    illuminated: float | None,
    up_share: float | None,
    illuminated_above: float = 0.5,
    up_share_above: float = 0.5,
) -> str | None:
    """What the Moon suggests for a night; None when it cannot be known.

    illuminated: 0-1. up_share: part of the dark hours with the Moon up, None without dark hours; a Moon
    lit no more than the threshold settles the question without it.
    """
    if illuminated is None:
        return None
    if illuminated <= illuminated_above:
        return ANY
    if up_share is None:
        return None
    return NARROWBAND if up_share > up_share_above else BROADBAND_WHILE_MOON_DOWN


def followed(advised: str | None, kept: Iterable[tuple[str | None, float | None]]) -> bool | None:
    """Whether the kept subs obeyed: pairs of filter kind and Moon's altitude in degrees at mid-exposure.

    Kinds: "broadband", "narrowband", "dual-band", None where unknown. None where the advice is "any" or
    unknown, nothing was kept, or an unknown kind or altitude leaves it open.
    """
    if advised in (None, ANY):
        return None
    obeyed = [obeys(advised, kind, altitude) for kind, altitude in kept]
    if False in obeyed:
        return False
    return None if not obeyed or None in obeyed else True


def obeys(advised: str | None, kind: str | None, moon_altitude_deg: float | None) -> bool | None:
    """Whether one sub obeys; None where its kind or the Moon's altitude leaves it open."""
    if kind in NARROW_KINDS:
        return True
    if advised == BROADBAND_WHILE_MOON_DOWN and moon_altitude_deg is not None and moon_altitude_deg <= 0.0:
        return True
    if kind is None or (advised == BROADBAND_WHILE_MOON_DOWN and moon_altitude_deg is None):
        return None
    return False
