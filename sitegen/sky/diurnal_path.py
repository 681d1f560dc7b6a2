"""A fixed direction carried across the sky by the Earth's rotation, in closed form."""

from datetime import datetime

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats
from sitegen.sky.night_time import Interval, utc_moment

SIDEREAL_RATE_RAD_S = 2.0 * np.pi * 1.00273781191135448 / 86400.0
SAMPLE_S = 60.0


class DiurnalPath(Struct, frozen=True):
    """One direction seen from one place in one night.

    declination_deg: apparent, of the night's date. hour_angle_deg: at the moment start_s (UTC unix
    seconds), west positive. horizon: as in Place. Error of an altitude within the day: 0.0002 deg.
    """

    latitude_deg: float
    declination_deg: float
    hour_angle_deg: float
    start_s: float
    horizon: tuple[tuple[float, float], ...] = ()

    def hour_angle_rad(self, unix_s: ArrayLike) -> Floats:
        """Hour angle, radians, not wrapped."""
        elapsed_s = np.asarray(unix_s, float) - self.start_s
        return np.asarray(np.radians(self.hour_angle_deg) + SIDEREAL_RATE_RAD_S * elapsed_s)

    def altitude_deg(self, unix_s: ArrayLike) -> Floats:
        """Airless altitude (Meeus, Astronomical Algorithms, eq. 13.6)."""
        return altitude_deg(self.latitude_deg, self.declination_deg, self.hour_angle_rad(unix_s))

    def azimuth_deg(self, unix_s: ArrayLike) -> Floats:
        """Azimuth from north through east, 0 to 360."""
        return azimuth_deg(self.latitude_deg, self.declination_deg, self.hour_angle_rad(unix_s))

    def clearance_deg(self, unix_s: ArrayLike, limit_deg: float) -> Floats:
        """Altitude above the higher of the limit and the horizon profile at the target's azimuth."""
        floor_deg = np.maximum(limit_deg, horizon_altitude_deg(self.horizon, self.azimuth_deg(unix_s)))
        return np.asarray(self.altitude_deg(unix_s) - floor_deg)

    def above(self, limit_deg: float, start: datetime, end: datetime) -> tuple[Interval, ...]:
        """Intervals of [start, end] with positive clearance; sampled every minute, good to a second."""
        first_s, last_s = start.timestamp(), end.timestamp()
        times_s = np.append(np.arange(first_s, last_s, SAMPLE_S), last_s)
        return positive_intervals(times_s, self.clearance_deg(times_s, limit_deg))


# Not erfa.hd2ae, which computes both angles: 10,000 altitudes take it 1.06 ms, 0.30 ms here.


def altitude_deg(latitude_deg: ArrayLike, declination_deg: ArrayLike, hour_angle_rad: ArrayLike) -> Floats:
    """Airless altitude from latitude, declination and hour angle (Meeus eq. 13.6), any shapes."""
    lat, dec = np.radians(latitude_deg), np.radians(declination_deg)
    sine = np.sin(lat) * np.sin(dec) + np.cos(lat) * np.cos(dec) * np.cos(hour_angle_rad)
    return np.asarray(np.degrees(np.arcsin(np.clip(sine, -1.0, 1.0))))


def azimuth_deg(latitude_deg: ArrayLike, declination_deg: ArrayLike, hour_angle_rad: ArrayLike) -> Floats:
    """Azimuth from north through east (Meeus eq. 13.5 counts from the south), any shapes."""
    lat, dec = np.radians(latitude_deg), np.radians(declination_deg)
    east = -np.cos(dec) * np.sin(hour_angle_rad)
    north = np.sin(dec) * np.cos(lat) - np.cos(dec) * np.cos(hour_angle_rad) * np.sin(lat)
    return np.asarray(np.degrees(np.arctan2(east, north)) % 360.0)


def horizon_altitude_deg(horizon: tuple[tuple[float, float], ...], azimuth: ArrayLike) -> Floats:
    """Altitude of the obstructions at each azimuth; -90 everywhere for a free horizon."""
    if not horizon:
        return np.full(np.shape(azimuth), -90.0)
    profile = np.array(horizon, float)
    return np.asarray(np.interp(np.asarray(azimuth, float), profile[:, 0], profile[:, 1], period=360.0))


def positive_intervals(times_s: Floats, values: Floats) -> tuple[Interval, ...]:
    """Intervals in which the piecewise linear curve through the samples lies above zero."""
    above = values > 0.0
    at = np.nonzero(above[1:] != above[:-1])[0]
    share = values[at] / (values[at] - values[at + 1])
    edges = list(times_s[at] + share * (times_s[at + 1] - times_s[at]))
    if above[0]:
        edges.insert(0, times_s[0])
    if above[-1]:
        edges.append(times_s[-1])
    pairs = zip(edges[::2], edges[1::2], strict=True)
    return tuple((utc_moment(a), utc_moment(b)) for a, b in pairs if round(b) > round(a))
