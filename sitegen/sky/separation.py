"""How far apart two places on the sky are."""

from math import asin, cos, degrees, radians, sin, sqrt


def separation_deg(ra_deg: float, dec_deg: float, other_ra_deg: float, other_dec_deg: float) -> float:
    """Great-circle angle, 0 to 180, by the haversine formula, which stays exact for small angles (J. Meeus, Astronomical
    Algorithms, 2nd ed., chapter 17). Within a few arcseconds of opposite places it is good to an arcsecond."""
    dec, other_dec = radians(dec_deg), radians(other_dec_deg)
    across, up = radians(other_ra_deg - ra_deg), other_dec - dec
    haversine = sin(up / 2) ** 2 + cos(dec) * cos(other_dec) * sin(across / 2) ** 2
    return degrees(2 * asin(min(1.0, sqrt(haversine))))
