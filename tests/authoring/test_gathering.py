"""Frames anywhere become one log of the diary: each frame once, nothing private, what the author added kept."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from astropy.table import Table

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.authoring.captures.trains import disagreements, header_train
from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.entry_file import config_of
from sitegen.authoring.gathering import GatherOptions, gather
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.rebuild import check
from tests.authoring.conftest import TODAY, MakeFrames, gathered, later_ns, log_of


def entry_of(folders: Folders) -> str:
    return (folders.content / "entries/first-light.md").read_text("utf-8")


def test_a_folder_becomes_a_log_that_the_entry_names(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """After one call the diary checks clean and counts the frames, wherever they lie."""
    make_frames("disk/one", 3)
    make_frames("disk/two", 2, start="2026-11-21T10:00:00", suffix=".fits.gz", FILTER="Luminance")
    before = entry_of(folders)
    done = gathered(folders, tmp_path / "disk")
    assert [(str(row.evening), row.what, row.count, row.exposure_s) for row in done.new] == [
        ("2026-11-20", "Ha", 3, 300.0),
        ("2026-11-21", "L", 2, 300.0),
    ]
    assert (done.new_count, done.known_count, done.unreadable, done.named) == (5, 0, 0, True)
    assert entry_of(folders) == before.replace(
        "logs: [logs/first-light.csv]", "logs: [logs/first-light.csv, logs/first-light.ecsv]"
    )
    assert check(folders, TODAY) == ()


def test_the_log_is_ecsv_as_its_authority_reads_it(folders: Folders, make_frames: MakeFrames) -> None:
    """astropy, whose format ECSV is, reads units and values back."""
    gathered(folders, *make_frames("disk", 2))
    table = Table.read(log_of(folders), format="ascii.ecsv")
    assert str(table["exposure_s"].unit) == "s"
    assert table["start"].tolist() == ["2026-11-20T10:00:00Z", "2026-11-20T10:05:10Z"]
    assert table["kept"].tolist() == [True, True]
    assert table["sensor_c"].tolist() == [-10.0, -10.0]


def test_what_it_remembers_of_places_and_names(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The place to 0.1°, never the exact one; the file below the folder gathered, never the path of the machine; no observer."""
    make_frames("home-of-somebody/night", 2)
    gathered(folders, tmp_path / "home-of-somebody")
    table = Table.read(log_of(folders), format="ascii.ecsv")
    assert (table["latitude_deg"][0], table["longitude_deg"][0]) == (-36.9, 174.8)
    assert table["file"][0] == "night/frame_2026-11-20_000.fits"
    text = log_of(folders).read_text("utf-8")
    for private in ("36.85", "36 51", "174 45", "Somebody", str(tmp_path)):
        assert private not in text


