"""Frames thrown away: by folder, prefix, pattern, list or disappearance; the author's own word in the log wins."""

from pathlib import Path

import pytest

from sitegen.authoring.captures.discards import Discarding, discard_of, matches
from sitegen.authoring.captures.reading import frames_of
from sitegen.authoring.captures.record import Frame, FrameFile, FrameRecord
from sitegen.authoring.gather_report import Gathering
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from tests.authoring.conftest import TODAY, MakeFrames, gathered, log_of


def totals(done: Gathering) -> tuple[int, int]:
    return done.totals.kept, done.totals.discarded


def frame_at(below: str) -> Frame:
    file = FrameFile(f"disk/{below}", below, "disk-0", "/disk", 1, 1, 1, 1)
    record = FrameRecord("fits", start=None, exposure_s=300.0)
    return Frame(file, record, TODAY, 300.0)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("below", "language", "reason"),
    [
        ("rejected/a.fits", "en", "rejected"),
        ("night/_Bad/a.fits", "en", "bad"),
        ("night/02 trash/a.fits", "en", "trash"),
        ("bad_a.fits", "en", "bad"),
        ("REJECTED-12.fits", "en", "rejected"),
        ("bad12.fits", "en", "bad"),
        ("not_used_12.fits", "en", "not used"),
        ("Thrown-Away 12.fits", "en", "thrown away"),
        ("Ausschuss/a.fits", "de-AT", "ausschuss"),
        ("verworfen_a.fits", "de", "verworfen"),
        ("Ausschuss/a.fits", "en", None),
        ("badlands_001.fits", "en", None),
        ("Bad Ems/a.fits", "de", None),
        ("not rejected yet/a.fits", "en", None),
        ("a_bad.fits", "en", None),
    ],
)
def test_words_that_say_so(below: str, language: str, reason: str | None) -> None:
    """Whole folders, and words that begin a name and end there; in English and the diary's language."""
    discard = discard_of([frame_at(below)], Discarding((), language))
    assert (discard.reason if discard else None) == reason


@pytest.mark.parametrize(
    ("pattern", "below", "is_matched"),
    [
        ("cloudy_*", "a/cloudy_12.fits", True),
        ("clouds/*", "2026/clouds/a.fits", True),
        ("clouds/", "2026/clouds/a.fits", True),
        ("*/clouds/*", "2026/clouds/a.fits", True),
        ("clouds/*", "2026/no clouds/a.fits", False),
        ("a.fits", "2026/a.fits", True),
        ("2026/*.fits", "2026/a.fits", True),
        ("A.fits", "2026/a.fits", False),
    ],
)
def test_patterns_are_shell_globs(pattern: str, below: str, is_matched: bool) -> None:
    """On the path below the folder gathered, on any end of it, on the name."""
    assert matches(below, pattern) is is_matched


