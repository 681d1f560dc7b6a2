"""Sun and Moon through many nights at once: a short polynomial a night, and the observer beneath it.

Each night has its own axes: the celestial intermediate system (CIRS) of its mean midnight, in which the sky
turns evenly with the Earth rotation angle. Held over the night are precession-nutation (moves 0.06 arcsec),
the Earth's velocity (0.2 arcsec of aberration) and UT1-UTC (0.02 arcsec). Left out are polar motion (0.3
arcsec), diurnal aberration (0.3), light deflection (0.01 beyond 20 deg from the Sun) and the deflection of
the vertical. Interpolation adds under 0.02 arcsec; the Moon's series itself errs by 10. A night that holds
a leap second is up to one second (15 arcsec) off on the far side of it.
"""

from collections.abc import Callable, Sequence
from datetime import date

import erfa
import numpy as np
from msgspec import Struct

from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.diurnal_path import SIDEREAL_RATE_RAD_S
from sitegen.sky.earth_rotation import earth_rotation_angle, terrestrial_time
from sitegen.sky.moon import apparent_moon
from sitegen.sky.night_time import midnight_s
from sitegen.sky.place import Place
from sitegen.sky.sun import apparent_sun, earth_velocity

HALF_SPAN_S = 14 * 3600.0
"""The polynomials hold from two hours before the night to two hours after it."""
SUN_NODES = 3
MOON_NODES = 5
WGS84 = 1


class NightEphemeris(Struct, frozen=True, eq=False):
    """N nights. Shapes: (N,) but for to_cirs and to_ecliptic (N, 3, 3), earth_velocity (N, 3, of light),
    and the coefficients sun_km (N, 3, 3) and moon_km (N, 5, 3), rising powers of the scaled time.

    turn_rad: angle from the CIRS x axis to the local meridian at middle_s. across_km, polar_km: the
    observer's distance from the Earth's axis and from its equator. to_ecliptic: from CIRS to the mean ecliptic.
    """

    middle_s: Floats
    turn_rad: Floats
    latitude_deg: Floats
    across_km: Floats
    polar_km: Floats
    to_cirs: Floats
    to_ecliptic: Floats
    earth_velocity: Floats
    sun_km: Floats
    moon_km: Floats

    def sun(self, night: Indices, unix_s: Floats) -> Floats:
        """Apparent geocentric Sun in km, axes of the night; (..., 3) for night and unix_s that broadcast."""
        return along(self.sun_km, night, self.scaled(night, unix_s))

    def moon(self, night: Indices, unix_s: Floats) -> Floats:
        """Apparent geocentric Moon in km, axes of the night; (..., 3)."""
        return along(self.moon_km, night, self.scaled(night, unix_s))

    def scaled(self, night: Indices, unix_s: Floats) -> Floats:
        """Time from -1 to 1 over the span of the night's polynomials."""
        return np.asarray((unix_s - self.middle_s[night]) / HALF_SPAN_S)

    def direction(self, night: Indices, icrs: Floats) -> Floats:
        """Apparent unit vectors (..., 3), axes of the night, of ICRS unit vectors: aberration, then rotation."""
        aberrated = icrs + self.earth_velocity[night]
        aberrated /= np.linalg.norm(aberrated, axis=-1, keepdims=True)
        return np.asarray(erfa.rxp(self.to_cirs[night], aberrated))

    def meridian_angle(self, night: Indices, unix_s: Floats) -> Floats:
        """Angle in radians from the night's x axis eastward to the local meridian."""
        return np.asarray(self.turn_rad[night] + SIDEREAL_RATE_RAD_S * (unix_s - self.middle_s[night]))

    def to_meridian(self, night: Indices, unix_s: Floats, vector: Floats) -> Floats:
        """The vector (..., 3) on axes turned with the Earth: to the meridian, to the east, to the pole."""
        return turned(vector, self.meridian_angle(night, unix_s))

    def from_observer(self, night: Indices, unix_s: Floats, vector_km: Floats) -> Floats:
        """Geocentric km (..., 3) on the night's axes to topocentric km on the meridian's axes."""
        return from_surface(self.to_meridian(night, unix_s, vector_km), self.across_km[night], self.polar_km[night])

    def altitude_deg(self, night: Indices, topocentric: Floats) -> Floats:
        """Airless altitude of a topocentric vector (..., 3) on the meridian's axes."""
        return altitude_of(topocentric, self.latitude_deg[night])

    def sun_altitude_deg(self, night: Indices, unix_s: Floats) -> Floats:
        """Airless topocentric altitude of the Sun's centre."""
        return self.altitude_deg(night, self.from_observer(night, unix_s, self.sun(night, unix_s)))

    def moon_altitude_deg(self, night: Indices, unix_s: Floats) -> Floats:
        """Airless topocentric altitude of the Moon's centre."""
        return self.altitude_deg(night, self.from_observer(night, unix_s, self.moon(night, unix_s)))


