"""When the Sun is down, and when the night is dark."""

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.crossings import refine, vertex
from sitegen.sky.night_ephemeris import NightEphemeris
from sitegen.sky.solar_time import DAY_S, HALF_DAY_S
from sitegen.sky.sun import DARK_ALTITUDE_DEG, NAUTICAL_ALTITUDE_DEG, RISE_ALTITUDE_DEG

STEP_S = 600.0
MARGIN_STEPS = 6
NIGHT_STEPS = round(DAY_S / STEP_S)


class Darkness(Struct, frozen=True, eq=False):
    """Whole unix seconds (N,) of the ends of each interval, NaN where there is none.

    sun_down may lack one end, or reach an hour outside the night; dark and nautical have both ends
    or neither and are cut to the night.
    """

    sun_down: tuple[Floats, Floats]
    nautical: tuple[Floats, Floats]
    dark: tuple[Floats, Floats]
    never_sets: NDArray[np.bool_]


def sample_times_s(ephemeris: NightEphemeris) -> Floats:
    """Every ten minutes from an hour before each night to an hour after it, (N, 157)."""
    steps = np.arange(-MARGIN_STEPS, NIGHT_STEPS + MARGIN_STEPS + 1)
    return np.asarray(ephemeris.middle_s[:, None] - HALF_DAY_S + STEP_S * steps)


def within_night(samples: Floats) -> Floats:
    """The part of margin-wide samples (N, 157) that runs noon to noon, (N, 145)."""
    return samples[:, MARGIN_STEPS : MARGIN_STEPS + NIGHT_STEPS + 1]


def darkness(ephemeris: NightEphemeris, times_s: Floats, sun_altitude: Floats) -> Darkness:
    """The Sun's nights from its altitudes at `sample_times_s`."""
    lowest_s, lowest_deg = lowest_point(ephemeris, times_s, sun_altitude)

    def below(limit_deg: float) -> tuple[Floats, Floats]:
        return interval_below(ephemeris, times_s, sun_altitude, lowest_s, lowest_deg, limit_deg)

    start, end = below(RISE_ALTITUDE_DEG)
    return Darkness(
        sun_down=(np.where(np.isinf(start), np.nan, start), np.where(np.isinf(end), np.nan, end)),
        nautical=cut_to_night(ephemeris, *below(NAUTICAL_ALTITUDE_DEG)),
        dark=cut_to_night(ephemeris, *below(DARK_ALTITUDE_DEG)),
        never_sets=lowest_deg >= RISE_ALTITUDE_DEG,
    )


def lowest_point(ephemeris: NightEphemeris, times_s: Floats, altitude: Floats) -> tuple[Floats, Floats]:
    """Time and altitude of the Sun's lowest point, true solar midnight; never between samples."""
    night = np.arange(len(times_s))
    at = np.clip(np.argmin(altitude, axis=1), 1, times_s.shape[1] - 2)
    lowest_s = vertex(times_s, altitude, night, at)
    return lowest_s, ephemeris.sun_altitude_deg(night, lowest_s)


def interval_below(
    ephemeris: NightEphemeris, times_s: Floats, altitude: Floats, lowest_s: Floats, lowest_deg: Floats, limit_deg: float
) -> tuple[Floats, Floats]:
    """Ends of the interval round the lowest point with the Sun below the limit, whole seconds.

    NaN where it stays above; minus or plus infinity where it is below up to that end of the samples.
    """
    above, later = altitude >= limit_deg, times_s > lowest_s[:, None]
    step = np.arange(times_s.shape[1])
    last_before = np.where(above & ~later, step, -1).max(axis=1)
    first_after = np.where(above & later, step, step.size).min(axis=1)
    start, end = np.full(len(times_s), -np.inf), np.full(len(times_s), np.inf)
    start[lowest_deg >= limit_deg] = end[lowest_deg >= limit_deg] = np.nan

    def fill(edge: Floats, at: Indices) -> None:
        row = np.nonzero((at >= 0) & (at < step.size) & (lowest_deg < limit_deg))[0]
        if row.size:
            outside = times_s[row, at[row]]
            inside = np.clip(lowest_s[row], outside - STEP_S, outside + STEP_S)
            edge[row] = np.rint(refine(lambda i, t: ephemeris.sun_altitude_deg(i, t) - limit_deg, row, outside, inside))

    fill(start, last_before)
    fill(end, first_after)
    return start, end


def cut_to_night(ephemeris: NightEphemeris, start: Floats, end: Floats) -> tuple[Floats, Floats]:
    """The part of each interval between noon and noon; NaN stays."""
    noon = np.rint(ephemeris.middle_s - HALF_DAY_S)
    return np.clip(start, noon, noon + DAY_S), np.clip(end, noon, noon + DAY_S)
