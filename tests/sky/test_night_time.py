"""Which night a moment belongs to."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from sitegen.sky.night_time import evening_of, midnight_s, moment_or_none, night_start_s, utc_moment
from sitegen.sky.place import Place
from tests.sky.asking import night_at, unix


def evening(text: str, longitude_deg: float) -> date:
    """The evening's date of one moment."""
    return evening_of(unix(text), longitude_deg).item()


def test_the_utc_date_may_differ_from_the_evenings() -> None:
    """Past UTC midnight a European night keeps its evening's date; before it an American dusk has yesterday's."""
    assert evening("2026-04-19T01:30", 10.0) == date(2026, 4, 18)
    assert evening("2026-04-19T01:30", -120.0) == date(2026, 4, 18)
    assert evening("2026-04-19T13:00", 150.0) == date(2026, 4, 19)


def test_noon_opens_the_night() -> None:
    """The moment of mean noon belongs to the new night, the second before it to the old one."""
    start = night_start_s(date(2026, 4, 18), 18.5)
    assert evening_of([start - 1.0, start, start + 86399.0], 18.5).tolist() == [
        date(2026, 4, 17), date(2026, 4, 18), date(2026, 4, 18),
    ]  # fmt: skip


@pytest.mark.parametrize("longitude", np.arange(-180.0, 180.1, 7.5))
def test_every_longitude_has_its_evening(longitude: float) -> None:
    """At mean midnight, wherever it is, the night bears the date it was asked for."""
    for day in (date(1969, 7, 20), date(2026, 1, 1), date(2028, 2, 29)):
        assert evening_of(midnight_s(day, longitude), longitude).item() == day


def test_the_date_line_parts_two_dates() -> None:
    """Two gardens a mile apart across the date line see one night under two dates."""
    moment = "2026-06-15T10:00"
    assert evening(moment, 179.99) == date(2026, 6, 15)
    assert evening(moment, -179.99) == date(2026, 6, 14)


def test_longitudes_beyond_the_date_line_keep_its_western_date() -> None:
    """A place at -171.8 whose clocks keep the date west of the line is asked for at 188.2, and has the same sky."""
    assert evening("2026-06-15T10:00", 188.2) == date(2026, 6, 15)
    assert evening("2026-06-15T10:00", -171.8) == date(2026, 6, 14)
    west, east = night_at(Place(-13.8, 188.2), "2026-06-15"), night_at(Place(-13.8, -171.8), "2026-06-14")
    assert west.sunset == east.sunset
    assert west.moon.illuminated == pytest.approx(east.moon.illuminated, abs=1e-9)


def test_daylight_saving_changes_no_night() -> None:
    """Through the night in which the clocks change, every hour of local time lands in one and the same night."""
    zone = ZoneInfo("Europe/Berlin")
    for change in (date(2026, 3, 28), date(2026, 10, 24)):
        first = datetime(change.year, change.month, change.day, 18, tzinfo=zone).astimezone(UTC)
        moments = [(first + timedelta(minutes=15 * i)).timestamp() for i in range(4 * 12)]
        assert {day.item() for day in evening_of(moments, 10.0)} == {change}
        assert {(first + timedelta(minutes=15 * i)).astimezone(zone).utcoffset() for i in range(4 * 12)} == {
            timedelta(hours=1), timedelta(hours=2),
        }  # fmt: skip


def test_arrays_of_longitudes() -> None:
    """Moments and longitudes of equal length go pairwise."""
    days = evening_of([unix("2026-06-15T10:00")] * 2, [179.99, -179.99])
    assert days.dtype == np.dtype("datetime64[D]")
    assert days.tolist() == [date(2026, 6, 15), date(2026, 6, 14)]


def test_moments_are_rounded_to_the_second() -> None:
    """Fractions round to the nearest second, before 1970 too; what is not a number is no moment."""
    assert utc_moment(0.6) == datetime(1970, 1, 1, 0, 0, 1, tzinfo=UTC)
    assert utc_moment(-86400.4) == datetime(1969, 12, 31, tzinfo=UTC)
    assert moment_or_none(float("nan")) is None
    assert moment_or_none(float("inf")) is None
