"""CSV tables, written by hand and by the csv module, read by column, run, duration and mapping; each problem word for word."""

import csv
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

HEAD = "start,exposure_s,filter\n"


def lines_of(reading):
    return [str(problem) for problem in reading.problems]


def test_every_canonical_column_reaches_the_sub(read, tmp_path: Path):
    """A row written by the csv module comes back whole, quotes and commas included."""
    row = {
        "start": "2026-04-18T21:03:12Z", "exposure_s": "300", "filter": "Ha", "kind": "light", "kept": "no",
        "reason": 'cloud, and "wind"', "binning": "2", "gain": "100", "sensor_c": "-10.2", "fwhm_arcsec": "2.31",
        "elongation": "1.12", "guiding_rms_arcsec": "0.55", "count": "1", "gap_s": "5", "note": "first\nlight",
    }  # fmt: skip
    with (tmp_path / "a.csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, list(row))
        writer.writeheader()
        writer.writerow(row)
    reading = read("a.csv")
    assert reading.problems == ()
    (sub,) = reading.subs
    assert (sub.start, sub.exposure_s, sub.filter) == (datetime(2026, 4, 18, 21, 3, 12, tzinfo=UTC), 300.0, "Ha")
    assert (sub.kind, sub.kept, sub.reason, sub.note) == ("light", False, 'cloud, and "wind"', "first\nlight")
    assert (sub.binning, sub.gain, sub.sensor_c) == (2, 100.0, -10.2)
    assert (sub.fwhm_arcsec, sub.elongation, sub.guiding_rms_arcsec) == (2.31, 1.12, 0.55)
    assert (sub.rig, sub.site, sub.target, sub.source) == ("newtonian", "plain", 0, "logs/a.csv")


def test_what_a_log_leaves_out_is_unknown(read):
    """Empty cells are None, kept is yes, the kind is light."""
    (sub,) = read("a.csv", "start,exposure_s,filter,gain,kept\n2026-04-18T21:03:12,60,L,,\n").subs
    assert (sub.kind, sub.kept, sub.gain, sub.binning, sub.reason) == ("light", True, None, None, None)


def test_a_run_stands_for_its_frames(read):
    """`count` frames follow one another with `gap_s` between them."""
    subs = read("a.csv", "start,exposure_s,filter,count,gap_s\n2026-04-18T21:00:00Z,120,L,3,7.5\n").subs
    first = datetime(2026, 4, 18, 21, tzinfo=UTC)
    assert [sub.start - first for sub in subs] == [timedelta(seconds=127.5 * number) for number in range(3)]
    assert {sub.exposure_s for sub in subs} == {120.0}


def test_columns_adapt_a_table_with_other_headings(read):
    """Headings are matched in any case; those not mapped keep their canonical names."""
    reading = read(
        "a.csv", "Beginn,Belichtung,FILTER\n2026-04-18T21:00:00Z,5m,Ha\n", columns={"start": "Beginn", "exposure_s": "belichtung"}
    )
    assert reading.problems == ()
    assert [(sub.exposure_s, sub.filter) for sub in reading.subs] == [(300.0, "Ha")]


def test_calibration_frames_keep_their_kind(read):
    """Whatever the case, and a dark needs no filter."""
    rows = ["2,Light,L", "2,DARK FRAME,", "2,flat,R", "0,Bias Frame,", "2,Dark-Flat,"]
    text = "".join(f"2026-04-18T21:0{number}:00Z,{row}\n" for number, row in enumerate(rows))
    reading = read("a.csv", f"start,exposure_s,kind,filter\n{text}")
    assert lines_of(reading) == []
    assert [sub.kind for sub in reading.subs] == ["light", "dark", "flat", "bias", "dark-flat"]


def test_comments_blank_lines_and_a_spreadsheets_empty_cells_are_passed_over(read):
    """Rows of commas alone and cells beyond the headings hold nothing."""
    reading = read("a.csv", "# by hand\n\nstart,exposure_s,filter,,\n2026-04-18T21:00:00Z,60,L,,\n,,,,\n\n# end\n")
    assert (len(reading.subs), reading.problems) == (1, ())


def test_a_filter_of_the_item_serves_rows_that_name_none(read):
    """The item's filter fills a missing column and an empty cell alike."""
    assert [sub.filter for sub in read("a.csv", "start,exposure_s\n2026-04-18T21:00:00Z,60\n", filter="ha").subs] == ["Ha"]
    rows = f"{HEAD}2026-04-18T21:00:00Z,60,\n2026-04-18T21:05:00Z,60,L\n"
    assert [sub.filter for sub in read("a.csv", rows, filter="OIII").subs] == ["OIII", "L"]


def test_a_csv_with_an_ecsv_head_is_read_as_ecsv(read):
    """The units of the head count, whatever the file is called."""
    head = "# %ECSV 1.0\n# ---\n# datatype:\n# - {name: exposure_s, unit: min, datatype: float64}\n# delimiter: ','\n"
    assert [sub.exposure_s for sub in read("a.csv", f"{head}{HEAD}2026-04-18T21:00:00Z,5,L\n").subs] == [300.0]


ROW = "2026-04-18T21:00:00Z,60,L\n"
BAD_ROWS = [
    (f"{HEAD}2026-04-18T21:00:00Z,6o,L\n", "logs/a.csv:2:22: error: 'exposure_s' is '6o', with 'o', which is no unit of time; "
     "write seconds, or as in 5m, 90 s, 1/250"),
    (f'{HEAD}2026-04-18T21:00:00Z,"2,5",L\n', "logs/a.csv:2:22: error: 'exposure_s' is '2,5', not a duration; write 2.5, "
     "with a point"),
    (f"{HEAD}2026-04-18T21:00:00Z,-5,L\n", "logs/a.csv:2:22: error: 'exposure_s' is '-5', not a duration; "
     "write seconds, or as in 5m, 90 s, 1/250"),
    (f"{HEAD}2026-04-18T21:00:00Z,0,L\n", "logs/a.csv:2:22: error: 'exposure_s' is 0; only a bias frame has no exposure"),
    (f"{HEAD}2026-04-18T21:00:00Z,30h,L\n", "logs/a.csv:2:22: error: 'exposure_s' is '30h', longer than a day"),
    (f"{HEAD}2026-04-18T21:00:00Z,,L\n", "logs/a.csv:2:22: error: 'exposure_s' is empty"),
    (f"{HEAD}18.04.2026 21:00,60,L\n", "logs/a.csv:2:1: error: 'start' is '18.04.2026 21:00', not ISO 8601; "
     "write the date as 2026-04-18"),
    (f"{HEAD}2026/4/8 21:00,60,L\n", "logs/a.csv:2:1: error: 'start' is '2026/4/8 21:00', not ISO 8601; "
     "write the date as 2026-04-08"),
    (f"{HEAD}2026-04-18,60,L\n", "logs/a.csv:2:1: error: 'start' is '2026-04-18', a date without a time of day; "
     "write it as in 2026-04-18T21:03:12Z"),
    (f"{HEAD}21:03,60,L\n", "logs/a.csv:2:1: error: 'start' is '21:03', a time of day without a date; "
     "write it as in 2026-04-18T21:03:12Z"),
    (f"{HEAD}2026-13-40T21:00,60,L\n", "logs/a.csv:2:1: error: 'start' is '2026-13-40T21:00', not a date and time; "
     "write it as in 2026-04-18T21:03:12Z"),
    (f"{HEAD}0001-01-01T00:00:00+14:00,60,L\n", "logs/a.csv:2:1: error: 'start' is '0001-01-01T00:00:00+14:00', "
     "in no year of this diary; write it as in 2026-04-18T21:03:12Z"),
    (f"{HEAD}2026-04-18T21:00:00Z,60,Hx\n", "logs/a.csv:2:25: error: 'Hx' is no filter of the rig 'newtonian' "
     "(1 of 1 subs, without which no total would be right); add the line 'Hx: {kind: broadband}' under 'filters' in "
     "rigs/newtonian.yaml, or 'spelt: [Hx]' to one of its filters: Ha, L, OIII, R"),
    (f"{HEAD}2026-04-18T21:00:00Z,60,OII\n", "logs/a.csv:2:25: error: 'OII' is no filter of the rig 'newtonian' "
     "(1 of 1 subs, without which no total would be right); add 'spelt: [OII]' to the filter 'OIII' in rigs/newtonian.yaml"),
    (f"{HEAD}2026-04-18T21:00:00Z,60,\n", "logs/a.csv:2:25: error: 1 of 1 subs name no filter, "
     "and the rig 'newtonian' has some; fill in the column, or write 'filter' in the entry's log item: Ha, L, OIII, R"),
    (f"{HEAD}2026-04-18T21:00:00Z,60\n", "logs/a.csv:2:24: error: the row has 2 cells, the heading line 3; "
     "leave a cell empty between two commas"),
    (f"{HEAD}2026-04-18T21:00:00Z,2,5,L\n", "logs/a.csv:2:26: error: the row has 4 cells, the heading line 3; "
     "decimal commas? write 2.5, with a point"),
    (f'{HEAD}2026-04-18T21:00:00Z,60,"L\n',
     "logs/a.csv:2:1: error: a quotation mark is opened here and not closed; close it, or delete it"),
    (f'{HEAD}2026-04-18T21:00:00Z,60,"L"x\n', "logs/a.csv:2:1: error: the quotation marks of this row do not pair; "
     'write a quotation mark inside a quoted cell twice: ""'),
    ("start,exposure_s,filter,kind\n2026-04-18T21:00:00Z,60,L,focus\n", "logs/a.csv:2:27: error: 'kind' is 'focus', "
     "no kind of frame; "
     "known: bias, dark, dark-flat, flat, light"),
    ("start,exposure_s,filter,kept\n2026-04-18T21:00:00Z,60,L,maybe\n", "logs/a.csv:2:27: error: 'kept' is 'maybe', "
     "neither yes nor no; write yes or no"),
    ("start,exposure_s,filter,count\n2026-04-18T21:00:00Z,60,L,0\n", "logs/a.csv:2:27: error: 'count' is '0', below 1"),
    ("start,exposure_s,filter,count\n2026-04-18T21:00:00Z,60,L,1000000000000\n",
     "logs/a.csv:2:1: error: holds more than 100000 frames; split the log, a file a season"),
    ("start,exposure_s,filter,count\n2026-04-18T21:00:00Z,60,L,1e999\n", "logs/a.csv:2:27: error: 'count' is '1e999', "
     "not a whole number"),
    ("start,exposure_s,filter,binning\n2026-04-18T21:00:00Z,60,L,1.5\n", "logs/a.csv:2:27: error: 'binning' is '1.5', "
     "not a whole number"),
    ("start,exposure_s,filter,gain\n2026-04-18T21:00:00Z,60,L,high\n", "logs/a.csv:2:27: error: 'gain' is 'high', not a number"),
    ('note,start,exposure_s,filter\n"two\nlines",2026-04-18T21:00:00Z,x,L\n', "logs/a.csv:3:29: error: 'exposure_s' is 'x', "
     "not a duration; write seconds, or as in 5m, 90 s, 1/250"),
    (f"\ufeff{HEAD}{ROW}", "logs/a.csv:1:1: warning: begins with a byte-order mark; save it as UTF-8 without one"),
    ("start;exposure_s;filter\n", "logs/a.csv:1:6: error: the columns are separated by ';'; save the table with commas, "
     "and numbers with points"),
    ("# x\nstart\texposure_s\n", "logs/a.csv:2:6: error: the columns are separated by tabs; "
     "save the table with commas, and numbers with points"),
    ("", "logs/a.csv:1:1: error: is empty; begin it with a line of headings: start,exposure_s,filter"),
    ("\n\n", "logs/a.csv:1:1: error: is empty; begin it with a line of headings: start,exposure_s,filter"),
    (HEAD, "logs/a.csv:1:1: warning: lists no frame"),
    (ROW, "logs/a.csv:1:1: error: has no heading line; begin it with one, as in start,exposure_s,filter"),
    ("start,filter\n", "logs/a.csv:1:1: error: has no column 'exposure_s'; "
     "name it so, or write 'columns: {exposure_s: their heading}' in the entry's log item"),
    ("start,Exposure,filter\n", "logs/a.csv:1:1: error: has no column 'exposure_s'; "
     "name it so, or write 'columns: {exposure_s: Exposure}' in the entry's log item"),
    ("start,exposure_s,filter,start\n2026-04-18T21:00:00Z,60,L,\n",
     "logs/a.csv:1:25: error: the heading 'start' stands here again; keep one"),
    ("start,exposure_s,filter,kpet\n2026-04-18T21:00:00Z,60,L,no\n", "logs/a.csv:1:25: warning: the column 'kpet' is not read; "
     "did you mean 'kept'?"),
    (f"{HEAD}1979-01-01T00:00:00Z,60,L\n", "logs/a.csv:2:1: warning: starts in 1979, before 1990; look at the camera's clock"),
    (f"{HEAD}2027-01-01T00:00:00Z,60,L\n", "logs/a.csv:2:1: warning: starts on 2027-01-01, in the future; "
     "look at the camera's clock"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "wanted"), BAD_ROWS, ids=[wanted.partition(" ")[2][:50] for _, wanted in BAD_ROWS])
def test_each_mistake_has_its_own_line(read, text, wanted):
    """The problem stands at its cell, says what was seen, and how to mend it."""
    assert lines_of(read("a.csv", text)) == [wanted]


def test_all_mistakes_are_told_at_once(read):
    """Several cells of several rows, and the good rows still counted."""
    reading = read("a.csv", f"{HEAD}x,y,L\n{ROW}2026-04-18T22:00:00Z,z,L\n")
    assert [(problem.line, problem.column) for problem in reading.problems] == [(2, 1), (2, 3), (4, 22)]
    assert len(reading.subs) == 1


def test_a_mistake_that_runs_through_the_log_is_one_line(read):
    """Its first place, and how many rows follow."""
    rows = "".join(f"2026-04-18T21:{minute:02}:00Z,50,Hx\n" for minute in range(30))
    assert lines_of(read("a.csv", HEAD + rows)) == [
        "logs/a.csv:2:25: error: 'Hx' is no filter of the rig 'newtonian' (30 of 30 subs, without which no total would be "
        "right); add the line 'Hx: {kind: broadband}' under 'filters' in rigs/newtonian.yaml, "
        "or 'spelt: [Hx]' to one of its filters: Ha, L, OIII, R"
    ]


def test_endless_mistakes_end(read):
    """A table of nothing but nonsense does not bury the terminal."""
    problems = read("a.csv", HEAD + "x,1,L\n" * 1000).problems
    assert len(problems) == 201
    assert str(problems[-1]) == "logs/a.csv:1:1: error: 800 more errors like these follow; mend the first ones and check again"


@pytest.mark.parametrize(
    ("content", "wanted"),
    [
        (b"start,exposure_s,note\n2026-04-18T21:00:00Z,60,\xb0C\n", "logs/a.csv:2:25: error: is not UTF-8 text (byte 0xB0); "
         "save it as UTF-8"),
        ("start".encode("utf-16"), "logs/a.csv:1:1: error: is UTF-16 text; save it as UTF-8"),
        (b"start,exposure_s\n2026\0", "logs/a.csv:2:5: error: a NUL byte stands here: the file is damaged, or no text; "
         "export the log again"),
        (b"start," + b"x" * 100_001, "logs/a.csv:1:1: error: the line is 100007 characters long; write one row a line"),
        (b"start,exposure_s\n" + b"x" * 16_000_000, "logs/a.csv:1:1: error: is larger than 16 MB; split the log, "
         "a file a season"),
    ],
    ids=["encoding", "utf-16", "nul", "long line", "huge"],
)  # fmt: skip
def test_bytes_that_are_no_table(read, content, wanted):
    """Each kind of damage is told apart."""
    assert lines_of(read("a.csv", content)) == [wanted]


def test_a_file_that_cannot_be_opened(read, tmp_path: Path):
    """The system's reason, without a path of this machine."""
    assert lines_of(read("none.csv")) == ["logs/none.csv:1:1: error: cannot be read: No such file or directory"]
    (tmp_path / "dir.csv").mkdir()
    assert lines_of(read("dir.csv")) == ["logs/dir.csv:1:1: error: cannot be read: Is a directory"]


def test_mapping_mistakes_point_into_the_entry(read):
    """An unknown canonical column, and a heading the table does not have."""
    reading = read("a.csv", HEAD.replace("start", "Beginn") + ROW, columns={"strat": "Beginn", "start": "Begin"})
    assert lines_of(reading) == [
        "entries/e.md:7:5: error: 'columns' names 'strat', which is no column; did you mean 'start'?",
        "entries/e.md:7:5: error: logs/a.csv has no column 'Begin' (for 'start'); did you mean 'Beginn'?",
    ]


def test_more_frames_than_a_lifetime(read):
    """Runs cannot multiply without end."""
    rows = "".join(f"2026-04-18T21:00:0{number}Z,60,L,10000\n" for number in range(10)) + "2026-04-19T21:00:00Z,60,L,1\n"
    assert lines_of(read("a.csv", "start,exposure_s,filter,count\n" + rows)) == [
        "logs/a.csv:12:1: error: holds more than 100000 frames; split the log, a file a season"
    ]


def test_a_run_of_any_length(read):
    """As long as a log may be: 100,000 short exposures in one row, each where its place says."""
    subs = read("a.csv", "start,exposure_s,filter,count,gap_s\n2026-04-18T21:00:00Z,0.25,L,100000,0.05\n").subs
    assert len(subs) == 100_000
    assert (subs[-1].start - subs[0].start).total_seconds() == pytest.approx(99_999 * 0.3, abs=1e-3)


def test_a_rig_without_filters(read, bare_rig):
    """No filter is needed; 'none' is as good; a name is a mistake."""
    reading = read("a.csv", f"{HEAD}2026-04-18T21:00:00Z,60,none\n2026-04-18T21:05:00Z,60,\n", rig=bare_rig)
    assert ([sub.filter for sub in reading.subs], reading.problems) == ([None, None], ())
    assert lines_of(read("a.csv", HEAD + ROW, rig=bare_rig)) == [
        "logs/a.csv:2:25: error: 'L' is no filter of the rig 'lens', which has none "
        "(1 of 1 subs, without which no total would be right); add 'filters: {L: {kind: broadband}}' to rigs/lens.yaml"
    ]


def test_a_log_without_a_rig_is_still_checked(read):
    """Its subs carry an empty rig; its cells are judged as ever."""
    reading = read("a.csv", f"{HEAD}2026-04-18T21:00:00Z,60,Q\nx,60,L\n", rig=None, site=None)
    assert [(sub.rig, sub.site, sub.filter) for sub in reading.subs] == [("", "", "Q")]
    assert [problem.line for problem in reading.problems] == [3]
