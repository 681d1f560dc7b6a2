"""The log is its author's, too: a gathering changes cells, rows and columns, and no other character."""

import csv
import random
from pathlib import Path

import pytest
from astropy.io import fits

from sitegen.authoring.gathering import undo
from sitegen.authoring.log_cells import spans_of
from sitegen.authoring.log_table import LogTable, Row, add_columns, parse_table, set_cells, table_text
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.rebuild import check
from tests.authoring.conftest import TODAY, MakeFrames, gathered, log_of

OLD = """# %ECSV 1.0
# ---
# datatype:
# - {name: start, datatype: string}
# - {name: exposure_s, unit: s, datatype: float64}
# - {name: filter, datatype: string}
# - {name: kind, datatype: string}
# - {name: kept, datatype: bool}
# - {name: reason, datatype: string}
# - {name: binning, datatype: int64}
# - {name: gain, datatype: float64}
# - {name: sensor_c, unit: deg_C, datatype: float64}
# meta: {written_by: sitegen gather}
# delimiter: ','
# schema: astropy-2.0
start,exposure_s,filter,kind,kept,reason,binning,gain,sensor_c
2026-11-20T10:00:00Z,300,Ha,light,True,,8,100,-10
2026-11-20T10:05:10Z,300,Ha,light,False,wind,8,100,-10
2026-11-20T10:10:20Z,300,Ha,light,True,,8,100,-10
"""


def cell_of(table: LogTable, row: Row, name: str) -> str:
    """A cell as it stands in the row, without its quotes."""
    start, end = row.spans[table.columns[name]]
    return row.text[start:end].strip().removeprefix('"').removesuffix('"').replace('""', '"')



def write(folders: Folders, text: str) -> None:
    log_of(folders).write_bytes(text.encode("utf-8"))


def text_of(folders: Folders) -> str:
    return log_of(folders).read_bytes().decode("utf-8")


@pytest.mark.parametrize(
    "text",
    [
        OLD,
        OLD.replace("\n", "\r\n"),
        OLD.rstrip("\n"),
        OLD.replace("2026-11-20T10:05:10Z", "\n# a note of the author's\n\n2026-11-20T10:05:10Z"),
        OLD.replace("wind", '"wind, and a ""gust"""'),
        OLD.replace(",300,Ha", " ,  300 , Ha"),
        OLD.replace("sensor_c\n2026", "sensor_c,,\n2026").replace("-10\n", "-10,,\n"),
    ],
)
def test_what_is_not_changed_comes_out_as_it_was(text: str) -> None:
    """To the byte: line ends, comments, blanks, quotation marks, a spreadsheet's empty cells."""
    assert table_text(parse_table(text)) == text


def test_cells_and_columns() -> None:
    """A changed cell keeps the blanks round it; a new column stands in the head, the heading line and every row."""
    table = parse_table(OLD.replace(",300,Ha", " ,  300 , Ha").replace("\n", "\r\n"))
    row = table.rows[1]
    set_cells(table, row, {"filter": "OIII", "reason": 'a "gust", then wind'})
    add_columns(table, [("file", "string", "")])
    assert cell_of(table, row, "reason") == 'a "gust", then wind'
    lines = table_text(table).split("\r\n")
    assert lines[-3] == '2026-11-20T10:05:10Z ,  300 , OIII,light,False,"a ""gust"", then wind",8,100,-10,'
    assert lines[12] == "# - {name: file, datatype: string}"
    assert lines[16].endswith("sensor_c,file")


