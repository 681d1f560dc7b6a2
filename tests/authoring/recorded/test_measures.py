"""Grading tables joined to frames. Common practice, no source; scales by 206.265 × pixel ÷ focal length, worked by hand."""

from pathlib import Path

import pytest

from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from tests.authoring.conftest import MakeFrames, gathered, log_of


def rows(folders: Folders, log: str) -> list[dict[str, str]]:
    lines = [line for line in log_of(folders, log).read_text("utf-8").splitlines() if not line.startswith("#")]
    headings = lines[0].split(",")
    return [dict(zip(headings, line.split(","), strict=True)) for line in lines[1:]]


def column(folders: Folders, name: str, log: str = "first-light") -> list[str]:
    return [row.get(name, "") for row in rows(folders, log)]


@pytest.fixture
def frames(make_frames: MakeFrames, tmp_path: Path) -> list[Path]:
    """Four subs of 1000 mm and 3.76 µm, binned 8 × 8: 206.265 × 30.08 ÷ 1000 = 6.20445 arcsec a pixel."""
    return make_frames(tmp_path / "disk", 4)


@pytest.fixture
def grades(tmp_path: Path, frames: list[Path]) -> Path:
    """By names in another folder, of another ending, derived; the last frame has no row, one row has no frame."""
    names = [f"D:\\work\\{frames[0].stem}.xisf", f"{frames[1].stem}_cal_reg.fits", frames[2].stem.upper(), "stranger_999.fits"]
    table = ["File;FWHM (px);Eccentricity;Stars;Verdict;Reason"]
    for number, name in enumerate(names):
        verdict = "rejected;wind" if number == 1 else "ok;"
        table.append(f"{name};{2 + number},5;0,6;{900 - number};{verdict}")
    path = tmp_path / "grades.csv"
    path.write_text("\n".join(table) + "\n", "utf-8")
    return path


def test_measures_join_whatever_path_or_ending(folders: Folders, frames: list[Path], grades: Path) -> None:
    """FWHM 2.5, 3.5 and 4.5 px are 15.511, 21.716 and 27.920 arcsec; an eccentricity of 0.6 is 1 / 0.8 = 1.25."""
    done = gathered(folders, frames[0].parent, measures=grades)
    assert (done.totals.kept, done.totals.discarded) == (3, 1)
    assert column(folders, "fwhm_arcsec") == ["15.511", "21.716", "27.92", ""]
    assert column(folders, "elongation") == ["1.25", "1.25", "1.25", ""]
    assert column(folders, "stars") == ["900", "899", "898", ""]
    assert column(folders, "reason") == ["", "wind", "", ""]
    assert "grades.csv: 1 row met no frame gathered, or several of one name" in done.told
    assert "grades.csv: 1 of 4 light frames have no row" in done.told


def test_a_verdict_holds_until_another_one(folders: Folders, frames: list[Path], grades: Path) -> None:
    """Gathered again without the table, the frame stays out; a new table takes it back in; the author's own word stays."""
    gathered(folders, frames[0].parent, measures=grades)
    assert gathered(folders, frames[0].parent).totals.discarded == 1
    grades.write_text(grades.read_text("utf-8").replace("rejected", "ok").replace("3,5", "3,0"), "utf-8")
    assert gathered(folders, frames[0].parent, measures=grades).judged_anew == {"kept": 1}
    assert column(folders, "fwhm_arcsec")[1] == "18.613"
    log_of(folders).write_text(log_of(folders).read_text("utf-8").replace(",True,", ",False,", 1), "utf-8")
    assert gathered(folders, frames[0].parent, measures=grades).totals.discarded == 1


def test_by_start_where_no_column_names_files(folders: Folders, frames: list[Path], tmp_path: Path) -> None:
    """Whole seconds, in UTC as frames are."""
    gathered(folders, frames[0].parent)
    start = column(folders, "start")[1]
    (tmp_path / "grades.csv").write_text(f"Start,FWHM (arcsec),Used\n{start},2.5,no\n", "utf-8")
    done = gathered(folders, frames[0].parent, measures=tmp_path / "grades.csv")
    assert (column(folders, "fwhm_arcsec"), done.totals.discarded) == (["", "2.5", "", ""], 1)


def test_the_same_name_in_two_nights(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The row's own folders tell them apart; a row without any is left out, and told."""
    first = make_frames(tmp_path / "disk/2026-11-20", 1)[0]
    second = tmp_path / "disk/2026-11-21" / first.name
    made = make_frames(tmp_path / "disk/2026-11-21", 2)
    made[0].unlink()
    made[1].rename(second)
    (tmp_path / "grades.csv").write_text(f"File,Elongation\n/x/2026-11-21/{first.name},1.5\n{first.name},1.9\n", "utf-8")
    done = gathered(folders, tmp_path / "disk", measures=tmp_path / "grades.csv")
    assert sorted(column(folders, "elongation")) == ["", "1.5"]
    assert "grades.csv: 1 row met no frame gathered, or several of one name" in done.told


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("File,FWHM\n{},2.5\n", r"'FWHM' may be in pixels or in arcseconds; say which: --columns fwhm_px=FWHM, or"),
        ("File,Elongation\nnobody.fits,1.5\n", "names none of the frames gathered"),
        ("File,Elongation\n{},round\n", r"grades.csv:2:\d+: error: 'Elongation' is 'round', no number"),
        ("Verdict,Elongation\nok,1.5\n", "no column names the frames, nor tells their starts"),
        ("File,Verdict\n{},perhaps\n", "'Verdict' is 'perhaps', neither yes nor no"),
    ],
)
def test_half_a_grading_is_none(text: str, sentence: str, folders: Folders, frames: list[Path], tmp_path: Path) -> None:
    """Nothing is gathered where a row or a column stays open."""
    (tmp_path / "grades.csv").write_text(text.format(frames[0].name), "utf-8")
    with pytest.raises(DiaryProblems, match=sentence):
        gathered(folders, frames[0].parent, measures=tmp_path / "grades.csv")
    assert not log_of(folders).exists()


def test_pixels_want_a_scale(folders: Folders, make_frames: MakeFrames, grades: Path, tmp_path: Path) -> None:
    """Headers without a focal length, and no rig: the width is left out, the rest is taken."""
    frames = make_frames(tmp_path / "bare", 2, FOCALLEN=0)
    grades.write_text(f"File,FWHM (px),Stars\n{frames[0].name},2.5,800\n", "utf-8")
    done = gathered(folders, tmp_path / "bare", name="stray", measures=grades)
    assert column(folders, "fwhm_arcsec", "stray") == ["", ""]
    assert column(folders, "stars", "stray") == ["800", ""]
    assert "grades.csv: FWHM of 1 frame is in pixels, whose scale nothing tells: name the --rig" in done.told
