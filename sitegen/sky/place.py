"""Where the observer stands."""

from msgspec import Struct


class Place(Struct, frozen=True):
    """A point on the WGS84 ellipsoid with the two numbers of its sky that the Moon model needs.

    latitude_deg: geodetic, north positive, -90 to 90.
    longitude_deg: east positive. 188.2 and -171.8 are one meridian a calendar day apart: give the
        one whose date the clocks of the place keep (see `night_time.evening_of`).
    elevation_m: above the ellipsoid. Rise and set ignore the dip of the horizon, as almanacs do.
    extinction_mag: V magnitudes per airmass; 0.25 suits a lowland garden (common practice, no source).
    sky_mag_arcsec2: V surface brightness of the moonless zenith; None where nobody measured it.
    horizon: (azimuth_deg from north through east, altitude_deg) of the obstructions, in any order;
        joined by straight lines and closed round the north point. Empty: a free horizon.
    """

    latitude_deg: float
    longitude_deg: float
    elevation_m: float = 0.0
    extinction_mag: float = 0.25
    sky_mag_arcsec2: float | None = None
    horizon: tuple[tuple[float, float], ...] = ()
