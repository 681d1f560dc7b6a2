"""The Moon of every night: how lit, when up, and what it leaves of the dark hours."""

from itertools import pairwise

import numpy as np

from sitegen.sky.answer import MoonNight
from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.crossings import Crossings, Curve, crossings
from sitegen.sky.darkness import Darkness
from sitegen.sky.earth_rotation import terrestrial_time
from sitegen.sky.moon import illuminated_fraction, phase_angle_deg, semidiameter_deg
from sitegen.sky.night_ephemeris import NightEphemeris
from sitegen.sky.night_time import moment_or_none, utc_moment
from sitegen.sky.phase import age_days, elongation_deg, phase_names
from sitegen.sky.refraction import HORIZON_REFRACTION_DEG
from sitegen.sky.solar_time import HALF_DAY_S

Span = tuple[float, float]


def moon_nights(
    ephemeris: NightEphemeris, times_s: Floats, altitude: Floats, dark: Darkness, middle_s: Floats
) -> list[MoonNight]:
    """One record a night, from the Moon's altitudes at times_s (N, 145), noon to noon."""
    lit, age, names = appearance(ephemeris, middle_s)
    limb = limb_curve(ephemeris)
    every = np.arange(len(times_s))[:, None]
    rises, sets = first_of_each(crossings(limb, times_s, limb(every, times_s)), len(times_s))
    moonless = moonless_spans(crossings(ephemeris.moon_altitude_deg, times_s, altitude), times_s, altitude)
    columns = zip(
        lit.tolist(), names, age.tolist(),
        zip(rises.tolist(), sets.tolist(), strict=True),
        zip(dark.dark[0].tolist(), dark.dark[1].tolist(), strict=True),
        moonless, strict=True,
    )  # fmt: skip
    return [moon_night(*night) for night in columns]


def appearance(ephemeris: NightEphemeris, middle_s: Floats) -> tuple[Floats, Floats, list[str]]:
    """Illuminated fraction and age at each night's middle, and the night's phase name."""
    night = np.arange(len(middle_s))

    def elongation(unix_s: Floats) -> Floats:
        return elongation_deg(ephemeris.moon(night, unix_s), ephemeris.sun(night, unix_s), ephemeris.to_ecliptic)

    angle = phase_angle_deg(ephemeris.moon(night, middle_s), ephemeris.sun(night, middle_s))
    age = age_days(terrestrial_time(middle_s), elongation(middle_s))
    noon = ephemeris.middle_s
    return illuminated_fraction(angle), age, phase_names(elongation(noon - HALF_DAY_S), elongation(noon + HALF_DAY_S))


def limb_curve(ephemeris: NightEphemeris) -> Curve:
    """Degrees of the refracted upper limb above the horizon, as almanacs define rise and set."""

    def curve(night: Indices, unix_s: Floats) -> Floats:
        seen = ephemeris.from_observer(night, unix_s, ephemeris.moon(night, unix_s))
        radius = semidiameter_deg(np.linalg.norm(seen, axis=-1))
        return np.asarray(ephemeris.altitude_deg(night, seen) + radius + HORIZON_REFRACTION_DEG)

    return curve


def first_of_each(crossings: Crossings, nights: int) -> tuple[Floats, Floats]:
    """First rise and first set of each night, whole unix seconds, NaN where there is none."""
    firsts = []
    for rising in (True, False):
        wanted = crossings.rising == rising
        row, at = np.unique(crossings.row[wanted], return_index=True)
        first = np.full(nights, np.nan)
        first[row] = np.rint(crossings.time_s[wanted][at])
        firsts.append(first)
    return firsts[0], firsts[1]


def moonless_spans(crossings: Crossings, times_s: Floats, altitude: Floats) -> list[list[Span]]:
    """For each night the spans, noon to noon, with the Moon's centre at or below 0 deg."""
    edges: list[list[float]] = [[] for _ in times_s]
    for row, time in zip(crossings.row.tolist(), np.rint(crossings.time_s).tolist(), strict=True):
        edges[row].append(time)
    return [
        downs(first, last, inside, moon_up)
        for first, last, inside, moon_up in zip(
            np.rint(times_s[:, 0]).tolist(), np.rint(times_s[:, -1]).tolist(), edges, (altitude[:, 0] > 0.0).tolist(), strict=True
        )
    ]


def downs(first: float, last: float, edges: list[float], up_at_first: bool) -> list[Span]:
    """Every second span between the edges, beginning with the first unless the Moon is up there."""
    spans = list(pairwise([first, *edges, last]))
    return spans[1::2] if up_at_first else spans[::2]


def moon_night(
    lit: float, name: str, age: float, rise_set: tuple[float, float], dark: tuple[float, float], moonless: list[Span]
) -> MoonNight:
    """The record, from plain values of one night."""
    dark_s = 0.0 if np.isnan(dark[0]) else dark[1] - dark[0]
    clipped = [(max(a, dark[0]), min(b, dark[1])) for a, b in moonless] if dark_s else []
    down = [(a, b) for a, b in clipped if b > a]
    down_s = sum((b - a for a, b in down), 0.0)
    return MoonNight(
        illuminated=lit,
        phase=name,
        age_days=age,
        rise=moment_or_none(rise_set[0]),
        set=moment_or_none(rise_set[1]),
        up_share_of_dark=1.0 - down_s / dark_s if dark_s else None,
        dark_and_moonless_s=down_s,
        moon_down=tuple((utc_moment(a), utc_moment(b)) for a, b in down),
    )
