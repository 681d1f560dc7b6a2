"""A new entry from logs: what headers tell is recognised, what they do not is left open, and check has nothing to say."""

import shutil
from pathlib import Path

import pytest

from sitegen.authoring.frame_hints import angle_deg
from sitegen.authoring.frames_found import find_logs
from sitegen.authoring.new_entry import Beginning, begin, recognised
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.reading.reader import read_diary
from sitegen.rebuild import check
from tests.authoring.conftest import TODAY, MakeFrames

OTHER_RIG = """name: Small train
telescope: {focal_length_mm: 400}
camera: {pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}
filters: {Ha: {kind: narrowband}, L: {kind: broadband}}
"""
OTHER_SITE = "name: Lake\nlatitude_deg: 60.2\nlongitude_deg: 25.6\ntime_zone: Europe/Helsinki\n"


def begun(folders: Folders, *words: Path | str) -> Beginning:
    return begin("new-one", find_logs(map(str, words)).paths, folders, TODAY)


def text_of(folders: Folders) -> str:
    return (folders.content / "entries/new-one.md").read_text("utf-8")


def add(folders: Folders, path: str, text: str) -> None:
    (folders.content / path).write_text(text, "utf-8")


def test_everything_is_recognised(folders: Folders, make_frames: MakeFrames) -> None:
    """Among two rigs and two sites the headers choose; the entry reads as they say, and checks clean."""
    add(folders, "rigs/a-small-train.yaml", OTHER_RIG)
    add(folders, "sites/a-lake.yaml", OTHER_SITE)
    done = begun(folders, *make_frames("disk", 3), *make_frames("disk", 2, start="2026-11-21T10:00:00", FILTER="Lum"))
    assert [told[:3] for told in recognised(done.draft)] == [
        ("target", "NGC 2070", True), ("rig", "first-train", True), ("site", "garden", True)
    ]  # fmt: skip
    assert check(folders, TODAY) == ()
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    entry = next(entry for entry in diary.entries if entry.slug == "new-one")
    assert (entry.stage, entry.targets[0].name, len(entry.subs)) == ("gathering", "NGC 2070", 5)
    assert "#  2026-11-21: {clouds: , wind: , ended_by: }  # L 2 × 300 s" in text_of(folders)


def test_a_filter_the_rig_does_not_have(folders: Folders, make_frames: MakeFrames) -> None:
    """The logs wait, and say what for; the entry checks clean, and still does when the rig has the filter and they are awake."""
    done = begun(folders, *make_frames("disk", 2), *make_frames("disk", 2, start="2026-11-21T10:00:00", FILTER="OIII"))
    assert recognised(done.draft)[1] == ("rig", "first-train", False, "'OIII' is none of its filters")
    waiting = "# The logs wait until rigs/first-train.yaml has 'OIII' among its filters; then take the '#' away.\n#logs: "
    assert waiting in text_of(folders)
    assert check(folders, TODAY) == ()
    rig = folders.content / "rigs/first-train.yaml"
    rig.write_text(rig.read_text("utf-8").replace("\n  Ha:", "\n  OIII: {kind: narrowband}\n  Ha:", 1), "utf-8")
    add(folders, "entries/new-one.md", text_of(folders).replace("\n#logs: ", "\nlogs: "))
    assert check(folders, TODAY) == ()


def test_the_place_is_written_nowhere(folders: Folders, make_frames: MakeFrames) -> None:
    """The site is recognised by its position, and the position forgotten."""
    begun(folders, *make_frames("disk", 2))
    for path in (folders.content / "logs/new-one.ecsv", folders.content / "entries/new-one.md"):
        assert "36" not in path.read_text("utf-8") and "174" not in path.read_text("utf-8")


def test_a_name_unknown_but_a_known_field(folders: Folders, make_frames: MakeFrames) -> None:
    """Where the name helps nobody, the mount's coordinates do: 05 38 36, -69 05 11 is NGC 2070 (OpenNGC)."""
    done = begun(folders, *make_frames("disk", 1, OBJECT="session 7", OBJCTRA="05 38 40", OBJCTDEC="-69 06 00"))
    assert done.draft.target is not None
    assert done.draft.target.name == "NGC 2070"