def test_a_log_of_the_version_before_grows(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Its rows are recognised, get their origin, and keep what was in them; it still checks clean."""
    write(folders, OLD.replace("\n", "\r\n").replace("# schema", "# # a line of mine\r\n# schema"))
    make_frames("disk", 4)
    done = gathered(folders, tmp_path / "disk")
    assert (done.new_count, done.known_count, done.totals.kept, done.totals.discarded) == (1, 3, 3, 1)
    lines = text_of(folders).split("\r\n")
    assert "# # a line of mine" in lines
    assert lines[-4].startswith("2026-11-20T10:05:10Z,300,Ha,light,False,wind,8,100,-10,frame_2026-11-20_001.fits,disk-")
    assert len({line.count(",") for line in lines[-6:-1]}) == 1
    assert check(folders, TODAY) == ()


def test_old_rows_of_what_is_no_sub_go(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The version before counted a stack, a focus run and another target; what the author wrote something of stays."""
    more = (
        "2026-11-20T10:00:00Z,900,Ha,light,True,,8,100,-10\n"
        "2026-11-21T09:00:00Z,5,Ha,light,True,,8,100,-10\n"
        "2026-11-21T10:00:00Z,300,Ha,light,no,not this one,8,100,-10\n2026-11-21T10:05:10Z,300,Ha,light,True,,8,100,-10\n"
    )
    write(folders, OLD + more)
    make_frames("disk/a", 3)
    make_frames("disk/stack", 1, EXPTIME=900.0, NCOMBINE=3)
    make_frames("disk/focus", 1, start="2026-11-21T09:00:00", EXPTIME=5.0)
    make_frames("disk/x", 2, start="2026-11-21T10:00:00", OBJECT="NGC 253")
    done = gathered(folders, tmp_path / "disk")
    assert done.removed == {"combined": 1, "focus run": 1, "other target": 1}
    assert (done.totals.kept, done.totals.discarded) == (2, 2)
    assert "not this one" in text_of(folders)


def test_new_rows_stand_in_time_order(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Between the rows there are, before a comment at the end."""
    make_frames("disk", 2)
    make_frames("disk", 2, start="2026-11-22T10:00:00")
    gathered(folders, tmp_path / "disk")
    make_frames("disk", 2, start="2026-11-21T10:00:00")
    gathered(folders, tmp_path / "disk")
    starts = [line[:10] for line in text_of(folders).splitlines()[-6:]]
    assert starts == ["2026-11-20"] * 2 + ["2026-11-21"] * 2 + ["2026-11-22"] * 2


def test_the_authors_own_columns_and_rows_stay(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A column of the author's, a row of a run, a comment."""
    own = OLD.replace("sensor_c\n2026", "sensor_c,count,gap_s,mood\n2026").replace("-10\n", "-10,,,fine\n")
    write(folders, own + "# by hand:\n2026-11-19T10:00:00Z,60,L,light,yes,,1,100,-10,12,5,cold\n")
    make_frames("disk", 4)
    done = gathered(folders, tmp_path / "disk")
    assert (done.new_count, done.totals.kept) == (1, 15)
    assert "# by hand:\n2026-11-19T10:00:00Z,60,L,light,yes,,1,100,-10,12,5,cold," in text_of(folders)


def test_another_clock_corrects_the_starts(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """In place, none doubled: 10:00 in Auckland's summer is 21:00 UTC of the day before. Without the option they stay so."""
    make_frames("disk", 3)
    make_frames("disk/told", 1, start="2026-11-21T10:00:00", TIMESYS="UTC")
    gathered(folders, tmp_path / "disk")
    done = gathered(folders, tmp_path / "disk", time_zone="Pacific/Auckland")
    assert (done.moved_clock, done.new_count, done.totals.kept) == (3, 0, 4)
    starts = [line[:20] for line in text_of(folders).splitlines()[-4:]]
    assert starts == ["2026-11-19T21:00:00Z", "2026-11-19T21:05:10Z", "2026-11-19T21:10:20Z", "2026-11-21T10:00:00Z"]
    make_frames("disk", 1, start="2026-11-22T10:00:00")
    done = gathered(folders, tmp_path / "disk")
    assert (done.moved_clock, done.new_count, done.sorting.read_as) == (0, 1, "Pacific/Auckland")
    assert "2026-11-21T21:00:00Z" in text_of(folders)
    assert gathered(folders, tmp_path / "disk", time_zone="UTC").moved_clock == 4


def test_a_zero_has_no_sign(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Whichever of two frames was read first, both sensors are at 0 °C: the same frames, the same bytes."""
    make_frames("disk", 1, **{"CCD-TEMP": -0.0})
    make_frames("disk", 1, start="2026-11-20T11:00:00", prefix="g", **{"CCD-TEMP": 0.0})
    gathered(folders, tmp_path / "disk")
    rows = log_of(folders).read_text("utf-8").splitlines()[-2:]
    assert [row.split(",")[8] for row in rows] == ["0", "0"]


def test_a_clock_that_says_what_it_shows(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """UT beside a date, and a day number, count in universal time whatever zone is named, as the reader of FITS logs has them
    (FITS Standard 4.0, section 9.2.1; older forms: its predecessors)."""
    universal, day_number, bare = make_frames("disk", 3)
    for path, cards in ((universal, {"UT": "10:00:00"}), (day_number, {"MJD-OBS": 61364.5}), (bare, {"TIME-OBS": "23:30:00"})):
        with fits.open(path, mode="update") as units:
            units[0].header["DATE-OBS"] = "2026-11-20"
            units[0].header.update(cards)
    fits.delval(day_number, "DATE-OBS")
    gathered(folders, tmp_path / "disk", time_zone="Pacific/Auckland")
    starts = [row.split(",")[0] for row in log_of(folders).read_text("utf-8").splitlines()[-3:]]
    assert starts == ["2026-11-20T10:00:00Z", "2026-11-20T10:30:00Z", "2026-11-20T12:00:00Z"]


def test_an_hour_that_came_twice(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """On 5 April 2026 Auckland's clock went twice from 2 to 3 (13:00 to 15:00 UTC). A lone frame may be of either: the guess is
    told with the start of the other, and that start stays when its author has written it."""
    make_frames("disk", 1, start="2026-04-05T02:30:00")
    (told,) = gathered(folders, tmp_path / "disk", time_zone="Pacific/Auckland").problems
    assert str(told) == (
        f"{tmp_path}/disk/frame_2026-04-05_000.fits:1:1: warning: 2026-04-05 02:30:00 came twice that night; taken as the first "
        "time; if it was the second time, write 2026-04-04T14:30:00Z as its 'start' into the log"
    )
    text = log_of(folders).read_text("utf-8")
    by_hand = text.replace("2026-04-04T13:30:00Z", "2026-04-04T14:30:00Z")
    assert by_hand != text
    log_of(folders).write_text(by_hand, "utf-8")
    assert gathered(folders, tmp_path / "disk", time_zone="Pacific/Auckland").moved_clock == 0
    assert log_of(folders).read_text("utf-8") == by_hand


def test_the_clock_of_the_log_item(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Stands in the entry, and holds where no option says otherwise."""
    entry = folders.content / "entries/first-light.md"
    item = "logs: [{files: logs/first-light.ecsv, time_zone: Pacific/Auckland}]"
    entry.write_text(entry.read_text("utf-8").replace("logs: [logs/first-light.csv]", item), "utf-8")
    make_frames("disk", 1)
    assert gathered(folders, tmp_path / "disk").sorting.read_as == "Pacific/Auckland"
    assert "\n2026-11-19T21:00:00Z," in text_of(folders)


def test_a_log_of_the_version_before_had_read_bare_times_as_utc(
    folders: Folders, make_frames: MakeFrames, tmp_path: Path
) -> None:
    """So a clock named later corrects its rows as well."""
    write(folders, OLD)
    make_frames("disk", 3)
    done = gathered(folders, tmp_path / "disk", time_zone="Pacific/Auckland")
    assert (done.moved_clock, done.new_count, done.known_count) == (3, 0, 3)


def test_a_filter_that_the_rig_learns(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The header's words stand for it until then, and stay beside it."""
    make_frames("disk", 1, FILTER="deep red")
    gathered(folders, tmp_path / "disk")
    assert ",300,deep red,light," in text_of(folders)
    rig = folders.content / "rigs/first-train.yaml"
    rig.write_text(rig.read_text("utf-8").replace("name: hydrogen-alpha", "name: deep red"), "utf-8")
    gathered(folders, tmp_path / "disk")
    assert ",300,Ha,light," in text_of(folders) and ",deep red," in text_of(folders)


def test_what_the_private_columns_hold_is_read_back(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """By the reader of tables, with its own names."""
    make_frames("disk", 1, CAMSER="X7", OBJCTRA="05 38 40", OBJCTDEC="-69 06 00")
    gathered(folders, tmp_path / "disk")
    path = log_of(folders)
    (sub,) = read_log(LogRequest(path, "log", path.name, None, None, None, None, None, ("log", 1, 1), TODAY)).subs
    assert sub.origin is not None
    assert (sub.origin.file, sub.origin.object, sub.origin.camera_id) == ("frame_2026-11-20_000.fits", "NGC2070", "X7")
    assert (sub.origin.ra_deg, sub.origin.dec_deg) == (pytest.approx(15 * (5 + 38 / 60 + 40 / 3600)), pytest.approx(-69.1))
    assert (sub.origin.filter_told, sub.filter, sub.clock, sub.origin.focal_length_mm) == ("H-alpha", "Ha", "UTC", 1000)


def test_the_last_gathering_taken_back(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The log to the byte, and the entry's line where that gathering wrote it; only once."""
    entry = folders.content / "entries/first-light.md"
    before = entry.read_bytes()
    make_frames("disk", 2)
    gathered(folders, tmp_path / "disk")
    first = log_of(folders).read_bytes()
    make_frames("disk", 2, start="2026-11-21T10:00:00")
    gathered(folders, tmp_path / "disk")
    assert undo("first-light", folders, TODAY) == ("logs/first-light.ecsv", ())
    assert log_of(folders).read_bytes() == first
    with pytest.raises(DiaryProblems, match="there is no gathering to take back; only the last one can be, and once"):
        undo("first-light", folders, TODAY)
    log_of(folders).unlink()
    entry.write_bytes(before)
    gathered(folders, tmp_path / "disk")
    assert entry.read_bytes() != before
    undo("first-light", folders, TODAY)
    assert not log_of(folders).exists()
    assert entry.read_bytes() == before


def test_a_gathering_that_cannot_be_taken_back(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Where what it was before cannot be kept, the frames are gathered all the same, and that is told."""
    make_frames("disk", 2)
    assert folders.keep is not None
    folders.keep.mkdir(exist_ok=True)
    (folders.keep / "gathered").write_text("a file where a folder is wanted", "utf-8")
    done = gathered(folders, tmp_path / "disk")
    (told,) = done.problems
    assert (done.new_count, told.severity, told.remedy) == (
        2, "warning", "the frames are gathered, and that cannot be taken back"
    )  # fmt: skip
    assert done.named is True


def test_a_log_that_cannot_be_removed(
    folders: Folders, make_frames: MakeFrames, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Taking the first gathering back removes the log; a folder that may not be written refuses that in a line."""
    make_frames("disk", 2)
    gathered(folders, tmp_path / "disk")

    def refused(path: Path, missing_ok: bool = False) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "unlink", refused)
    with pytest.raises(DiaryProblems, match="cannot be removed: Permission denied"):
        undo("first-light", folders, TODAY)
    assert log_of(folders).is_file()


def test_an_edited_log_is_not_taken_back(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Its author's work would be lost; the earlier copy is named."""
    write(folders, OLD)
    make_frames("disk", 4)
    gathered(folders, tmp_path / "disk")
    edited = text_of(folders) + "# mine\n"
    write(folders, edited)
    with pytest.raises(DiaryProblems, match="was edited since it was gathered, and is left as it is; as it was before, it"):
        undo("first-light", folders, TODAY)
    assert text_of(folders) == edited
    assert folders.keep is not None
    assert (folders.keep / "gathered/first-light.ecsv").read_text("utf-8") == OLD


def test_a_dry_run_writes_nothing(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Neither log, nor entry, nor memory; and tells what it would have done."""
    make_frames("disk", 2)
    before = sorted(path for path in folders.content.parent.rglob("*"))
    done = gathered(folders, tmp_path / "disk", dry_run=True)
    assert (done.new_count, done.totals.kept) == (2, 2)
    assert sorted(path for path in folders.content.parent.rglob("*")) == before


def test_cells_lie_where_the_csv_module_has_them() -> None:
    """Marks inside a cell, doubled marks, blanks before a mark: 20,000 random rows against Python's own reader of tables."""
    chance = random.Random(3)
    wrong = []
    for _ in range(20_000):
        text = "".join(chance.choice('ab",  "x') for _ in range(chance.randint(0, 14)))
        try:
            cells = next(csv.reader([text], strict=True, skipinitialspace=True), [])
        except csv.Error:
            continue
        if len(spans_of(text, ",")) != max(len(cells), 1):
            wrong.append(text)
    assert wrong == []


def test_an_entry_that_is_no_text(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It stays as it is, to the byte; the log is written, and can be taken back."""
    entry = folders.content / "entries/first-light.md"
    entry.write_bytes(before := entry.read_bytes() + b"caf\xe9\n")
    make_frames("disk", 2)
    done = gathered(folders, tmp_path / "disk")
    assert (done.named, [problem.wrong for problem in done.problems]) == (False, ["cannot be read, so its logs stay as they are"])
    undo("first-light", folders, TODAY)
    assert not log_of(folders).exists()
    assert entry.read_bytes() == before


def test_an_entry_for_which_nothing_was_gathered(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It is there, though no log is."""
    make_frames("disk", 2)
    assert gathered(folders, tmp_path / "disk", target="M 42").named is False
    assert gathered(folders, tmp_path / "disk", name="another", target="M 42").named is None
