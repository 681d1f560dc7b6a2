"""Altitudes and directions of Moon and target in one night: over its subs, and from sunset to sunrise."""

from collections.abc import Sequence

import numpy as np

from sitegen.facts.views import NightView
from sitegen.sky.arrays import Floats

Altitudes = Sequence[float]
Directed = list[tuple[float, str]]
"""Altitude in degrees, and the half of the sky: 'E' or 'W', for a fixed target also 'N' or 'S' ('NE')."""
MARGIN_S = 1800.0
# Nearer than this to north, south, east or west, neither half is said: 0.2 is the sine of 12°.
LEAST_PART = 0.2


def moon_of_subs(night: NightView) -> Altitudes:
    """At mid-exposure of every light frame; empty where the site is hidden."""
    altitudes = [light.moon_altitude_deg for light in night.lights]
    return [altitude for altitude in altitudes if altitude is not None]


def moon_all_night(night: NightView) -> Altitudes:
    if night.sky is None:
        return []
    return [float(altitude) for altitude in night.sky.curve.moon_altitude_deg[_dark(night)]]


def moon_directed(night: NightView, all_night: bool) -> Directed:
    """While subs were taken, half an hour more on both sides, or from sunset to sunrise."""
    if night.sky is None or not night.lights:
        return []
    curve = night.sky.curve
    rising = np.gradient(curve.moon_altitude_deg)
    steepest = float(np.abs(rising).max()) or 1.0
    chosen = _chosen(night, all_night)
    return [
        (float(altitude), "E" if slope > LEAST_PART * steepest else "W" if slope < -LEAST_PART * steepest else "")
        for altitude, slope in zip(curve.moon_altitude_deg[chosen], rising[chosen], strict=True)
    ]


def target_directed(night: NightView, all_night: bool) -> Directed:
    """As of the Moon; empty without a fixed target."""
    if night.sky is None or night.target_sky is None or night.target_sky.path is None or not night.lights:
        return []
    times_s = night.sky.curve.times_s[_chosen(night, all_night)]
    path = night.target_sky.path
    azimuths = np.radians(path.azimuth_deg(times_s))
    return [
        (float(altitude), _half(float(np.cos(azimuth)), "N", "S") + _half(float(np.sin(azimuth)), "E", "W"))
        for altitude, azimuth in zip(path.altitude_deg(times_s), azimuths, strict=True)
    ]


def _half(part: float, positive: str, negative: str) -> str:
    return positive if part > LEAST_PART else negative if part < -LEAST_PART else ""


def _chosen(night: NightView, all_night: bool) -> Floats:
    if all_night:
        return _dark(night)
    times_s = night.sky.curve.times_s if night.sky else np.empty(0)
    first = night.lights[0].sub.start.timestamp() - MARGIN_S
    last = max(light.sub.end.timestamp() for light in night.lights) + MARGIN_S
    return np.asarray((times_s >= first) & (times_s <= last))


def _dark(night: NightView) -> Floats:
    """With the Sun down."""
    curve = night.sky.curve if night.sky else None
    return np.asarray(curve.sun_altitude_deg < 0) if curve is not None else np.empty(0, bool)
