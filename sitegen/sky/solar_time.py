"""The mean solar day at a longitude, for one moment: without arrays, whose library takes as long to load as a log to read."""

from datetime import date, datetime, timedelta
from functools import lru_cache

DAY_S = 86400.0
HALF_DAY_S = 43200.0
SECONDS_PER_DEGREE = 240.0


def evening_at(moment: datetime, longitude_deg: float) -> date:
    """`night_time.evening_of` for one moment in UTC."""
    return (moment + _solar_shift(longitude_deg)).date()


@lru_cache(maxsize=64)
def _solar_shift(longitude_deg: float) -> timedelta:
    """Thousands of frames of one place ask for it."""
    return timedelta(seconds=SECONDS_PER_DEGREE * longitude_deg - HALF_DAY_S)
