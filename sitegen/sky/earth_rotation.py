"""Clocks: from UTC to the ephemerides' TT and to the Earth's rotation, from tables installed with astropy."""

from functools import cache

import erfa
import numpy as np
from astropy_iers_data import IERS_A_FILE

from sitegen.sky.arrays import Floats
from sitegen.sky.night_time import utc_moment
from sitegen.sky.solar_time import DAY_S, SECONDS_PER_DEGREE

UNIX_EPOCH_JD = 2440587.5
UNIX_EPOCH_MJD = 40587.0
TT_MINUS_TAI_S = 32.184
UTC_KEEPS_WITHIN_S = 0.9
_WIDTHS = (7, 8, 43, 10, 86, 11)  # up to the date, MJD, up to UT1-UTC of Bulletin A, itself, up to Bulletin B's, itself
DEGREES_PER_SECOND = 1.0 / SECONDS_PER_DEGREE


@cache
def leap_seconds() -> tuple[Floats, Floats]:
    """UTC unix seconds since which each value of TAI-UTC (whole seconds) has held, from 1972."""
    table = erfa.leap_seconds.get()
    table = table[table["year"] >= 1972]
    months = (table["year"] - 1970) * 12 + table["month"] - 1
    since = months.astype("datetime64[M]").astype("datetime64[s]").astype(float)
    return since, np.asarray(table["tai_utc"], float)


@cache
def ut1_table() -> tuple[Floats, Floats]:
    """UTC unix seconds at 0h of each day and UT1-UTC there, in seconds; measured, then predicted.

    Read from the table the installed package carries; nothing is ever fetched. Bulletin B where it has spoken, else Bulletin A,
    by the columns of the IERS readme.finals2000A; astropy's own reader gives the same and takes a second.
    """
    days, quick, final = np.genfromtxt(IERS_A_FILE, delimiter=_WIDTHS, usecols=(1, 3, 5), unpack=True)
    offset = np.where(np.isnan(final), quick, final)
    measured = ~np.isnan(offset)
    return (days[measured] - UNIX_EPOCH_MJD) * DAY_S, np.asarray(offset[measured], float)


def terrestrial_time(unix_s: Floats) -> tuple[float, Floats]:
    """TT as a two-part Julian date: the unix epoch, and days since. Before 1972 TAI-UTC stays 10 s."""
    since, tai_utc = leap_seconds()
    row = np.maximum(np.searchsorted(since, unix_s, side="right") - 1, 0)
    return UNIX_EPOCH_JD, np.asarray((unix_s + tai_utc[row] + TT_MINUS_TAI_S) / DAY_S)


def ut1_minus_utc_s(unix_s: Floats) -> Floats:
    """UT1-UTC in seconds, interpolated between the table's days; outside it the nearest value is held.

    The whole seconds are taken out before interpolating, so that a leap second does not smear over a day.
    """
    times_s, offset_s = ut1_table()
    since, tai_utc = leap_seconds()
    steps = tai_utc[np.maximum(np.searchsorted(since, times_s, side="right") - 1, 0)]
    here = tai_utc[np.maximum(np.searchsorted(since, unix_s, side="right") - 1, 0)]
    inside = np.interp(unix_s, times_s, offset_s - steps) + here
    return np.where(unix_s > times_s[-1], offset_s[-1], np.where(unix_s < times_s[0], offset_s[0], inside))


def earth_rotation_angle(unix_s: Floats) -> Floats:
    """Earth rotation angle in radians (IAU 2000), 0 to 2 pi."""
    ut1_s = unix_s + ut1_minus_utc_s(unix_s)
    return np.asarray(erfa.era00(UNIX_EPOCH_JD, ut1_s / DAY_S))


def table_note(unix_s: Floats) -> str | None:
    """One sentence where moments lie outside the table, with the size of the error; else None."""
    times_s, offset_s = ut1_table()
    late, early = int(np.sum(unix_s > times_s[-1])), int(np.sum(unix_s < times_s[0]))
    if not late + early:
        return None
    held = offset_s[-1] if late else offset_s[0]
    error_s = UTC_KEEPS_WITHIN_S + abs(float(held))
    side = f"after {utc_moment(times_s[-1]):%Y-%m-%d}" if late else f"before {utc_moment(times_s[0]):%Y-%m-%d}"
    return (
        f"{late + early} of {unix_s.size} nights lie {side}, outside the installed table of the Earth's rotation: "
        f"rise, set and transit may be off by {error_s:.1f} s, altitudes by {error_s * DEGREES_PER_SECOND:.3f} deg"
    )
