"""Several logs of one entry: time order, frames listed twice, frames that overlap, warnings that many files share."""

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from sitegen.diary.sub import Sub
from sitegen.problems import Problem
from sitegen.reading.capture_logs.joining import each_once, join_logs, overlaps
from sitegen.reading.capture_logs.request import LogReading

START = datetime(2026, 4, 18, 21, tzinfo=UTC)


def sub(seconds: float = 0.0, exposure_s: float = 60.0, source: str = "a.csv", **fields) -> Sub:
    return Sub(START + timedelta(seconds=seconds), exposure_s, "r", "s", source=source, **{"filter": "L"} | fields)


def starts(subs):
    return [(each.start - START).total_seconds() for each in subs]


def test_logs_are_joined_in_time_order():
    """Whatever the order of the files."""
    subs, problems = join_logs([LogReading((sub(200), sub(100))), LogReading((sub(0, source="b.csv"), sub(300, source="b.csv")))])
    assert (starts(subs), problems) == ([0, 100, 200, 300], ())


def test_a_frame_listed_twice_is_counted_once():
    """In two logs or twice in one; half a second apart, or in the same whole second."""
    assert starts(each_once([sub(0.1), sub(0.55, source="b.csv")])) == [0.1]
    assert starts(each_once([sub(0.1), sub(0.65, source="b.csv")])) == [0.1, 0.65]
    assert starts(each_once([sub(0), sub(0)])) == [0]
    assert starts(each_once([sub(0), sub(0.9, source="b.fits")])) == [0]


def test_what_differs_is_another_frame():
    """Rig, kind, filter, exposure: any of them."""
    others = [replace(sub(source="b.csv"), **{name: value}) for name, value in
              (("rig", "q"), ("kind", "dark"), ("filter", "R"), ("exposure_s", 30.0))]  # fmt: skip
    assert [len(each_once([sub(), other])) for other in others] == [2, 2, 2, 2]


def test_a_table_that_sorts_out_headers_is_obeyed():
    """A frame is discarded if either log discards it, and keeps what either knows."""
    header = sub(source="f.fits", gain=100.0, filter=None)
    row = sub(0.2, source="sorted.csv", kept=False, reason="cloud", fwhm_arcsec=4.0)
    (joined,) = each_once([header, row])
    assert (joined.kept, joined.reason, joined.gain, joined.fwhm_arcsec, joined.filter) == (False, "cloud", 100.0, 4.0, "L")


def test_a_run_of_the_shortest_frames_stays_a_run():
    """Twenty bias frames within a second are twenty, and still twenty when a second log lists them."""
    run = [sub(0.05 * number, 0.0, kind="bias", filter=None) for number in range(20)]
    assert len(each_once(run)) == 20
    assert len(each_once(run + [replace(each, source="b.csv") for each in run])) == 20


def test_overlapping_logs_of_one_rig_are_a_warning():
    """It names both frames and both logs; other rigs do not matter."""
    subs = [sub(0), sub(30, source="b.csv"), sub(65), replace(sub(10), rig="q")]
    assert [str(problem) for problem in overlaps(subs, lambda source: f"content/{source}")] == [
        "content/b.csv:1:1: warning: the frame of 2026-04-18 21:00:30 UTC overlaps that of 21:00:00 of content/a.csv, "
        "both by the rig 'r'; is one in local time, or of another rig?",
        "content/a.csv:1:1: warning: the frame of 2026-04-18 21:01:05 UTC overlaps that of 21:00:30 of content/b.csv, "
        "both by the rig 'r'; is one in local time, or of another rig?",
    ]


def test_overlaps_within_a_log_are_one_line():
    """However many there are."""
    assert [str(problem) for problem in overlaps([sub(10 * number) for number in range(5)])] == [
        "a.csv:1:1: warning: the frame of 2026-04-18 21:00:10 UTC overlaps that of 21:00:00, both by the rig 'r', and 3 more so; "
        "is one in local time, or of another rig?"
    ]


def test_whole_seconds_are_no_overlap():
    """A frame may seem to begin a second before the last has ended."""
    assert overlaps([sub(0), sub(59), sub(119)]) == ()


def test_a_frame_shared_by_two_entries_is_no_overlap():
    """Two entries may tell of the same night."""
    assert overlaps([sub(0), sub(0, source="other.csv"), sub(60), sub(60, source="other.csv")]) == ()


def test_warnings_that_many_files_share_are_drawn_together():
    """The first file is named, the others are counted; errors and rare warnings stand alone."""
    warnings = [Problem(f"{number}.fits", 1, 1, "FOCALLEN is 1 mm", "mend it", "warning") for number in range(9)]
    errors = [Problem(f"{number}.fits", 1, 1, "is empty") for number in range(9)]
    _, problems = join_logs([LogReading(problems=(warning, error)) for warning, error in zip(warnings, errors, strict=True)])
    assert [str(problem) for problem in problems if problem.severity == "warning"] == [
        "0.fits:1:1: warning: FOCALLEN is 1 mm (so in 8 more files); mend it"
    ]
    assert [problem for problem in problems if problem.severity == "error"] == errors


@given(st.lists(st.tuples(st.integers(0, 400), st.sampled_from([1.0, 5.0, 60.0]), st.sampled_from("abc")), max_size=30))
def test_joining_again_changes_nothing(frames):
    """Once joined, every frame is one; joining is its own fixed point."""
    once = each_once(sub(seconds, exposure_s, source) for seconds, exposure_s, source in frames)
    assert each_once(once) == once
    assert list(once) == sorted(once, key=lambda each: each.start)
