"""Times of a header in another scale than UTC, brought to UTC.

Names of the scales: FITS Standard 4.0, section 9.2.1, with the older GMT, UT, IAT, TDT and ET.
TAI − UTC: IERS Bulletin C, all steps from 1972 to 2017.
"""

from bisect import bisect_right
from datetime import date, datetime, timedelta

_STEPS = (
    (date(1972, 1, 1), 10),
    (date(1972, 7, 1), 11),
    *((date(year, 1, 1), year - 1961) for year in range(1973, 1981)),
    (date(1981, 7, 1), 20),
    (date(1982, 7, 1), 21),
    (date(1983, 7, 1), 22),
    (date(1985, 7, 1), 23),
    (date(1988, 1, 1), 24),
    (date(1990, 1, 1), 25),
    (date(1991, 1, 1), 26),
    (date(1992, 7, 1), 27),
    (date(1993, 7, 1), 28),
    (date(1994, 7, 1), 29),
    (date(1996, 1, 1), 30),
    (date(1997, 7, 1), 31),
    (date(1999, 1, 1), 32),
    (date(2006, 1, 1), 33),
    (date(2009, 1, 1), 34),
    (date(2012, 7, 1), 35),
    (date(2015, 7, 1), 36),
    (date(2017, 1, 1), 37),
)
_STEP_DAYS = [day for day, _ in _STEPS]

TT_MINUS_TAI_S = 32.184
GPS_MINUS_TAI_S = -19.0
# UT1 stays within 0.9 s of UTC and TDB within 2 ms of TT: both differences vanish in a log.
AS_UTC = frozenset({"UTC", "UT", "UT1", "GMT", "Z", "ZULU"})
_MINUS_TAI_S = {"TAI": 0.0, "IAT": 0.0, "TT": TT_MINUS_TAI_S, "TDT": TT_MINUS_TAI_S, "ET": TT_MINUS_TAI_S, "TDB": TT_MINUS_TAI_S}
_MINUS_TAI_S |= {"GPS": GPS_MINUS_TAI_S}
KNOWN_SCALES = AS_UTC | set(_MINUS_TAI_S)


def tai_minus_utc_s(day: date) -> int:
    """Whole seconds; 10 before 1972, when UTC ran otherwise."""
    return _STEPS[max(bisect_right(_STEP_DAYS, day) - 1, 0)][1]


def utc_from(moment: datetime, scale: str) -> datetime:
    """A moment of one of `KNOWN_SCALES` as UTC, both without a zone; close to a leap second it may be a second off."""
    if scale in AS_UTC:
        return moment
    tai = moment - timedelta(seconds=_MINUS_TAI_S[scale])
    return tai - timedelta(seconds=tai_minus_utc_s(tai.date()))
