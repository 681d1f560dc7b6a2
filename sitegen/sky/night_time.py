"""Which night a moment belongs to: local MEAN SOLAR noon to the next, named by its evening's date.

Mean solar time is UTC plus four minutes a degree of longitude, so neither a daylight-saving change
nor the equation of time nor a time zone's politics can split a night or give one two names.
"""

from datetime import UTC, date, datetime, timedelta

import numpy as np
from numpy.typing import ArrayLike, NDArray

from sitegen.sky.solar_time import DAY_S, HALF_DAY_S, SECONDS_PER_DEGREE

EPOCH = date(1970, 1, 1)

Interval = tuple[datetime, datetime]


def evening_of(unix_s: ArrayLike, longitude_deg: ArrayLike) -> NDArray[np.datetime64]:
    """Date of the evening whose night holds each moment (UTC unix seconds), as datetime64[D].

    The noon itself opens the new night. Beyond 180 degrees the date runs on: 188.2 names a night by
    the date kept west of the date line, -171.8 by the date kept east of it.
    """
    local_s = np.asarray(unix_s, float) + SECONDS_PER_DEGREE * np.asarray(longitude_deg, float)
    days = np.floor((local_s - HALF_DAY_S) / DAY_S).astype(np.int64)
    return days.astype("datetime64[D]")


def night_start_s(evening: date, longitude_deg: float) -> float:
    """UTC unix seconds of the local mean solar noon that opens the night."""
    return (evening - EPOCH).days * DAY_S + HALF_DAY_S - SECONDS_PER_DEGREE * longitude_deg


def midnight_s(evening: date, longitude_deg: float) -> float:
    """UTC unix seconds of the local mean solar midnight, the middle of the night."""
    return night_start_s(evening, longitude_deg) + HALF_DAY_S


def utc_moment(unix_s: float) -> datetime:
    """The aware UTC moment nearest to the whole second; works before 1970 too."""
    return datetime(1970, 1, 1, tzinfo=UTC) + timedelta(seconds=round(unix_s))


def moment_or_none(unix_s: float) -> datetime | None:
    """The moment of `utc_moment`; None for anything but a finite number."""
    return utc_moment(unix_s) if np.isfinite(unix_s) else None
