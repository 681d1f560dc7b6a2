"""Durations, kinds of frame, filters and time scales in the words that people and programs use."""

from datetime import UTC, date, datetime, timedelta

import erfa
import pytest
from astropy.time import Time
from astropy.utils import iers

from sitegen.reading.capture_logs.durations import read_duration_s
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.capture_logs.frame_kind import frame_kind
from sitegen.reading.capture_logs.log_problems import Doubt
from sitegen.reading.capture_logs.time_scales import tai_minus_utc_s, utc_from


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("300", 300), ("0.5", 0.5), (".25", 0.25), ("1e2", 100), ("5m", 300), ("5 min", 300), ("90 s", 90), ("90sec", 90),
        ("1h", 3600),
        ("2 minutes", 120), ("1m30s", 90), ("1 h 30 min", 5400), ("1/250", 0.004), ("1/250 s", 0.004), ("250ms", 0.25),
        ("3/2", 1.5),
    ],
)  # fmt: skip
def test_durations(text, seconds):
    """Arithmetic of the units is the judge."""
    assert read_duration_s(text) == pytest.approx(seconds, rel=1e-12)


@pytest.mark.parametrize("text", ["", "s", "5x", "m5", "1/0", "1//2", "5,5", "1:30", "five", "5m x", "--5", "nan", "inf"])
def test_what_is_no_duration(text):
    """Doubted, never guessed."""
    with pytest.raises(Doubt, match=r"not a duration|no unit of time"):
        read_duration_s(text)


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("Light Frame", "light"), ("LIGHT", "light"), ("object", "light"), ("Science", "light"), ("Tricolor Image", "light"),
        ("Dark Frame", "dark"), ("dark", "dark"), ("Master Dark", "dark"), ("Flat Field", "flat"), ("SKY FLAT", "flat"),
        ("twilight flat", "flat"), ("Bias Frame", "bias"), ("zero", "bias"), ("Offset", "bias"), ("DarkFlat", "dark-flat"),
        ("flat_dark", "dark-flat"), ("dark-flat", "dark-flat"), ("focus", None), ("comp", None), ("", None),
    ],
)  # fmt: skip
def test_kinds_of_frame(words, kind):
    """Wordings of capture programs and observatories (references, section 7; the rest is common practice, no source)."""
    assert frame_kind(words) == kind


@pytest.mark.parametrize(
    ("words", "short"),
    [
        ("Ha", "Ha"), ("HA", "Ha"), ("H-alpha", "Ha"), ("Hα", "Ha"), ("H_Alpha", "Ha"), ("hydrogen alpha", "Ha"),
        ("[O III]", "OIII"),
        ("O3", "OIII"), ("oiii", "OIII"), ("Lum", "L"), ("Luminance", "L"), ("luminance filter", "L"), ("red", "R"),
        ("SII", None),
        ("", None), ("[]", None), ("Q", None),
    ],
)  # fmt: skip
def test_filters_by_their_other_names(rig, words, short):
    """Case, full names and other names of the passband lead to the rig's short name; nothing else does."""
    assert match_filter(words, rig) == short


def test_leap_seconds_are_those_of_erfa():
    """IERS Bulletin C as ERFA ships it, every step from 1972 on, before and after."""
    steps = [(date(int(row["year"]), int(row["month"]), 1), float(row["tai_utc"])) for row in erfa.leap_seconds.get()]
    for day, seconds in steps:
        if day.year >= 1972:
            assert tai_minus_utc_s(day) == seconds
            assert tai_minus_utc_s(day - timedelta(days=1)) in (seconds - 1, 10)


@pytest.mark.parametrize("scale", ["tai", "tt", "tdb", "ut1"])
def test_time_scales_agree_with_astropy(scale):
    """Within 0.9 s for UT1, whose difference is ignored, 3 ms for TDB, 1 µs else."""
    utc = Time("2020-05-06T07:08:09.5", scale="utc")
    with iers.conf.set_temp("auto_download", False):
        told = datetime.fromisoformat(getattr(utc, scale).isot).replace(tzinfo=UTC)
    tolerance_s = {"ut1": 0.9, "tdb": 3e-3}.get(scale, 2e-3)
    assert abs((utc_from(told, scale.upper()) - datetime(2020, 5, 6, 7, 8, 9, 500000, UTC)).total_seconds()) <= tolerance_s


def test_gps_time_runs_19_s_behind_tai():
    """GPS started at UTC in 1980, when TAI was 19 s ahead (IS-GPS-200)."""
    assert utc_from(datetime(2020, 1, 1, 0, 0, 18, 0, UTC), "GPS") == datetime(2020, 1, 1, tzinfo=UTC)
