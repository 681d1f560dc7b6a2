"""Local times across the nights on which the clock is changed. Judge: the IANA database.

Australia/Adelaide puts its clocks back from +10:30 to +09:30 on 2026-04-05 at 03:00, and forward on 2026-10-04 at 02:00.
"""

from datetime import UTC, datetime

import pytest

HEAD = "start,exposure_s,filter\n"
ADELAIDE = "Australia/Adelaide"


def table(*times: str, exposure: str = "300") -> str:
    return HEAD + "".join(f"{time},{exposure},L\n" for time in times)


def utc(reading) -> list[str]:
    assert all(sub.start.tzinfo is UTC for sub in reading.subs)
    return [sub.start.strftime("%d %H:%M") for sub in reading.subs]


def lines_of(reading):
    return [str(problem) for problem in reading.problems]


def test_bare_times_are_utc_unless_the_log_says_otherwise(read):
    """And an offset in the text wins over both."""
    rows = table("2026-04-18 21:00", "2026-04-18T21:30Z", "2026-04-18T22:00+02:00")
    assert utc(read("a.csv", rows)) == ["18 21:00", "18 21:30", "18 20:00"]
    assert utc(read("a.csv", rows, time_zone=ADELAIDE)) == ["18 11:30", "18 21:30", "18 20:00"]


def test_an_hour_that_came_twice_is_settled_by_the_order_of_rows(read):
    """The clock's time runs back between the second and the third row: there the clock was put back."""
    times = ["2026-04-05 02:10", "2026-04-05 02:50", "2026-04-05 02:20", "2026-04-05 03:10"]
    reading = read("a.csv", table(*times), time_zone=ADELAIDE)
    assert utc(reading) == ["04 15:40", "04 16:20", "04 16:50", "04 17:40"]
    assert reading.problems == ()


def test_a_log_with_the_newest_row_first_is_settled_as_well(read):
    """Its order decides just the same."""
    times = ["2026-04-05 01:10", "2026-04-05 02:10", "2026-04-05 02:50", "2026-04-05 02:20", "2026-04-05 03:10"]
    reading = read("a.csv", table(*times[::-1]), time_zone=ADELAIDE)
    assert utc(reading)[::-1] == ["04 14:40", "04 15:40", "04 16:20", "04 16:50", "04 17:40"]
    assert reading.problems == ()


def test_a_neighbour_in_utc_settles_it(read):
    """A row with an offset that ends after the first pass leaves only the second."""
    reading = read("a.csv", table("2026-04-05T02:45:00+10:30", "2026-04-05 02:10"), time_zone=ADELAIDE)
    assert (utc(reading), reading.problems) == (["04 16:15", "04 16:40"], ())


def test_exposures_settle_what_starts_alone_do_not(read):
    """Ninety minutes of exposure from 01:30 end when the first 02:30 is past."""
    rows = f"{HEAD}2026-04-05 01:30,5400,L\n2026-04-05 02:30,60,L\n"
    reading = read("a.csv", rows, time_zone=ADELAIDE)
    assert (utc(reading), reading.problems) == (["04 15:00", "04 17:00"], ())


def test_an_exposure_that_runs_past_the_next_start_tells_of_the_change(read):
    """02:05 and 40 minutes end at 02:45: the 02:30 after it is the second of that night."""
    reading = read("a.csv", table("2026-04-05 02:05", "2026-04-05 02:30", exposure="40 min"), time_zone=ADELAIDE)
    assert (utc(reading), reading.problems) == (["04 15:35", "04 17:00"], ())


def test_what_the_order_leaves_open_is_said(read):
    """The first pass is taken, and the line tells how to write the other."""
    times = ["2026-04-05 01:30", "2026-04-05 02:10", "2026-04-05 02:20", "2026-04-05 03:30"]
    reading = read("a.csv", table(*times), time_zone=ADELAIDE)
    assert utc(reading) == ["04 15:00", "04 15:40", "04 15:50", "04 18:00"]
    assert lines_of(reading) == [
        "logs/a.csv:3:1: warning: 2026-04-05 02:10:00 came twice that night; taken as the first time (so for 2 rows from here); "
        "write the offset, as in 2026-04-05T02:10:00+10:30"
    ]


def test_an_hour_that_ran_back_twice_is_nobodys(read):
    """No order of passes explains it: it is said, not guessed in silence."""
    times = ["2026-04-05 02:40", "2026-04-05 02:10", "2026-04-05 02:50", "2026-04-05 02:20"]
    assert [problem.severity for problem in read("a.csv", table(*times), time_zone=ADELAIDE).problems] == ["warning"]


def test_a_time_that_the_clock_skipped_is_an_error(read):
    """Its row is not counted; its neighbours are."""
    reading = read("a.csv", table("2026-10-04 01:50", "2026-10-04 02:30", "2026-10-04 03:05"), time_zone=ADELAIDE)
    assert utc(reading) == ["03 16:20", "03 16:35"]
    assert lines_of(reading) == [
        "logs/a.csv:3:1: error: 2026-10-04 02:30:00 does not exist in Australia/Adelaide: the clock was put forward over it; "
        "write the time with its offset, or in UTC with a Z"
    ]


def test_a_zone_nobody_knows(read):
    """Is told in the entry, where it is written."""
    assert lines_of(read("a.csv", table("2026-10-04 01:50"), time_zone="Mars/Olympus")) == [
        "entries/e.md:7:5: error: 'Mars/Olympus' is no time zone; name it as in Europe/Athens"
    ]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("2026-04-18T21:03:12.25Z", datetime(2026, 4, 18, 21, 3, 12, 250000, UTC)),
        ("20260418T210312Z", datetime(2026, 4, 18, 21, 3, 12, 0, UTC)),
        ("2026-04-18 21:03", datetime(2026, 4, 18, 21, 3, 0, 0, UTC)),
        ("2026-04-18T21:03:12-0330", datetime(2026, 4, 19, 0, 33, 12, 0, UTC)),
        ("2026-04-18T21:03:12.123456789Z", datetime(2026, 4, 18, 21, 3, 12, 123456, UTC)),
    ],
)
def test_forms_of_iso_8601(read, text, wanted):
    """Extended and basic, with fractions and offsets."""
    assert [sub.start for sub in read("a.csv", table(text)).subs] == [wanted]
