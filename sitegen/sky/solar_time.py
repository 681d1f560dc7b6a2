"""The mean solar day at a longitude, for one moment: without arrays, whose library takes as long to load as a log to read."""

from datetime import date, datetime, timedelta

DAY_S = 86400.0
HALF_DAY_S = 43200.0
SECONDS_PER_DEGREE = 240.0


def evening_at(moment: datetime, longitude_deg: float) -> date:
    """`night_time.evening_of` for one moment in UTC."""
    return (moment + timedelta(seconds=SECONDS_PER_DEGREE * longitude_deg - HALF_DAY_S)).date()
