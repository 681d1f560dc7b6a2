"""Tables that instruments wrote beside the camera, reduced to each sub."""

import math
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from sitegen.diary.readings import Readings
from sitegen.reading.entry_series import Exposure, SeriesReading, SeriesRequest
from sitegen.reading.series_reading import read_all_series

START = datetime(2026, 9, 12, 12, 0, tzinfo=UTC)
ISO = "%Y-%m-%dT%H:%M:%SZ"
RISE = 2.0
"""Arcseconds by which a saw rises within a period; its RMS is that over the root of twelve."""


def request(folder: Path, text: str, name: str = "a.csv", **told: object) -> SeriesRequest:
    path = folder / name
    path.write_text(text, "utf-8")
    plain: dict[str, object] = {"columns": {}, "time_zone": None, "scale_arcsec_px": None, "ra_on_sky": True}
    return SeriesRequest(((path, name),), (name,), item_place=("entry.md", 9, 5), **{**plain, **told})  # type: ignore[arg-type]


def exposures(count: int = 1, length_s: float = 300.0, dec_deg: float | None = -60.0) -> list[Exposure]:
    start_s = START.timestamp()
    return [Exposure(start_s + 310 * number, start_s + 310 * number + length_s, dec_deg) for number in range(count)]


def guiding(ra: float = RISE, dec: float = 0.0, first_s: int = -20, last_s: int = 330, stamp: str = ISO) -> list[str]:
    """A row a second, each axis a saw with a period of 10 s."""
    rows = []
    for second in range(first_s, last_s):
        phase = (second % 10 + 0.5) / 10 - 0.5
        when = (START + timedelta(seconds=second)).strftime(stamp)
        rows.append(f"{when},{ra * phase:.4f},{dec * phase:.4f}")
    return rows


def saw_rms(rise: float) -> float:
    """Ten equal steps of a saw: rise × √((1 − 1/100)/12)."""
    return rise * math.sqrt((1 - 1 / 100) / 12)


def read(requests: list[SeriesRequest], of: list[Exposure] | None = None) -> SeriesReading:
    return read_all_series(requests, of if of is not None else exposures())


def only(reading: SeriesReading) -> Readings:
    assert reading.problems == ()
    (readings,) = reading.readings
    assert readings is not None
    return readings


def test_each_axis_is_reduced_to_its_sub(tmp_path: Path) -> None:
    """About the mean; the first of two subs is covered, the second is not."""
    table = "\n".join(["time,ra_arcsec,dec_arcsec", *guiding(dec=1.0)])
    first, second = read([request(tmp_path, table)], exposures(2)).readings
    assert second is None
    assert first is not None
    assert first.guiding_ra_rms_arcsec == pytest.approx(saw_rms(RISE), abs=0.01)
    assert first.guiding_dec_rms_arcsec == pytest.approx(saw_rms(1.0), abs=0.01)
    assert first.guiding_drift_arcsec_min == pytest.approx(0.0, abs=0.02)  # a saw of 30 periods leaves as much


def test_a_table_as_a_program_writes_it(tmp_path: Path) -> None:
    """Lines about itself first, semicolons, commas for points, its own headings, pixels, the wall clock, and rows of a dither."""
    rows = [row.replace(",", ";").replace(".", ",") + ";" for row in guiding(stamp="%Y-%m-%d %H:%M:%S")]
    local = [row.replace("12:", "21:", 1).replace(" 11:", " 20:", 1) for row in rows]
    wild = ["2026-09-12 21:02:00,5;90,0;90,0;dithering", "2026-09-12 21:02:10,5;-90,0;-90,0;Star Lost"]
    table = "\n".join(["Guider log", "Exposure = 1000 ms", "Timestamp;RA px;Dec px;Status", *local, *wild, ""])
    columns = {"time": "timestamp", "ra_px": "RA px", "dec_px": "Dec px", "state": "Status"}
    told = request(tmp_path, table, columns=columns, time_zone="Asia/Tokyo", scale_arcsec_px=3.0)
    assert only(read([told])).guiding_ra_rms_arcsec == pytest.approx(3 * saw_rms(RISE), abs=0.01)


def test_errors_in_hour_angle_shrink_with_the_declination(tmp_path: Path) -> None:
    """At 60° S by half; what moves has no declination here, and then nothing is said."""
    table = "\n".join(["time,ra_arcsec,dec_arcsec", *guiding()])
    told = request(tmp_path, table, ra_on_sky=False)
    assert only(read([told])).guiding_ra_rms_arcsec == pytest.approx(saw_rms(RISE) / 2, abs=0.01)
    assert read([told], exposures(dec_deg=None)).readings == (None,)


