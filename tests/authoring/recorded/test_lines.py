"""Text logs by pattern: invented lines of the kinds that capture programs write; common practice, no source."""

from pathlib import Path

import pytest

from sitegen.authoring.recorded.line_patterns import MOST_WAYS, line_pattern, line_patterns
from sitegen.authoring.recorded.recorded_files import RecordedRequest, read_recorded
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.recorded.table_by_example import RecordedReading
from sitegen.problems import DiaryProblems
from sitegen.reading.capture_logs.request import LogRequest
from tests.authoring.conftest import TODAY

START = "{start:%H:%M:%S} begin {exposure_s} s, filter {filter}"
END = "{end:%H:%M:%S} saved {file}"
THROWN = "{discarded:%H:%M:%S} rejected {file} ({reason})"
LOG = """Session
21:00:00 begin 300 s, filter Ha
21:05:01 saved M_001.fits
23:58:00 begin 300.5 s, filter Ha
00:03:01 saved M_002.fits
00:03:20 rejected C:\\night\\M_001.fits (cloud)
00:04:00 guiding lost
00:05:00 begin 300 s, filter OIII
"""


def read(text: str, folder: Path, *patterns: str, name: str = "2026-04-18.log", memory: ShapeMemory | None = None,
         zone: str | None = None) -> RecordedReading:  # fmt: skip
    path = folder / name
    path.write_text(text, encoding="utf-8")
    request = LogRequest(path, name, name, None, None, None, None, zone, (name, 1, 1), TODAY)
    return read_recorded(request, RecordedRequest({}, line_patterns(patterns), memory or ShapeMemory(None)))


def told(reading: RecordedReading) -> list[tuple[str, float, str | None, bool, str | None]]:
    return [(f"{sub.start:%d %H:%M:%S}", sub.exposure_s, sub.filter, sub.kept, sub.reason) for sub in reading.subs]


def test_start_end_and_thrown_away(tmp_path: Path) -> None:
    """A frame is thrown away by its name, whatever its path; times run on over midnight; the date is in the file's name."""
    reading = read(LOG, tmp_path, START, END, THROWN)
    assert reading.problems == ()
    assert told(reading) == [
        ("18 21:00:00", 300, "Ha", False, "cloud"),
        ("18 23:58:00", 300.5, "Ha", True, None),
        ("19 00:05:00", 300, "OIII", True, None),
    ]  # fmt: skip
    assert reading.told == (
        "its lines begin on 2026-04-18, as '2026-04-18' says, and run on to 2026-04-19",
        "2 lines match no pattern",
    )


def test_the_date_of_the_first_line(tmp_path: Path) -> None:
    """Where the name has none."""
    reading = read(LOG.replace("Session", "Session of 18.04.2026"), tmp_path, START, END, name="night.log")
    assert told(reading)[0][0] == "18 21:00:00"
    refused = read(LOG, tmp_path, START, END, name="night.log")
    assert [problem.wrong for problem in refused.problems] == ["no line and no name of the file tells the date"]


def test_a_first_line_of_another_date_is_refused(tmp_path: Path) -> None:
    """Neither is believed."""
    refused = read(LOG.replace("Session", "Session of 19.04.2026"), tmp_path, START)
    assert refused.subs == ()
    assert "different dates: 2026-04-18 and 2026-04-19" in refused.problems[0].wrong


def test_after_midnight_under_a_name_is_asked(tmp_path: Path) -> None:
    """00:10 in 2026-04-18.log may be of the 18th or the 19th."""
    refused = read("00:10:00 begin 300 s, filter Ha\n", tmp_path, START)
    assert refused.subs == ()
    assert refused.problems[0].remedy == "say which: --columns dates=calendar, or --columns dates=evening"


def test_settings_and_dates_hold_for_what_follows(tmp_path: Path) -> None:
    """Lines that only name a filter, or a date; the exposure is from start to end where no line tells it."""
    text = "== 2026-04-18 ==\nfilter wheel: OIII\n21:00:00 shutter open\n21:05:00 shutter closed\n"
    text += "== 2026-04-20 ==\n01:00:00 shutter open\n"
    text += "01:02:00 shutter closed\n"
    reading = read(text, tmp_path, "== {date:%Y-%m-%d} ==", "filter wheel: {filter}", "{start:%H:%M:%S} shutter open",
                   "{end:%H:%M:%S} shutter closed", name="night.log")  # fmt: skip
    assert told(reading) == [("18 21:00:00", 300, "OIII", True, None), ("20 01:00:00", 120, "OIII", True, None)]


