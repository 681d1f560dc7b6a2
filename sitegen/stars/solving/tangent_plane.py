"""The gnomonic projection: sky positions to the plane that touches the sky at one point, and back.

Calabretta & Greisen (2002), A&A 395, 1077, section 5.1.3 (TAN). Angles and plane coordinates are in
degrees; xi grows to the east, eta to the north. Exact to rounding error.
"""

from typing import TypeAlias

import numpy as np
import numpy.typing as npt

FloatArray: TypeAlias = npt.NDArray[np.float64]


def to_plane(ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike, touching_ra_deg: npt.ArrayLike,
             touching_dec_deg: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
    """(xi, eta) in degrees of sky positions of any one shape; NaN for the half of the sky that faces away."""
    east, north, towards = direction_cosines(ra_deg, dec_deg, touching_ra_deg, touching_dec_deg)
    seen = np.where(towards > 1e-9, towards, np.nan)
    return np.degrees(east / seen), np.degrees(north / seen)


def direction_cosines(ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike, touching_ra_deg: npt.ArrayLike,
                      touching_dec_deg: npt.ArrayLike) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Unit vectors of sky positions along east, north and outward at the touching point."""
    turn = np.radians(np.asarray(ra_deg, dtype=np.float64) - np.asarray(touching_ra_deg))
    dec = np.radians(np.asarray(dec_deg, dtype=np.float64))
    sin0, cos0 = np.sin(np.radians(touching_dec_deg)), np.cos(np.radians(touching_dec_deg))
    east = np.cos(dec) * np.sin(turn)
    north = np.sin(dec) * cos0 - np.cos(dec) * sin0 * np.cos(turn)
    towards = np.sin(dec) * sin0 + np.cos(dec) * cos0 * np.cos(turn)
    return east, north, towards


def to_sky(xi_deg: npt.ArrayLike, eta_deg: npt.ArrayLike, touching_ra_deg: float,
           touching_dec_deg: float) -> tuple[FloatArray, FloatArray]:
    """(ra, dec) in degrees, ra in [0, 360), of points of the plane."""
    xi = np.radians(np.asarray(xi_deg, dtype=np.float64))
    eta = np.radians(np.asarray(eta_deg, dtype=np.float64))
    sin0, cos0 = np.sin(np.radians(touching_dec_deg)), np.cos(np.radians(touching_dec_deg))
    inward = cos0 - eta * sin0
    ra = np.degrees(np.arctan2(xi, inward)) + touching_ra_deg
    dec = np.degrees(np.arctan2(sin0 + eta * cos0, np.hypot(xi, inward)))
    return np.mod(ra, 360.0), dec


def separation_deg(ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike, from_ra_deg: npt.ArrayLike,
                   from_dec_deg: npt.ArrayLike) -> FloatArray:
    """Angle on the sky between positions and one place (or as many), degrees; exact near 0 and 180 too."""
    east, north, towards = direction_cosines(ra_deg, dec_deg, from_ra_deg, from_dec_deg)
    return np.degrees(np.arctan2(np.hypot(east, north), towards))