def test_several_files_count_together(tmp_path: Path) -> None:
    """A log that was begun anew in the midst of a sub."""
    halves = [guiding(last_s=150), guiding(first_s=150)]
    paths = []
    for number, rows in enumerate(halves):
        path = tmp_path / f"{number}.csv"
        path.write_text("\n".join(["time,ra_arcsec,dec_arcsec", *rows]), "utf-8")
        paths.append((path, path.name))
    whole = SeriesRequest(tuple(paths), ("0.csv", "1.csv"), {}, None, None, True, ("entry.md", 9, 5))
    assert only(read([whole])).guiding_ra_rms_arcsec == pytest.approx(saw_rms(RISE), abs=0.01)


def test_weather_is_read_between_its_rows(tmp_path: Path) -> None:
    """A station that reads every ten minutes: the straight line at the middle of the sub; each quantity by itself."""
    table = (
        "time\ttemperature_c\thumidity_percent\twind_m_s\n"
        "2026-09-12T11:57:30Z\t8.0\t\t2\n2026-09-12T12:07:30Z\t6.0\t80\t3\n2026-09-12T12:17:30Z\t6.0\t90\t\n"
    )
    assert only(read([request(tmp_path, table)])) == Readings(temperature_c=7.0, wind_m_s=2.5)


def test_a_long_pause_of_the_station_says_nothing(tmp_path: Path) -> None:
    """Nor does a time before its first row."""
    pause = "time,temperature_c\n2026-09-12T11:00:00Z,8\n2026-09-12T12:30:00Z,6\n"
    late = "time,temperature_c\n2026-09-12T12:04:00Z,8\n2026-09-12T12:30:00Z,6\n"
    assert read([request(tmp_path, pause)]).readings == (None,)
    assert read([request(tmp_path, late)]).readings == (None,)


@pytest.mark.parametrize("hours", [-1.0, 9.5])
def test_a_clock_that_cannot_be_right_is_told(tmp_path: Path, hours: float) -> None:
    """With the shift that mends it; the log is not used."""
    rows = [f"{(START + timedelta(hours=hours, minutes=10 * number)):%Y-%m-%dT%H:%M:%S},7" for number in range(-1, 3)]
    reading = read([request(tmp_path, "\n".join(["time,temperature_c", *rows]))])
    assert reading.readings == (None,)
    assert [str(problem) for problem in reading.problems] == [
        "entry.md:9:5: warning: the series covers none of this entry's subs; with its times moved by "
        f"{-hours:+g} h it would cover 1 of them: does 'time_zone' fit?"
    ]


def test_another_night_is_told_as_such(tmp_path: Path) -> None:
    """No shift of a clock mends it."""
    table = "time,temperature_c\n2026-08-01T12:00:00Z,8\n2026-08-01T13:00:00Z,6\n"
    (problem,) = read([request(tmp_path, table)]).problems
    assert str(problem) == "entry.md:9:5: warning: the series covers none of this entry's subs; are these its nights?"


@pytest.mark.parametrize(
    ("table", "sentence"),
    [
        ("when,ra\n2026-09-12T12:00:00Z,1\n", "a.csv:1:1: error: no line names a column of times and one of ra_arcsec"),
        ("", "a.csv:1:1: error: no line names a column of times"),
        ("time,temperature_c\n12:00,4\n", "a.csv:2:1: error: 'time' is '12:00', a time of day without a date"),
        ("time,temperature_c\nnow,4\n", "a.csv:2:1: error: 'time' is 'now', not a date and time"),
        ("time,temperature_c\n2026-02-30T12:00:00,4\n", "a.csv:2:1: error: 'time' is '2026-02-30T12:00:00', not a date and time"),
        ("time,temperature_c\n2026-09-12T12:00:00Z,mild\n", "a.csv:2:1: error: 'temperature_c' is 'mild', no number"),
        ("time,ra_px,dec_px\n2026-09-12T12:00:00Z,1,1\n", "entry.md:9:5: error: the guider's errors are in pixels"),
    ],
)
def test_what_cannot_be_read_is_told(tmp_path: Path, table: str, sentence: str) -> None:
    """With its place, and nothing is made of it."""
    reading = read([request(tmp_path, table)])
    assert reading.readings == (None,)
    assert str(reading.problems[0]).startswith(sentence)