def test_a_field_nobody_named(folders: Folders, make_frames: MakeFrames) -> None:
    """The header's own name with its coordinates, to be confirmed; the entry still checks clean."""
    done = begun(folders, *make_frames("disk", 1, OBJECT="empty: field", RA=40.0, DEC=-60.2))
    assert 'target: {name: "empty: field", ra: 40.0, dec: -60.2}  # To write:' in text_of(folders)
    assert done.problems == ()
    assert check(folders, TODAY) == ()


def test_a_rig_in_doubt_is_marked(folders: Folders, make_frames: MakeFrames) -> None:
    """The nearest rig is named, with what speaks against it."""
    done = begun(folders, *make_frames("disk", 1, FOCALLEN=600.0))
    assert (
        "rig: first-train  # To write: the logs leave it open (FOCALLEN is 600 mm, the rig 'first-train' had 1000 mm"
        in text_of(folders)
    )
    assert [problem.severity for problem in done.problems] == ["warning"]


def test_without_a_rig_the_logs_wait(folders: Folders, make_frames: MakeFrames) -> None:
    """A diary without rigs gets an entry that checks clean, its logs asleep."""
    shutil.rmtree(folders.content / "rigs")
    (folders.content / "entries/first-light.md").unlink()
    begun(folders, *make_frames("disk", 1))
    assert "#logs: [logs/new-one.ecsv]" in text_of(folders)
    assert check(folders, TODAY) == ()


def test_logs_inside_the_diary_are_named_where_they_lie(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """No second log is written; a folder's frames become one pattern, a table its own name."""
    make_frames("diary/content/logs/night", 3)
    make_frames("diary/content/logs/night", 2, start="2026-11-21T10:00:00", suffix=".fits.gz")
    done = begun(folders, folders.content / "logs/night", folders.content / "logs/first-light.csv")
    assert done.draft.logs == ("logs/first-light.csv", "logs/night/*.fits", "logs/night/*.fits.gz")
    assert done.gathering is None
    assert check(folders, TODAY) == ()


def test_an_entry_is_never_written_over(folders: Folders, make_frames: MakeFrames) -> None:
    """The second time it is refused, and the first stays to the byte."""
    frames = make_frames("disk", 1)
    begun(folders, *frames)
    before = text_of(folders)
    with pytest.raises(
        DiaryProblems, match=r"entries/new-one\.md:1:1: error: exists already and is left as it is; 'sitegen gather'"
    ):
        begun(folders, *frames)
    assert text_of(folders) == before


def test_schemas_follow_the_version(folders: Folders, make_frames: MakeFrames) -> None:
    """What start wrote is brought up to date; a diary without schemas gets no line that leads nowhere."""
    schema = folders.content / ".schemas/rig.json"
    fresh = schema.read_text("utf-8")
    schema.write_text("{}", "utf-8")
    frames = make_frames("disk", 1)
    begun(folders, *frames)
    assert schema.read_text("utf-8") == fresh
    assert "$schema=../.schemas/entry.json" in text_of(folders)
    shutil.rmtree(folders.content / ".schemas")
    (folders.content / "entries/new-one.md").unlink()
    begun(folders, *frames)
    assert "$schema" not in text_of(folders)


def test_two_targets_are_told(folders: Folders, make_frames: MakeFrames) -> None:
    """Frames of another target would count into the wrong entry: that is worth a warning."""
    done = begun(folders, *make_frames("a", 2), *make_frames("b", 1, start="2026-11-21T10:00:00", OBJECT="NGC 253"))
    assert [problem.wrong for problem in done.problems] == ["1 of the frames show NGC 253, not NGC 2070"]


def test_nothing_readable_begins_nothing(folders: Folders, tmp_path: Path) -> None:
    """No entry is left behind by a folder of nonsense."""
    (tmp_path / "bad.fits").write_bytes(b"x" * 3000)
    with pytest.raises(DiaryProblems, match="no frame could be read, so no entry was begun"):
        begun(folders, tmp_path / "bad.fits")
    assert not (folders.content / "entries/new-one.md").exists()


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("-36 51 02.5", -36.850694),
        ("+54:20:57", 54.349167),
        ("174.76", 174.76),
        ("36d51m S", -36.85),
        ("-0 30 00", -0.5),
        ("here", None),
        ("", None),
    ],
)
def test_angles_in_headers(text: str, degrees: float | None) -> None:
    """Decimal, sexagesimal, with a sign or a letter; a sign before a zero counts."""
    assert angle_deg(text) == (None if degrees is None else pytest.approx(degrees, abs=1e-6))