def test_moved_away_and_back(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Six of 64 frames moved to 'rejected/': 58 kept, 6 discarded, none new; moved back: 64."""
    frames = make_frames("disk", 64)
    assert totals(gathered(folders, tmp_path / "disk")) == (64, 0)
    (tmp_path / "disk/rejected").mkdir()
    for path in frames[:6]:
        path.rename(tmp_path / "disk/rejected" / path.name)
    done = gathered(folders, tmp_path / "disk")
    assert (totals(done), done.new_count, dict(done.judged_anew)) == ((58, 6), 0, {"discarded": 6})
    assert done.sorting.discarded_by == {"the folder 'rejected'": 6}
    assert log_of(folders).read_text("utf-8").count(",False,rejected,") == 6
    for path in frames[:6]:
        (tmp_path / "disk/rejected" / path.name).rename(path)
    assert totals(gathered(folders, tmp_path / "disk")) == (64, 0)


def test_renamed_with_a_prefix(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The frame is the same, and its row learns the new name."""
    frames = make_frames("disk", 3)
    gathered(folders, tmp_path / "disk")
    frames[1].rename(frames[1].with_name(f"bad_{frames[1].name}"))
    done = gathered(folders, tmp_path / "disk")
    assert (totals(done), done.new_count, done.gone.count) == ((2, 1), 0, 0)
    assert f",bad_{frames[1].name}," in log_of(folders).read_text("utf-8")


def test_the_authors_word_wins(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Both ways: a rejected frame that was taken back by hand stays kept, a kept one discarded by hand stays discarded."""
    _, second = make_frames("disk", 2)
    (rejected,) = make_frames("disk/rejected", 1, start="2026-11-21T10:00:00")
    gathered(folders, tmp_path / "disk")
    text = log_of(folders).read_text("utf-8")
    by_hand = text.replace(",False,rejected,", ",True,,")
    by_hand = by_hand.replace("10:05:10Z,300,Ha,light,True,,", "10:05:10Z,300,Ha,light,no,dew,")
    log_of(folders).write_text(by_hand, "utf-8")
    assert totals(gathered(folders, tmp_path / "disk")) == (2, 1)
    assert log_of(folders).read_text("utf-8") == by_hand
    second.rename(second.with_name("bad_1.fits"))
    rejected.rename(tmp_path / "disk/fine.fits")
    assert totals(gathered(folders, tmp_path / "disk")) == (2, 1)
    assert ",no,dew," in log_of(folders).read_text("utf-8")


def test_a_pattern_takes_the_place_of_the_words(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Of the command line, or of the diary for all logs; what may be published of it is its word, never a path."""
    make_frames("disk/rejected", 2)
    make_frames("disk/high cloud", 3, start="2026-11-21T10:00:00")
    done = gathered(folders, tmp_path / "disk", discarded=("high cloud/*",))
    assert (totals(done), done.sorting.discarded_by) == ((2, 3), {"high cloud/*": 3})
    assert ",False,high cloud," in log_of(folders).read_text("utf-8")
    diary = folders.content / "diary.yaml"
    diary.write_text(diary.read_text("utf-8") + "\ncaptures: {discarded: ['*_001.*']}\n", "utf-8")
    assert totals(gathered(folders, tmp_path / "disk", name="other")) == (3, 2)
    assert ",False,sorted out," in log_of(folders, "other").read_text("utf-8")


def test_a_copy_in_a_folder_of_rejects_discards_the_frame(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Whoever threw one of its files away threw away the frame."""
    make_frames("disk/backup", 2)
    make_frames("disk/lights/rejected", 2)
    done = gathered(folders, tmp_path / "disk")
    assert (totals(done), done.sorting.kinds["copy"]) == ((0, 2), 2)


def test_a_list_of_kept_frames(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """With or without folder and ending, in any column, by the name of a copy; what it names else is counted."""
    make_frames("disk", 5)
    listed = tmp_path / "used.csv"
    listed.write_text(
        "number,frame,score\n1,C:\\captures\\frame_2026-11-20_000.fits,9\n2,/x/frame_2026-11-20_001_cal_reg.tif,8\n"
        "3,reg_frame_2026-11-20_003.fits,7\n4,of_another_night.fits,6\n", "utf-8"
    )  # fmt: skip
    done = gathered(folders, tmp_path / "disk", kept_list=listed)
    assert (totals(done), done.strangers) == ((3, 2), 1)
    assert ",False,not in the list of kept frames," in log_of(folders).read_text("utf-8")
    listed.write_text("frame_2026-11-20_004\nframe_2026-11-20_002\n", "utf-8")
    assert totals(gathered(folders, tmp_path / "disk", kept_list=listed)) == (2, 3)


def test_a_table_that_judges_frames(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Of a frame whose file is there as well, and of one that it alone has; its later word counts, the author's own in the log
    before it, and without the table all stays."""
    make_frames("disk", 3)
    table = tmp_path / "judged.csv"
    rows = "2026-11-20T10:05:10Z,300,Ha,{0},{1}\n2026-11-20T11:00:00Z,300,Ha,{0},\n"
    table.write_text(f"start,exposure_s,filter,kept,reason\n{rows.format('no', 'cloud')}", "utf-8")
    assert counts(gathered(folders, tmp_path / "disk", table)) == (2, 2)
    assert counts(gathered(folders, tmp_path / "disk")) == (2, 2)
    text = log_of(folders).read_text("utf-8")
    assert "10:05:10Z,300,Ha,light,False,cloud," in text and "11:00:00Z,300,Ha,light,False,," in text
    table.write_text(f"start,exposure_s,filter,kept,reason\n{rows.format('yes', '')}", "utf-8")
    done = gathered(folders, tmp_path / "disk", table)
    assert (counts(done), done.judged_anew) == ((4, 0), {"kept": 2})
    text = log_of(folders).read_text("utf-8")
    log_of(folders).write_text(text.replace("11:00:00Z,300,Ha,light,True,,", "11:00:00Z,300,Ha,light,no,dew,"), "utf-8")
    assert counts(gathered(folders, tmp_path / "disk", table)) == (3, 1)


def counts(done: Gathering) -> tuple[int, int]:
    return done.totals.kept, done.totals.discarded


def test_a_list_that_names_none_of_the_frames(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It would discard all: that is an error, and nothing is written."""
    make_frames("disk", 2)
    listed = tmp_path / "used.txt"
    listed.write_text("elsewhere_1.fits\nelsewhere_2.fits\n", "utf-8")
    with pytest.raises(DiaryProblems, match=r"used\.txt:1:1: error: names none of the frames gathered; it has their names, with"):
        gathered(folders, tmp_path / "disk", kept_list=listed)
    assert not log_of(folders).exists()


def test_lists_and_patterns_hold_until_there_are_others(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A run of every morning without them changes no total; one with others judges anew."""
    make_frames("disk", 4)
    make_frames("disk", 2, start="2026-11-21T10:00:00", prefix="hazy_")
    listed = tmp_path / "used.txt"
    listed.write_text("frame_2026-11-20_000.fits\n", "utf-8")
    gathered(folders, tmp_path / "disk", kept_list=listed)
    assert totals(gathered(folders, tmp_path / "disk")) == (1, 5)
    listed.write_text("\n".join(path.name for path in (tmp_path / "disk").iterdir()), "utf-8")
    assert totals(gathered(folders, tmp_path / "disk", kept_list=listed)) == (6, 0)
    assert totals(gathered(folders, tmp_path / "disk", discarded=("hazy_*",))) == (4, 2)
    assert totals(gathered(folders, tmp_path / "disk")) == (4, 2)
    assert totals(gathered(folders, tmp_path / "disk", discarded=("none_*",))) == (6, 0)


def test_a_calibrated_copy_takes_no_row_over(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Gathered later from a folder of its own: the row goes on naming the original."""
    make_frames("lights", 2)
    make_frames("work", 2, prefix="cal_", CALSTAT="BDF", dtype=float)
    gathered(folders, tmp_path / "lights")
    before = log_of(folders).read_text("utf-8")
    assert gathered(folders, tmp_path / "work").known_count == 2
    assert ",cal_" not in log_of(folders).read_text("utf-8")
    assert before.count("frame_2026") == log_of(folders).read_text("utf-8").count("frame_2026") == 2


def test_frames_that_are_no_longer_there(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """They stay as they are until the author says; then they are discarded, or kept, and come back with their files."""
    frames = make_frames("disk", 5)
    gathered(folders, tmp_path / "disk")
    away = [path.rename(tmp_path / path.name) for path in frames[:2]]
    done = gathered(folders, tmp_path / "disk")
    assert (totals(done), done.gone.count, done.gone.discarded) == ((5, 0), 2, 0)
    done = gathered(folders, tmp_path / "disk", gone="discard")
    assert (totals(done), done.gone.discarded) == ((3, 2), 2)
    assert log_of(folders).read_text("utf-8").count(",False,no longer there,") == 2
    assert totals(gathered(folders, tmp_path / "disk")) == (3, 2)
    assert totals(gathered(folders, tmp_path / "disk", gone="keep")) == (5, 0)
    gathered(folders, tmp_path / "disk", gone="discard")
    for path, back in zip(away, frames, strict=False):
        path.rename(back)
    assert totals(gathered(folders, tmp_path / "disk")) == (5, 0)


def test_what_cannot_be_read_is_still_there(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A frame that was damaged, or locked, after it was gathered is told, and keeps its row."""
    damaged, *_ = make_frames("disk/lights", 3)
    gathered(folders, tmp_path / "disk")
    damaged.write_bytes(b"nonsense" * 400)
    done = gathered(folders, tmp_path / "disk/lights", gone="discard")
    assert (done.unreadable, done.gone.count, counts(done)) == (1, 0, (3, 0))


def test_an_unplugged_disk_discards_nothing(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """An empty mount point, and a folder that holds only what is new, are no proof that anything was deleted."""
    make_frames("disk", 3)
    gathered(folders, tmp_path / "disk")
    (tmp_path / "disk").rename(tmp_path / "unplugged")
    make_frames("disk", 1, start="2026-11-22T10:00:00")
    done = gathered(folders, tmp_path / "disk", gone="discard")
    assert (totals(done), done.gone.count, done.gone.unplugged) == ((4, 0), 0, 3)


def test_another_folder_is_not_judged(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Frames gathered from one disk are not missed on another, nor by a pattern or a single file; those above and below are."""
    frames = make_frames("disk/night", 2)
    make_frames("other", 1, start="2026-11-22T10:00:00")
    gathered(folders, tmp_path / "disk", tmp_path / "other")
    frames[0].unlink()
    assert gathered(folders, tmp_path / "other").gone.count == 0
    assert gathered(folders, frames[1]).gone.count == 0
    assert gathered(folders, tmp_path / "disk/night").gone.count == 1
    assert gathered(folders, tmp_path).gone.count == 1


def test_frames_need_no_file_to_be_read() -> None:
    """A reading of nothing is nothing."""
    assert frames_of((), (), (), None, TODAY).frames == ()
