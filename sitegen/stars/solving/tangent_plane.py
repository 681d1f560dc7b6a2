"""The gnomonic projection in degrees: sky positions to the plane that touches the sky at one point, and back; computed by ERFA.

Calabretta & Greisen (2002), A&A 395, 1077, section 5.1.3 (TAN). xi grows to the east, eta to the north. Exact to rounding error.
"""

from typing import TypeAlias

# Not astropy.wcs: every page of a solved picture asks for its place, and astropy.wcs takes 0.5 s of processor to load, half of
# what a changed sentence may take. erfa takes 0.01 s, and the facts have loaded it. 257 places: erfa 19 µs, astropy.wcs 44 µs.
import erfa
import numpy as np
import numpy.typing as npt

FloatArray: TypeAlias = npt.NDArray[np.float64]


def to_plane(ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike, touching_ra_deg: npt.ArrayLike,
             touching_dec_deg: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
    """(xi, eta) in degrees of sky positions of any one shape; NaN for the half of the sky that faces away."""
    # the bare ufunc tells of each star behind by a status; erfa.tpxes warns of them all
    xi, eta, status = erfa.ufunc.tpxes(*_radians(ra_deg, dec_deg, touching_ra_deg, touching_dec_deg))
    return np.degrees(np.where(status == 0, xi, np.nan)), np.degrees(np.where(status == 0, eta, np.nan))


def to_sky(xi_deg: npt.ArrayLike, eta_deg: npt.ArrayLike, touching_ra_deg: npt.ArrayLike,
           touching_dec_deg: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
    """(ra, dec) in degrees, ra in [0, 360), of points of the plane."""
    ra, dec = erfa.tpsts(*_radians(xi_deg, eta_deg, touching_ra_deg, touching_dec_deg))
    return np.degrees(ra) % 360.0, np.degrees(dec)


def directions(ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike) -> FloatArray:
    """Unit vectors (count, 3) of sky positions."""
    return np.asarray(erfa.s2c(*_radians(ra_deg, dec_deg)))


def _radians(*angles_deg: npt.ArrayLike) -> list[FloatArray]:
    return [np.radians(np.asarray(angle, dtype=np.float64)) for angle in angles_deg]