def turned(vector: Floats, angle_rad: Floats) -> Floats:
    """Vector (..., 3) on axes turned about the third one, counter-clockwise by the angle."""
    cosine, sine = np.cos(angle_rad), np.sin(angle_rad)
    x, y = vector[..., 0], vector[..., 1]
    return np.stack([x * cosine + y * sine, y * cosine - x * sine, np.broadcast_to(vector[..., 2], cosine.shape)], axis=-1)


def from_surface(meridian_km: Floats, across_km: Floats, polar_km: Floats) -> Floats:
    """Parallax: geocentric to topocentric, on the meridian's axes (Meeus, Astronomical Algorithms, ch. 40)."""
    return np.stack([meridian_km[..., 0] - across_km, meridian_km[..., 1], meridian_km[..., 2] - polar_km], axis=-1)


def altitude_of(topocentric: Floats, latitude_deg: Floats) -> Floats:
    """Altitude above the ellipsoid's horizon of vectors (..., 3) on the meridian's axes, degrees."""
    lat = np.radians(latitude_deg)
    up = np.cos(lat) * topocentric[..., 0] + np.sin(lat) * topocentric[..., 2]
    north = np.cos(lat) * topocentric[..., 2] - np.sin(lat) * topocentric[..., 0]
    return np.asarray(np.degrees(np.arctan2(up, np.hypot(north, topocentric[..., 1]))))


def along(coefficients: Floats, night: Indices, scaled: Floats) -> Floats:
    """The polynomials (N, powers, 3) of those nights at the scaled times, by Horner's rule; (..., 3)."""
    x = scaled[..., None]
    value = coefficients[night, -1] * np.ones_like(x)
    for power in range(coefficients.shape[1] - 2, -1, -1):
        value *= x
        value += coefficients[night, power]
    return np.asarray(value)


def prepare(places: Sequence[Place], nights: Sequence[tuple[int, date]]) -> NightEphemeris:
    """The ephemeris of those nights: (index into places, date of the evening) each."""
    where = np.array([index for index, _ in nights], dtype=np.int64)
    middle_s = np.array([midnight_s(evening, places[index].longitude_deg) for index, evening in nights], float)
    longitude = np.array([place.longitude_deg for place in places], float)
    latitude = np.array([place.latitude_deg for place in places], float)
    across_km, polar_km = surface_km(latitude, np.array([place.elevation_m for place in places], float))
    tt = terrestrial_time(middle_s)
    to_cirs = cirs_axes(tt)
    return NightEphemeris(
        middle_s=middle_s,
        turn_rad=earth_rotation_angle(middle_s) + np.radians(longitude[where]),
        latitude_deg=latitude[where],
        across_km=across_km[where],
        polar_km=polar_km[where],
        to_cirs=to_cirs,
        to_ecliptic=erfa.ecm06(*tt) @ np.swapaxes(to_cirs, -1, -2),
        earth_velocity=earth_velocity(tt),
        sun_km=fitted(apparent_sun, tt, to_cirs, SUN_NODES),
        moon_km=fitted(apparent_moon, tt, to_cirs, MOON_NODES),
    )


def surface_km(latitude_deg: Floats, elevation_m: Floats) -> tuple[Floats, Floats]:
    """Distances of an observer from the Earth's axis and (signed, north positive) from its equator, WGS84."""
    xyz_m = erfa.gd2gc(WGS84, np.zeros_like(latitude_deg), np.radians(latitude_deg), elevation_m)
    return np.asarray(xyz_m[..., 0] / 1000.0), np.asarray(xyz_m[..., 2] / 1000.0)


def cirs_axes(tt: tuple[float, Floats]) -> Floats:
    """Rotation matrices (N, 3, 3) from GCRS to CIRS: precession-nutation IAU 2000B, good to 0.001 arcsec."""
    x, y, locator = erfa.xys00b(*tt)
    return np.asarray(erfa.c2ixys(x, y, locator))


def fitted(body: Callable[[tuple[float, Floats]], Floats], tt: tuple[float, Floats], axes: Floats, nodes: int) -> Floats:
    """Coefficients (N, nodes, 3) of the polynomial through the body at Chebyshev nodes of each night."""
    at = np.cos(np.pi * (np.arange(nodes) + 0.5) / nodes)
    epoch, days = tt
    positions = body((epoch, days[:, None] + at * HALF_SPAN_S / 86400.0)) @ np.swapaxes(axes, -1, -2)
    return np.asarray(np.linalg.inv(np.vander(at, increasing=True)) @ positions)
