"""Every fixed target through its nights: transit, highest point in the dark, curve."""

from collections.abc import Sequence

import erfa
import numpy as np
from msgspec import Struct

from sitegen.sky.airmass import airmass
from sitegen.sky.answer import TargetNight
from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.darkness import Darkness
from sitegen.sky.diurnal_path import SIDEREAL_RATE_RAD_S, DiurnalPath, altitude_deg
from sitegen.sky.moon import angle_deg
from sitegen.sky.night_ephemeris import NightEphemeris
from sitegen.sky.night_time import utc_moment
from sitegen.sky.place import Place
from sitegen.sky.solar_time import HALF_DAY_S

SIDEREAL_DAY_S = 2.0 * np.pi / SIDEREAL_RATE_RAD_S
HOURS_KINDS = (None, "sun down", "nautical", "dark")


class Paths(Struct, frozen=True, eq=False):
    """Pairs of night and direction as columns (P,): latitude, declination, hour angle at the opening noon."""

    latitude_deg: Floats
    declination_deg: Floats
    hour_angle_rad: Floats
    noon_s: Floats

    def altitude_deg(self, unix_s: Floats) -> Floats:
        """Airless altitude at one time a pair (P,) or at several (T, P)."""
        hour_angle = self.hour_angle_rad + SIDEREAL_RATE_RAD_S * (unix_s - self.noon_s)
        return altitude_deg(self.latitude_deg, self.declination_deg, hour_angle)

    def transit_s(self) -> Floats:
        """First upper culmination since the opening noon."""
        return np.asarray(self.noon_s + (-self.hour_angle_rad % (2.0 * np.pi)) / SIDEREAL_RATE_RAD_S)


def target_nights(
    ephemeris: NightEphemeris,
    pairs: Indices,
    icrs: Floats,
    places: Sequence[Place],
    times_s: Floats,
    dark: Darkness,
    middle_s: Floats,
) -> list[TargetNight]:
    """One record a pair (P, 2) of night and direction; icrs unit vectors, times_s (N, 145), places and middles one a night."""
    night, direction = pairs[:, 0], pairs[:, 1]
    paths = paths_of(ephemeris, night, icrs[direction])
    kind, start, end = judged_hours(dark)
    highest = highest_deg(paths, start[night], end[night])
    air = airmass(highest)
    separation = moon_separation_deg(ephemeris, night, middle_s[night], icrs[direction])
    curve = paths.altitude_deg(times_s[night].T).T
    transit = paths.transit_s()
    return [
        TargetNight(
            transit=utc_moment(transit[i]),
            hours_kind=HOURS_KINDS[kind[n]],
            hours=(utc_moment(start[n]), utc_moment(end[n])) if kind[n] else None,
            max_altitude_deg=known(highest[i]),
            min_airmass=known(air[i]),
            moon_separation_deg=float(separation[i]),
            altitude_deg=curve[i],
            path=path_record(paths, i, places[n]),
        )
        for i, n in enumerate(night.tolist())
    ]


def paths_of(ephemeris: NightEphemeris, night: Indices, icrs: Floats) -> Paths:
    """Columns of the pairs of nights (P,) and ICRS unit vectors (P, 3)."""
    ra_rad, dec_rad = erfa.c2s(ephemeris.direction(night, icrs))
    noon_s = ephemeris.middle_s[night] - HALF_DAY_S
    return Paths(
        latitude_deg=ephemeris.latitude_deg[night],
        declination_deg=np.degrees(dec_rad),
        hour_angle_rad=ephemeris.meridian_angle(night, noon_s) - ra_rad,
        noon_s=noon_s,
    )


def moon_separation_deg(ephemeris: NightEphemeris, night: Indices, unix_s: Floats, icrs: Floats) -> Floats:
    """Topocentric angle between ICRS unit vectors (P, 3) and the Moon, one moment a pair."""
    target = ephemeris.to_meridian(night, unix_s, ephemeris.direction(night, icrs))
    return angle_deg(target, ephemeris.from_observer(night, unix_s, ephemeris.moon(night, unix_s)))


def judged_hours(dark: Darkness) -> tuple[Indices, Floats, Floats]:
    """For each night the index into HOURS_KINDS and both ends of the best darkness it has, else 0 and NaN."""
    nights = len(dark.never_sets)
    kind, start, end = np.zeros(nights, dtype=np.int64), np.full(nights, np.nan), np.full(nights, np.nan)
    for rank, (first, last) in enumerate((dark.sun_down, dark.nautical, dark.dark), start=1):
        has = ~(np.isnan(first) | np.isnan(last))
        kind[has], start[has], end[has] = rank, first[has], last[has]
    return kind, start, end


def highest_deg(paths: Paths, start_s: Floats, end_s: Floats) -> Floats:
    """Greatest altitude between two moments: at an upper culmination between them, else at an end."""
    turns = np.ceil((start_s - paths.transit_s()) / SIDEREAL_DAY_S)
    culmination_s = paths.transit_s() + turns * SIDEREAL_DAY_S
    candidates_s = np.stack([start_s, end_s, np.where(culmination_s <= end_s, culmination_s, end_s)])
    return np.asarray(paths.altitude_deg(candidates_s).max(axis=0))


def path_record(paths: Paths, index: int, place: Place) -> DiurnalPath:
    """One pair as a record of its own."""
    return DiurnalPath(
        latitude_deg=float(paths.latitude_deg[index]),
        declination_deg=float(paths.declination_deg[index]),
        hour_angle_deg=float(np.degrees(paths.hour_angle_rad[index])),
        start_s=float(paths.noon_s[index]),
        horizon=place.horizon,
    )


def known(value: float) -> float | None:
    """A plain float; None for NaN."""
    return None if np.isnan(value) else float(value)
