"""The Moon, a planet, or what a table follows, through one night: transit, highest point in the dark, curve."""

from collections.abc import Sequence

import numpy as np

from sitegen.sky.airmass import airmass
from sitegen.sky.answer import TargetNight
from sitegen.sky.arrays import Floats
from sitegen.sky.bodies import MOON, body_looks, body_seen
from sitegen.sky.body import Body
from sitegen.sky.darkness import Darkness
from sitegen.sky.moon import angle_deg
from sitegen.sky.night_ephemeris import NightEphemeris
from sitegen.sky.night_time import utc_moment
from sitegen.sky.target_nights import HOURS_KINDS, judged_hours, known

FINE = 289
"""So many samples over the judged hours: five minutes of a whole day, in which a culmination bends by 0.01 deg."""


def body_nights(
    ephemeris: NightEphemeris, pairs: Sequence[tuple[int, Body]], times_s: Floats, dark: Darkness, middle_s: Floats
) -> list[TargetNight]:
    """One record a pair of night and body."""
    kind, start, end = judged_hours(dark)
    nights = []
    for night, body in pairs:
        seen = _seen(ephemeris, night, times_s[night], body)
        transit_s = first_transit_s(times_s[night], seen)
        highest = _highest_deg(ephemeris, night, start[night], end[night], body)
        air = float(airmass(np.array([np.nan if highest is None else highest]))[0])
        nights.append(
            TargetNight(
                transit=None if transit_s is None else utc_moment(transit_s),
                hours_kind=HOURS_KINDS[kind[night]],
                hours=(utc_moment(start[night]), utc_moment(end[night])) if kind[night] else None,
                max_altitude_deg=highest,
                min_airmass=known(air),
                moon_separation_deg=_from_moon_deg(ephemeris, night, middle_s[night], body),
                altitude_deg=_altitude_deg(ephemeris, night, seen),
                path=None,
                body=body_looks(ephemeris, night, float(middle_s[night]), body),
            )
        )
    return nights


def first_transit_s(times_s: Floats, seen: Floats) -> float | None:
    """When the hour angle first passes through 0, interpolated; None where it does not: the Moon skips a day a month. `seen` is
    (T, 3), on the meridian's axes."""
    hour_angle = -np.arctan2(seen[:, 1], seen[:, 0])
    for index in range(len(times_s) - 1):
        before, after = float(hour_angle[index]), float(hour_angle[index + 1])
        if before <= 0 < after and after - before < 1:
            return float(times_s[index] + (times_s[index + 1] - times_s[index]) * -before / (after - before))
    return None


def _seen(ephemeris: NightEphemeris, night: int, unix_s: Floats, body: Body) -> Floats:
    return body_seen(ephemeris, np.full(len(unix_s), night), unix_s, body)


def _altitude_deg(ephemeris: NightEphemeris, night: int, seen: Floats) -> Floats:
    return ephemeris.altitude_deg(np.full(len(seen), night), seen)


def _highest_deg(ephemeris: NightEphemeris, night: int, start_s: float, end_s: float, body: Body) -> float | None:
    """None without such hours, and where a table does not hold all of them."""
    if np.isnan(start_s):
        return None
    fine_s = np.linspace(start_s, end_s, FINE)
    return known(float(_altitude_deg(ephemeris, night, _seen(ephemeris, night, fine_s, body)).max()))


def _from_moon_deg(ephemeris: NightEphemeris, night: int, unix_s: float, body: Body) -> float:
    moment = np.array([unix_s])
    return float(angle_deg(_seen(ephemeris, night, moment, body), _seen(ephemeris, night, moment, MOON))[0])
