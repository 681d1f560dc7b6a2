"""Durations, kinds of frame, filters and time scales in the words that people and programs use."""

from datetime import UTC, date, datetime, timedelta

import erfa
import pytest
from astropy.time import Time
from astropy.utils import iers
from msgspec.structs import replace

from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Train
from sitegen.reading.capture_logs.durations import read_duration_s
from sitegen.reading.capture_logs.filter_names import match_filter, width_disagrees
from sitegen.reading.capture_logs.filter_words import may_be_one_filter
from sitegen.reading.capture_logs.frame_kind import frame_kind
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.time_scales import tai_minus_utc_s, utc_from
from sitegen.reading.capture_logs.unknown_filters import unknown_filter


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


@pytest.mark.parametrize("text", ["", "s", "5x", "m5", "1/0", "1//2", "5,5", "1:30", "five", "5m x", "--5", "nan", "inf",
                                  "3/" + "9" * 900, "9" * 900 + "x"])  # fmt: skip
def test_what_is_no_duration(text):
    """Doubted, never guessed."""
    with pytest.raises(ValueProblem, match=r"not a duration|no unit of time"):
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
    """Wordings of capture programs and observatories (common practice, no source)."""
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


def rig_with(*filters: Filter) -> Rig:
    train = Train(None, Telescope(None, None, None, 800.0), Camera(None, 3.76, 6248, 4176, "mono"))
    return Rig("x", "X", (train,), {each.short: each for each in filters})


HA = Filter("Ha", "Hydrogen alpha", "narrowband", (656.3,), 7.0)
HB, OIII = Filter("Hb", "H-beta", "narrowband", (486.1,), 8.5), Filter("OIII", "Oxygen", "narrowband", (500.7,), 6.5)
SII, LUM = Filter("S", "Sulphur", "narrowband", (672.4,), 3.0, ("old red", "S-alt")), Filter("L", "Whole light", "broadband")


@pytest.mark.parametrize(
    ("words", "short"),
    [
        ("Ha 7nm", "Ha"), ("H-alpha 7 nm", "Ha"), ("Ha 3nm", "Ha"), ("7nm Ha", "Ha"), ("Ha7", "Ha"), ("Ha3", None), ("Hα", "Ha"),
        ("Hβ", "Hb"), ("Hß 8.5nm", "Hb"), ("OIII-6.5 nm", "OIII"), ("OIII 6,5nm", "OIII"), ("O III", "OIII"), ("[O III]", "OIII"),
        ("SII_3nm", "S"), ("S2", "S"), ("S23nm", "S"), ("Old_Red", "S"), ("s alt", "S"), ("Clear", "L"), ("Luminanz", "L"),
        ("Ha wide", None), ("NII", None), ("NII 3nm", None), ("3nm", None), ("nm", None), ("Ha 3nm 7nm", None),
    ],
)  # fmt: skip
def test_spellings_of_filters(words, short):
    """Widths, Greek letters, and what the rig lists as another spelling (common practice, no source)."""
    assert match_filter(words, rig_with(HA, HB, OIII, SII, LUM)) == short


def test_of_two_filters_for_one_line_the_width_decides():
    """Without a width, or with one that neither has, none is guessed."""
    rig = rig_with(replace(HA, short="Ha3", name="Ha 3 nm", width_nm=3.0), replace(HA, short="Ha7", name="Ha 7 nm"))
    wanted = {"H-alpha 3nm": "Ha3", "Ha 7.0 nm": "Ha7", "Ha 7": "Ha7", "Hα": None, "Ha": None, "Ha 5nm": None}
    assert {words: match_filter(words, rig) for words in wanted} == wanted


def test_a_clear_filter_beside_a_luminance_filter_is_another():
    """Where the rig has one of them, both words mean it; where it has both, each means its own."""
    assert match_filter("clear", rig_with(LUM, Filter("C", "Clear glass", "broadband"))) == "C"
    assert match_filter("Lum", rig_with(LUM, Filter("C", "Clear glass", "broadband"))) == "L"
    assert match_filter("clear", rig_with(HA)) is None


def test_a_width_that_is_not_the_filters_is_told():
    """The frame counts, for there is no other filter of its line; a rig that lists the spelling has said that it is right."""
    assert width_disagrees("Ha 3nm", "Ha", rig_with(HA)) == (
        "'Ha 3nm' names a width of 3 nm, and the rig's filter 'Ha' has 7 nm",
        "write 'width_nm: 3' in the filter 'Ha' in rigs/x.yaml, or add another filter there with 'width_nm: 3'",
    )
    assert width_disagrees("Ha 3nm", "Ha", rig_with(replace(HA, spelt=("Ha 3 nm",)))) is None
    assert width_disagrees("OIII 7nm", "OIII", rig_with(OIII)) is None


@pytest.mark.parametrize(
    ("words", "remedy"),
    [
        ("Ha wide", "add 'spelt: [Ha wide]' to the filter 'Ha' in rigs/x.yaml"),
        ("Oxygem", "add 'spelt: [Oxygem]' to the filter 'OIII' in rigs/x.yaml"),
        ("Ha3", "add 'spelt: [Ha3]' to the filter 'Ha' in rigs/x.yaml"),
        ("[S II]", "add the line '\"[S II]\": {kind: narrowband, centre_nm: 672.4}' under 'filters' in rigs/x.yaml, "
         "or 'spelt: [\"[S II]\"]' to one of its filters: Ha, OIII"),
        ("x" * 101, "write the filter's short name into the log"),
    ],
)  # fmt: skip
def test_an_unknown_filter_names_the_line_to_add(words, remedy):
    """For the filter with the same passband or the nearest name; else the lines of a new one."""
    assert unknown_filter(words, rig_with(HA, OIII))[1] == remedy


@pytest.mark.parametrize(
    ("one", "other", "is_one"),
    [
        ("Ha", "H-alpha", True),
        ("O III", "[OIII]", True),
        ("Ha", "Ha 7nm", True),
        ("Ha 3nm", "Ha 7nm", False),
        ("Nebula X", "nebula-x", True),
        ("Nebula X", "Nebula Y", False),
        ("R", "G", False),
    ],
)
def test_two_names_of_one_filter(one, other, is_one):
    """Without a rig: of one exposure, as two programs wrote it (practice of the trade, no source)."""
    assert may_be_one_filter(one, other) is may_be_one_filter(other, one) is is_one


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
