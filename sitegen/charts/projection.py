"""The sky on paper, as it is seen from inside: equal areas stay equal, north is up and east to the left."""

import numpy as np
import numpy.typing as npt
from msgspec import Struct

Array = npt.NDArray[np.float64]


class SkyMap(Struct, frozen=True):
    """Zenithal equal-area projection around a place (Lambert 1772; Calabretta & Greisen 2002, A&A 395, 1077, section 5.1.7, ZEA).

    `units_deg` units of the panel to a degree at the centre. At the pole of a map of a hemisphere, `ra_deg` points down in
    the north and up in the south.
    """

    ra_deg: float
    dec_deg: float
    units_deg: float

    def place(self, ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike) -> tuple[Array, Array]:
        """Panel coordinates, x to the right (west), y up (north). The point opposite the centre lies on the rim."""
        ra, dec = np.radians(np.asarray(ra_deg, float) - self.ra_deg), np.radians(np.asarray(dec_deg, float))
        centre = np.radians(self.dec_deg)
        cosine = np.sin(centre) * np.sin(dec) + np.cos(centre) * np.cos(dec) * np.cos(ra)
        stretch = self.units_deg * np.degrees(np.sqrt(2.0 / np.maximum(1.0 + cosine, 1e-9)))
        east = np.cos(dec) * np.sin(ra)
        north = np.cos(centre) * np.sin(dec) - np.sin(centre) * np.cos(dec) * np.cos(ra)
        return -stretch * east, stretch * north

    def distance_deg(self, ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike) -> Array:
        """Great-circle distance from the centre."""
        ra, dec = np.radians(np.asarray(ra_deg, float) - self.ra_deg), np.radians(np.asarray(dec_deg, float))
        centre = np.radians(self.dec_deg)
        half = np.sin((dec - centre) / 2) ** 2 + np.cos(centre) * np.cos(dec) * np.sin(ra / 2) ** 2
        distance: Array = np.degrees(2.0 * np.arcsin(np.sqrt(np.clip(half, 0.0, 1.0))))
        return distance

    def radius(self, distance_deg: float) -> float:
        """How far from the map's middle such a distance lies, in units."""
        return float(self.units_deg * np.degrees(2.0 * np.sin(np.radians(distance_deg) / 2.0)))


def from_tangent(ra_deg: float, dec_deg: float, east_deg: Array, north_deg: Array) -> tuple[Array, Array]:
    """ICRS degrees of points on the plane that touches the sky at a place, as a camera sees it: offsets are the tangents of
    angles, times 180/pi (gnomonic projection; Calabretta & Greisen 2002, section 5.1.3)."""
    xi, eta = np.radians(east_deg), np.radians(north_deg)
    sine, cosine = np.sin(np.radians(dec_deg)), np.cos(np.radians(dec_deg))
    ra = np.arctan2(xi, cosine - eta * sine)
    dec = np.arctan2((sine + eta * cosine) * np.cos(ra), cosine - eta * sine)
    return ra_deg + np.degrees(ra), np.degrees(dec)
