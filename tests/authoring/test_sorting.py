"""Every frame file is of exactly one kind. The rules are common practice, no source; the headers are of the FITS standard's
keywords and the trade's common ones."""

from pathlib import Path

import numpy as np
import pytest

from sitegen.authoring.gather_report import Gathering
from sitegen.folders import Folders
from tests.authoring.conftest import MakeFrames, gathered

FLOAT = {"dtype": np.float32}


def kinds(done: Gathering) -> dict[str, int]:
    """Those there are; all files are in exactly one."""
    assert sum(done.sorting.kinds.values()) == done.sorting.files + done.sorting.rows
    return {kind: count for kind, count in done.sorting.kinds.items() if count}


def evidence(done: Gathering, kind: str) -> list[tuple[str, str, int]]:
    return [(each.what, each.why, each.count) for each in done.sorting.left_out if each.kind == kind]


def test_any_mixture_gives_the_same_totals(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Originals alone, and with calibrated, registered and backed-up copies, a stack, a focus run and darks beside them."""
    make_frames("disk/lights", 6)
    alone = gathered(folders, tmp_path / "disk", name="alone").totals
    make_frames("disk/a", 6, prefix="cal_", CALSTAT="BDF", **FLOAT)
    make_frames("disk/b", 6, prefix="reg_", history=("registered to the first",), NAXIS1=700, **FLOAT)
    make_frames("disk/backup/of/lights", 6)
    make_frames("disk/c", 1, prefix="all_", EXPTIME=1800.0, NCOMBINE=6, **FLOAT)
    make_frames("disk/d", 9, start="2026-11-20T09:50:00", prefix="af_", EXPTIME=3.0, step_s=8, steps=40)
    make_frames("disk/e", 3, start="2026-11-20T08:00:00", IMAGETYP="Dark")
    done = gathered(folders, tmp_path / "disk", name="mixed")
    assert (done.totals.kept, alone.kept) == (6, 6)
    assert kinds(done) == {"kept": 6, "calibration": 3, "copy": 18, "combined": 1, "focus run": 9}
    why = "start, exposure and camera of another frame"
    assert evidence(done, "copy") == [("backed up", why, 6), ("calibrated", why, 6), ("registered", why, 6)]
    assert evidence(done, "combined") == [("", "the header counts its inputs", 1)]
    assert evidence(done, "focus run") == [("", "short, in quick succession, and the focuser steps", 9)]


def test_the_rawest_counts_wherever_it_lies(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """No sign of processing and integer pixels before a shorter path."""
    make_frames("disk", 2, prefix="k_", CALSTAT="BDF", **FLOAT)
    make_frames("disk/very/deep/down", 2, prefix="z_")
    gathered(folders, tmp_path / "disk")
    log = (folders.content / "logs/first-light.ecsv").read_text("utf-8")
    assert "very/deep/down/z_2026-11-20_000.fits" in log and ",k_2026" not in log


def test_a_copy_without_its_original_counts_itself(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The light was gathered, whatever became of the first file."""
    make_frames("disk", 3, prefix="cal_", CALSTAT="BDF", **FLOAT)
    assert kinds(gathered(folders, tmp_path / "disk")) == {"kept": 3}


def test_two_cameras_fired_together_are_two(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Serial numbers part them, though start, exposure and train agree; without a rig they are two trains."""
    make_frames("disk/a", 2, CAMSER="A1")
    make_frames("disk/b", 2, CAMSER="B2")
    assert kinds(gathered(folders, tmp_path / "disk")) == {"kept": 4}
    assert kinds(gathered(folders, tmp_path / "disk", name="other")) == {"kept": 2, "other train": 2}


@pytest.mark.parametrize(
    ("stack", "why"),
    [
        ({"EXPTIME": 3000.0, "start": "2026-11-20T10:00:00"}, "as long as the sum of others, and begun in their time"),
        ({"EXPTIME": 2400.0, "start": "2026-11-20T10:20:00"}, "as long as the sum of others, and begun in their time"),
        ({"EXPTIME": 3000.0, "start": "2026-11-25T18:00:00"}, "as long as all others together"),
    ],
)
def test_an_exposure_that_is_the_sum_of_others(
    folders: Folders, make_frames: MakeFrames, tmp_path: Path, stack: dict[str, object], why: str
) -> None:
    """A camera cannot expose two frames at once; a stack that carries the time it was made equals all of them."""
    make_frames("disk", 10)
    make_frames("disk/x", 1, prefix="x_", **stack)
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 10, "combined": 1}
    assert evidence(done, "combined") == [("", why, 1)]


def test_long_subs_among_short_ones_stay_subs(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """600 s is twice 300 s, and 900 s all of three: they stand before and after the others, so they are light of their own."""
    make_frames("disk/a", 3)
    make_frames("disk/b", 2, start="2026-11-20T10:16:00", EXPTIME=600.0, step_s=610)
    make_frames("disk/c", 1, start="2026-11-20T10:40:00", EXPTIME=900.0)
    assert kinds(gathered(folders, tmp_path / "disk")) == {"kept": 6}


def test_a_master_dark_is_no_dark(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Its kind's own words, or its count of inputs."""
    make_frames("disk/a", 4, IMAGETYP="Dark")
    make_frames("disk/b", 1, start="2026-11-20T12:00:00", IMAGETYP="Master Dark", **FLOAT)
    make_frames("disk/c", 1, start="2026-11-20T13:00:00", IMAGETYP="Dark", history=("median of 20 frames",), **FLOAT)
    assert kinds(gathered(folders, tmp_path / "disk")) == {"calibration": 4, "combined": 2}


def test_short_subs_are_no_focus_run(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A bright core at 10 s beside subs of 300 s: the focuser follows the temperature, now and then."""
    make_frames("disk/a", 4)
    for number in range(5):
        start = f"2026-11-20T11:0{number}:00"
        make_frames("disk/core", 4, start=start, prefix=f"{number}_", EXPTIME=10.0, step_s=14, FOCUSPOS=5000 - number)
    assert kinds(gathered(folders, tmp_path / "disk")) == {"kept": 24}


@pytest.mark.parametrize(
    ("folder", "prefix", "header", "why"),
    [
        ("focus", "x_", {}, "a folder or name says so"),
        ("Fokus 2026-11-20", "x_", {}, "a folder or name says so"),
        ("a", "autofocus_", {}, "a folder or name says so"),
        ("a", "x_", {"IMAGETYP": "FOCUS"}, "the kind in the header says so"),
    ],
)
def test_what_says_that_it_is_for_focusing(
    folders: Folders, make_frames: MakeFrames, tmp_path: Path, folder: str, prefix: str, header: dict[str, str], why: str
) -> None:
    """In English, or in the language of the diary."""
    diary = folders.content / "diary.yaml"
    diary.write_text(diary.read_text("utf-8").replace("language: en", "language: de"), "utf-8")
    make_frames("disk/lights", 2)
    make_frames(f"disk/{folder}", 3, start="2026-11-20T09:00:00", prefix=prefix, EXPTIME=5.0, **header)
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 2, "focus run": 3}
    assert evidence(done, "focus run") == [("", why, 3)]


def test_kinds_that_a_header_leaves_to_the_folder(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A header without a kind in a folder of darks is one; an unknown kind is passed over, with its words."""
    make_frames("disk/lights", 2, IMAGETYP=None)
    make_frames("disk/Darks", 3, start="2026-11-20T08:00:00", IMAGETYP=None)
    make_frames("disk/t", 1, start="2026-11-20T07:00:00", IMAGETYP="Snapshot")
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 2, "calibration": 3, "passed over": 1}
    assert evidence(done, "passed over") == [("", "IMAGETYP is 'Snapshot', no kind of frame", 1)]


def test_a_finished_picture_without_a_date_is_no_fault(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It says that it was processed; a raw frame without an exposure is unreadable all the same."""
    make_frames("disk", 2)
    make_frames("disk/done", 1, EXPTIME=None, history=("calibrated, registered",), **FLOAT)
    make_frames("disk/broken", 1, EXPTIME=None)
    assert kinds(gathered(folders, tmp_path / "disk")) == {"kept": 2, "passed over": 1, "unreadable": 1}


def test_other_targets_by_pointing_and_by_name(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The pointing tells; else the catalogue's place of the name; frames with neither belong."""
    make_frames("disk/a", 3, OBJCTRA="05 38 40", OBJCTDEC="-69 06 00")
    make_frames("disk/b", 2, start="2026-11-21T10:00:00", OBJECT="elsewhere", OBJCTRA="00 47 33", OBJCTDEC="-25 17 00")
    make_frames("disk/c", 4, start="2026-11-22T10:00:00", OBJECT="NGC 7293")
    make_frames("disk/d", 1, start="2026-11-23T10:00:00", OBJECT="who knows")
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 4, "other target": 6}
    assert done.sorting.other_targets == {"NGC 7293": 4, "elsewhere": 2}
    assert (done.sorting.target, done.sorting.placeless) == ("NGC 2070", 1)


def test_the_target_asked_for(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It wins over the entry's; without an entry or a word, what most frames name counts."""
    make_frames("disk/a", 3)
    make_frames("disk/b", 2, start="2026-11-21T10:00:00", OBJECT="NGC 253")
    assert gathered(folders, tmp_path / "disk", name="one", target="NGC 253").totals.kept == 2
    assert gathered(folders, tmp_path / "disk", name="two").totals.kept == 3
    make_frames("disk/c", 5, start="2026-11-22T10:00:00", OBJECT="NGC 253")
    assert gathered(folders, tmp_path / "disk", name="three").sorting.target == "NGC 253"
    assert gathered(folders, tmp_path / "disk", name="two").sorting.target == "NGC 2070"
    assert gathered(folders, tmp_path / "disk").sorting.target == "NGC 2070"


def test_asked_again_for_another_target(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The log is sorted anew: what it took for the wrong one goes, with its number."""
    make_frames("disk/a", 3)
    make_frames("disk/b", 2, start="2026-11-21T10:00:00", OBJECT="NGC 253")
    gathered(folders, tmp_path / "disk", name="one")
    done = gathered(folders, tmp_path / "disk", name="one", target="NGC 253")
    assert (done.totals.kept, done.new_count, done.removed) == (2, 2, {"other target": 3})


def test_a_mosaic_grows_from_panel_to_panel(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Panels a degree apart, of a field of 1.6° across, hang together over four degrees; a field three degrees off does not."""
    for number, dec in enumerate((-25, -26, -27, -28, -29)):
        make_frames(f"disk/{number}", 2, start=f"2026-11-1{number}T10:00:00", OBJECT=f"p{number}", RA=11.9, DEC=float(dec))
    make_frames("disk/far", 1, start="2026-11-19T10:00:00", OBJECT="far", RA=11.9, DEC=-32.5)
    done = gathered(folders, tmp_path / "disk", name="mosaic", target="NGC 253")
    assert kinds(done) == {"kept": 10, "other target": 1}


def test_the_next_panel_grows_from_what_the_log_has(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Gathered on another night, from another folder."""
    make_frames("one", 1, OBJECT="p", RA=11.9, DEC=-25.3)
    make_frames("two", 1, start="2026-11-21T10:00:00", OBJECT="p", RA=11.9, DEC=-26.5)
    make_frames("three", 1, start="2026-11-22T10:00:00", OBJECT="p", RA=11.9, DEC=-27.7)
    for folder in ("one", "two", "three"):
        done = gathered(folders, tmp_path / folder, name="mosaic", target="NGC 253")
    assert done.totals.kept == 3


def test_a_target_without_a_place_goes_by_its_name(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A comet moves; its name is spelt now so, now so."""
    make_frames("disk/a", 2, OBJECT="C/2031 Q9", RA=10.0, DEC=-20.0)
    make_frames("disk/b", 2, start="2026-11-23T10:00:00", OBJECT="Comet C2031 Q9", RA=14.0, DEC=-24.0)
    make_frames("disk/c", 2, start="2026-11-24T10:00:00", OBJECT="NGC 253")
    done = gathered(folders, tmp_path / "disk", name="comet", target="C/2031 Q9")
    assert kinds(done) == {"kept": 4, "other target": 2}


def test_another_train_is_set_aside(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """By focal length, by pixel, by frame, by colour; the entry's rig says which is the log's, though it took fewer frames."""
    make_frames("disk/own", 2)
    make_frames("disk/a", 3, start="2026-11-21T10:00:00", FOCALLEN=400.0)
    make_frames("disk/b", 1, start="2026-11-21T12:00:00", XPIXSZ=8 * 2.9)
    make_frames("disk/c", 1, start="2026-11-21T13:00:00", NAXIS1=400)
    make_frames("disk/d", 1, start="2026-11-21T14:00:00", BAYERPAT="RGGB")
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 2, "other train": 6}
    first = done.sorting.other_trains[0]
    assert (str(first.train), first.count) == ("400 mm, 3.76 µm pixels, 6248 × 4176 px", 3)


def test_without_a_rig_the_train_of_most_frames(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """And of what the log has already, once it has some. Another binning of one camera is the same train."""
    make_frames("disk/a", 3)
    make_frames("disk/a2", 1, start="2026-11-20T12:00:00", XBINNING=4, XPIXSZ=4 * 3.76, NAXIS1=1562, NAXIS2=1044)
    make_frames("disk/b", 2, start="2026-11-21T10:00:00", FOCALLEN=400.0)
    assert kinds(gathered(folders, tmp_path / "disk", name="own")) == {"kept": 4, "other train": 2}
    make_frames("disk/c", 9, start="2026-11-22T10:00:00", FOCALLEN=400.0)
    assert kinds(gathered(folders, tmp_path / "disk", name="own")) == {"kept": 4, "other train": 11}
    assert gathered(folders, tmp_path / "disk", name="new").totals.kept == 11


def test_a_rig_that_no_frame_agrees_with(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Then the frames' own train counts, and the warning that names the cure tells of it once."""
    make_frames("disk", 5, FOCALLEN=750.0)
    done = gathered(folders, tmp_path / "disk")
    assert kinds(done) == {"kept": 5}
    assert [problem.wrong for problem in done.problems] == [
        "FOCALLEN is 750 mm, the rig 'first-train' had 1000 mm that evening (so in 4 more files)"
    ]


def test_the_three_folders_of_one_galaxy(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Of frames of other objects between, none counts: 5 subs of 300 s, not 12."""
    for number in range(3):
        make_frames(f"disk/{number}", 1 + number % 2, start=f"2026-11-1{number}T10:00:00")
        make_frames(f"disk/{number}/x", 3, start=f"2026-11-1{number}T12:00:00", OBJECT="NGC 253")
    done = gathered(folders, *(tmp_path / f"disk/{number}" for number in range(3)))
    assert (done.totals.kept, done.sorting.other_targets) == (4, {"NGC 253": 9})


def test_starts_are_to_the_half_second(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """0.4 s apart is a copy, 0.6 s another frame."""
    second = "2026-11-20T10:00:00"
    make_frames("disk/a", 1, start=f"{second}.100", EXPTIME=0.2)
    make_frames("disk/b", 1, start=f"{second}.100")
    make_frames("disk/c", 1, start=f"{second}.500")
    make_frames("disk/d", 1, start=f"{second}.700")
    assert gathered(folders, tmp_path / "disk").sorting.kinds["copy"] == 1


def test_fields_without_a_name(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """They are told by where they lie, dithered frames together; that place is a target to ask for."""
    make_frames("disk/a", 3)
    for number in range(4):
        start = f"2026-11-21T1{number}:00:00"
        make_frames("disk/b", 1, start=start, prefix=f"{number}_", OBJECT=None, RA=40.0 + 0.02 * number, DEC=-60.0)
    assert gathered(folders, tmp_path / "disk").sorting.other_targets == {"40.0 -60.0": 4}
    assert gathered(folders, tmp_path / "disk", name="field", target="40.0 -60.0").totals.kept == 4