def test_only_ends_are_told(tmp_path: Path) -> None:
    """The start is the end less the exposure."""
    reading = read("2026-04-18 21:05:00 stored 300s Ha\n", tmp_path, "{end:%Y-%m-%d %H:%M:%S} stored {exposure_s}s {filter}",
                   name="night.log")  # fmt: skip
    assert told(reading) == [("18 21:00:00", 300, "Ha", True, None)]


def test_a_frame_that_never_ended_is_told(tmp_path: Path) -> None:
    """Nobody knows how long it was."""
    text = "21:00:00 shutter open\n21:05:00 shutter closed\n21:06:00 shutter open\n"
    reading = read(text, tmp_path, "{start:%H:%M:%S} shutter open",
                   "{end:%H:%M:%S} shutter closed")  # fmt: skip
    assert len(reading.subs) == 1
    assert "1 frames were begun and never ended, and no line tells their exposure: not counted" in reading.told


def test_patterns_are_remembered(tmp_path: Path) -> None:
    """The next log of that kind needs none."""
    memory = ShapeMemory(tmp_path)
    read(LOG, tmp_path, START, END, THROWN, memory=memory)
    memory.save()
    again = read(LOG, tmp_path, name="2026-04-20.log", memory=ShapeMemory(tmp_path))
    assert told(again)[0] == ("20 21:00:00", 300, "Ha", False, "cloud")
    assert again.told[0].startswith("its lines are read as before, by ")


def test_the_clock_may_be_named(tmp_path: Path) -> None:
    """Berlin is two hours before UTC in April."""
    reading = read(LOG, tmp_path, START, zone="Europe/Berlin")
    assert told(reading)[0][0] == "18 19:00:00"
    assert reading.subs[0].clock == "Europe/Berlin"


@pytest.mark.parametrize(
    ("pattern", "sentence"),
    [
        ("{strat:%H:%M} …", "'{strat}' is no field of a line; did you mean 'start'"),
        ("{start", "is no pattern"),
        ("{start:%H:%M}{filter}", "two fields follow each other with nothing between"),
        ("begin", "names no field"),
        ("{end:} saved", "in '{end:} saved' the field 'end' has no format behind its colon; write {end} or {end:%H:%M:%S}"),
        ("{start!r} s", "in '{start!r} s' the field 'start' has no format behind its colon"),
        ("{start:q}", "is no pattern"),
    ],
)
def test_a_pattern_that_is_none_is_told(pattern: str, sentence: str) -> None:
    """Before any file is opened."""
    with pytest.raises(DiaryProblems) as refused:
        line_pattern(pattern)
    assert sentence in str(refused.value.problems[0])


def test_a_log_without_patterns_asks_for_one(tmp_path: Path) -> None:
    """With what such a pattern looks like."""
    refused = read(LOG, tmp_path)
    assert [str(problem) for problem in refused.problems] == [
        "2026-04-18.log:1:1: error: is read as a text log, and no pattern says how; say what a line looks like, as in "
        "--lines '{start:%H:%M:%S} … {exposure_s} s … {filter}'"
    ]


def test_a_hostile_line_costs_nothing(tmp_path: Path) -> None:
    """A line that the words of a pattern fit in a hundred thousand ways is left out, and counted; the others are read."""
    pattern = line_pattern("{start:%H:%M:%S} {} {} {} {} {} {exposure_s} s {filter}")
    assert pattern.ways(" " * 200 + "s ") > MOST_WAYS
    hostile = "21:00:00 " + "a " * 300 + " s b\n"
    reading = read(hostile * 50 + "21:00:00 a b c d e 300 s Ha\n", tmp_path, pattern.text)
    assert len(reading.subs) == 1
    assert "50 lines are too long, or could be read in too many ways: not read" in reading.told