def test_without_names(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """No name of a file or folder gets into the log, and those that stood there go."""
    make_frames("home-of-somebody", 2)
    gathered(folders, tmp_path / "home-of-somebody", name="other", with_names=False)
    assert "frame_" not in log_of(folders, "other").read_text("utf-8")
    assert "somebody" not in log_of(folders, "other").read_text("utf-8")
    gathered(folders, tmp_path / "home-of-somebody")
    assert "frame_" in log_of(folders).read_text("utf-8")
    gathered(folders, tmp_path / "home-of-somebody", with_names=False)
    assert "frame_" not in log_of(folders).read_text("utf-8")


def test_known_frames_are_recognised(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A second call adds what is new alone, also where a copy of a frame lies elsewhere and is packed."""
    make_frames("disk", 3)
    gathered(folders, tmp_path / "disk")
    make_frames("disk", 2, start="2026-11-21T10:00:00")
    make_frames("copy", 3, suffix=".fit.gz")
    done = gathered(folders, tmp_path / "disk", tmp_path / "copy")
    assert (done.new_count, done.known_count) == (2, 3)
    assert done.sorting.kinds["copy"] == 3
    assert len(Table.read(log_of(folders), format="ascii.ecsv")) == 5


def test_what_differs_is_another_frame(folders: Folders, make_frames: MakeFrames) -> None:
    """The same moment with another exposure, filter or kind is a frame of its own."""
    one = make_frames("one", 1)
    others = [make_frames("a", 1, EXPTIME=60.0), make_frames("b", 1, FILTER="L"), make_frames("c", 1, IMAGETYP="Dark")]
    done = gathered(folders, *one, *(path for group in others for path in group))
    assert done.new_count == 4


def test_what_the_author_wrote_stays(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A frame discarded by hand in the log stays discarded, with its reason."""
    make_frames("disk", 2)
    gathered(folders, tmp_path / "disk")
    text = log_of(folders).read_text("utf-8")
    by_hand = text.replace("10:05:10Z,300,Ha,light,True,,", "10:05:10Z,300,Ha,light,no,a satellite,")
    assert by_hand != text
    log_of(folders).write_text(by_hand, "utf-8")
    make_frames("disk", 1, start="2026-11-22T10:00:00")
    assert gathered(folders, tmp_path / "disk").new_count == 1
    rows = log_of(folders).read_text("utf-8").splitlines()[-3:]
    assert [row.split(",")[4:6] for row in rows] == [["True", ""], ["no", "a satellite"], ["True", ""]]


def test_nothing_new_leaves_the_log_untouched(folders: Folders, make_frames: MakeFrames) -> None:
    """Not even its date changes."""
    frames = make_frames("disk", 2)
    gathered(folders, *frames)
    before = log_of(folders).stat().st_mtime_ns
    assert gathered(folders, *frames).new_count == 0
    assert log_of(folders).stat().st_mtime_ns == before


def test_an_unreadable_frame_is_named_and_the_rest_goes_on(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """One file of nonsense costs nothing but its own line."""
    make_frames("disk", 2)
    (tmp_path / "disk/broken.fits").write_bytes(b"nonsense" * 400)
    done = gathered(folders, tmp_path / "disk")
    wrong = f"{tmp_path}/disk/broken.fits:1:1: error: is not FITS; copy the frame again"
    assert [str(problem) for problem in done.problems] == [wrong]
    assert (done.new_count, done.unreadable) == (2, 1)


def test_a_header_against_the_rig_is_told_once(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """The gathered log cannot tell any more, so gather does, in one line for all frames."""
    make_frames("disk", 5, FOCALLEN=750.0)
    (problem,) = gathered(folders, tmp_path / "disk").problems
    wanted = "FOCALLEN is 750 mm, the rig 'first-train' had 1000 mm that evening (so in 4 more files)"
    assert (problem.severity, problem.wrong) == ("warning", wanted)


def test_a_camera_file_against_the_rig_is_told_in_its_own_words(folders: Folders) -> None:
    """A picture has no FOCALLEN: its author would look for it in vain."""
    start = datetime(2026, 11, 20, 10, tzinfo=UTC)
    record = FrameRecord("picture", start=start, exposure_s=30.0, focal_length_mm=50.0, width_px=60, height_px=40)
    rig = config_of(folders.content, TODAY).rigs["first-train"]
    wrongs = [wrong for wrong, _ in disagreements(header_train(record), rig, Frame(None, record, start, 30.0))]
    assert [wrong.partition(" is ")[0] for wrong in wrongs] == ["FocalLength", "the frame"]


def test_a_log_of_the_authors_own_is_not_written_over(folders: Folders, make_frames: MakeFrames) -> None:
    """A table under that name that gather did not write is refused, and stays."""
    log_of(folders).write_text("# %ECSV 1.0\n", "utf-8")
    with pytest.raises(
        DiaryProblems, match=r"logs/first-light\.ecsv:1:1: error: was not written by 'sitegen gather'; give it"
    ):
        gathered(folders, *make_frames("disk", 1))
    assert log_of(folders).read_text("utf-8") == "# %ECSV 1.0\n"


def test_finding(make_frames: MakeFrames, tmp_path: Path) -> None:
    """Folders, patterns and files give each frame once; what gives none is named."""
    make_frames("disk/deep/er", 2)
    (tmp_path / "disk/notes.txt").touch()
    (tmp_path / "disk/snapshot.jpg").touch()
    (tmp_path / "disk/.hidden.fits").touch()
    found = find_files(
        [str(tmp_path / "disk"), f"{tmp_path}/disk/**/*.fits", f"{tmp_path}/disk/deep/er/*", f"{tmp_path}/no*where", "gone"]
    )
    assert [path.name for path in found.paths] == ["frame_2026-11-20_000.fits", "frame_2026-11-20_001.fits"]
    assert [problem.wrong for problem in found.problems] == ["matches no log", "does not exist"]
    assert found.passed_over == {".jpg": 1, ".txt": 1}


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs a system with named pipes (POSIX)")
def test_a_pipe_is_not_waited_for(make_frames: MakeFrames, tmp_path: Path) -> None:
    """Opening one waits until somebody writes into it: it is passed over in a folder, and refused by its name."""
    make_frames("disk", 1)
    pipe = tmp_path / "disk/pipe.fits"
    os.mkfifo(pipe)
    seen = find_files([str(tmp_path / "disk"), str(pipe)])
    assert [path.name for path in seen.paths] == ["frame_2026-11-20_000.fits"]
    assert seen.passed_over == {".fits": 1}
    assert [(problem.path, problem.wrong) for problem in seen.problems] == [(str(pipe), "is neither a file nor a folder")]


@contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Nobody may look into it; root may look into anything, so that it works as another user meanwhile."""
    folder.chmod(0o000)
    was = os.geteuid()
    if was == 0:
        os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(was)
        folder.chmod(0o755)


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="needs a system whose folders can be locked (POSIX)")
def test_a_folder_that_cannot_be_listed(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It is told, and nothing counts as deleted because nobody could look; so also where it is named itself, or above."""
    make_frames("disk/one", 2)
    make_frames("disk/two", 2, start="2026-11-22T10:00:00")
    with TemporaryDirectory() as public:  # the folders above tmp_path are locked to other users
        Path(public).chmod(0o755)
        disk = shutil.copytree(tmp_path / "disk", Path(public) / "disk")
        gathered(folders, disk)
        with locked(disk / "two"):
            seen, itself, below = (find_files([str(disk / place), "missing"]) for place in ("", "two", "two/deeper"))
        memory = FrameMemory(folders.keep, later_ns())
        done = gather("first-light", seen, memory, folders, TODAY, GatherOptions(gone="discard"))
    told, missing = "cannot be read: Permission denied", ("missing", "does not exist")
    assert [(file.below[:4], seen.scopes) for file in seen.frames] == [("one/", {})] * 2
    assert [(each.path, each.wrong) for each in seen.problems] == [(str(disk / "two"), told), missing]
    assert [(each.path, each.wrong) for each in itself.problems] == [(str(disk / "two"), told), missing]
    assert [(each.path, each.wrong) for each in below.problems] == [(str(disk / "two/deeper"), told), missing]
    assert (done.totals.kept, done.totals.discarded, done.gone.count) == (4, 0, 0)


def test_names_that_are_no_utf_8(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """An old disk's: the log, which is UTF-8, spells the odd bytes out; the frames are known again, and missed when they go."""
    frames = make_frames("disk", 3)
    folder = Path(os.fsdecode(os.fsencode(tmp_path) + b"/caf\xe9"))
    try:
        folder.mkdir()
        for number, path in enumerate(frames):
            path.rename(Path(os.fsdecode(os.fsencode(folder) + b"/\xff%d.fits" % number)))
    except OSError:
        pytest.skip("needs a disk that takes names of any bytes")
    first, again = gathered(folders, folder), gathered(folders, folder)
    assert (first.new_count, again.new_count, again.known_count, again.problems) == (3, 0, 3, ())
    table = Table.read(log_of(folders), format="ascii.ecsv")
    assert table["file"].tolist() == [f"\\xff{number}.fits" for number in range(3)]
    assert table["folder"][0].startswith("caf\\xe9-")
    next(folder.iterdir()).unlink()
    assert gathered(folders, tmp_path).gone.count == 1
    assert check(folders, TODAY) == ()