def test_a_heading_that_is_nearly_right_is_asked_about(tmp_path: Path) -> None:
    """By the name that the author gave it."""
    table = "Time stamp,RA\n2026-09-12T12:00:00Z,1\n"
    (problem,) = read([request(tmp_path, table, columns={"time": "Timestamp", "ra_arcsec": "RA"})]).problems
    assert problem.remedy == "did you mean 'Time stamp'?"


def test_the_hour_that_comes_twice_and_offsets(tmp_path: Path) -> None:
    """Bare times by a zone that changes its clock, and times with offsets, are the same moments."""
    bare = "time,temperature_c\n2026-10-04 01:50:00,8\n2026-10-04 03:10:00,6\n"
    told = "time,temperature_c\n2026-10-04T01:50:00+09:30,8\n2026-10-04T03:10:00+10:30,6\n"
    middle = datetime(2026, 10, 3, 16, 30, tzinfo=UTC).timestamp()
    for table, zone in ((bare, "Australia/Adelaide"), (told, None)):
        reading = read([request(tmp_path, table, time_zone=zone)], [Exposure(middle - 60, middle + 60, None)])
        assert only(reading) == Readings(temperature_c=7.0)


WEATHER = "time,temperature_c\n2026-09-12T11:57:30Z,8\n2026-09-12T12:07:30Z,6\n"
BETWEEN = Readings(temperature_c=7.0)


def test_a_byte_order_mark_is_told_and_the_table_is_read(tmp_path: Path) -> None:
    """A warning loses no table."""
    reading = read([request(tmp_path, f"\ufeff{WEATHER}")])
    assert reading.readings == (BETWEEN,)
    assert [problem.severity for problem in reading.problems] == ["warning"]


def test_notes_between_the_rows_are_left_out(tmp_path: Path) -> None:
    """Lines of one cell, as guiders write them."""
    noted = WEATHER.replace("\n2026-09-12T12:07", "\nINFO: the dome was closed\n2026-09-12T12:07")
    assert only(read([request(tmp_path, noted)])) == BETWEEN


@pytest.mark.parametrize(
    "table",
    [
        WEATHER.replace("Z,", "Z ,"),
        "time,temperature_c\n2026-09-12T21:57:30,8\n2026-09-12T12:07:30Z,6\n",
        "time,temperature_c\n2026-09-12 11:57:30+00:00,8\n2026-09-12T22:07:30,6\n",
    ],
    ids=["blanks behind", "a wall clock and UTC", "an offset and a wall clock"],
)
def test_a_time_that_says_its_clock_is_taken_at_its_word(tmp_path: Path, table: str) -> None:
    """Whatever zone the others keep, ten hours east here."""
    assert only(read([request(tmp_path, table, time_zone="Australia/Brisbane")])) == BETWEEN


def night(first_s: int, last_s: int, offset_s: int = 0, columns: str = "ra_arcsec,dec_arcsec") -> str:
    """A reading of a minute each."""
    cells = ",0.5" * (columns.count(",") + 1)
    rows = [f"{START + timedelta(seconds=second + offset_s):%Y-%m-%dT%H:%M:%S}{cells}" for second in range(first_s, last_s, 60)]
    return "\n".join([f"time,{columns}", *rows])


def test_a_clock_an_hour_off_is_told_though_most_subs_are_covered(tmp_path: Path) -> None:
    """Sixty subs of five hours: a guider's table an hour late misses those of the first hour."""
    subs = exposures(60)
    (problem,) = read([request(tmp_path, night(-60, 18_700, offset_s=3600))], subs).problems
    assert problem.wrong == "the series covers 49 of the 60 subs of its nights"
    assert problem.remedy == "with its times moved by -1 h it would cover 60 of them: does 'time_zone' fit?"


@pytest.mark.parametrize(
    ("first_s", "last_s", "columns"),
    [
        (-60, 18_700, "ra_arcsec,dec_arcsec"),
        (9_000, 18_700, "ra_arcsec,dec_arcsec"),
        (-60, 9_000, "ra_arcsec,dec_arcsec"),
        (-14_400, 12_000, "temperature_c"),
    ],
    ids=["all night", "from midnight", "to midnight", "a station from the afternoon on that ends early"],
)
def test_a_table_that_only_begins_late_or_ends_early_is_let_be(tmp_path: Path, first_s: int, last_s: int, columns: str) -> None:
    """No other clock would have it cover them all, or nothing says that it should."""
    assert read([request(tmp_path, night(first_s, last_s, columns=columns))], exposures(60)).problems == ()
