"""A new entry from logs: what headers tell is recognised, what they do not is left open, and check has nothing to say."""

import re
import shutil
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.gathering import GatherOptions
from sitegen.authoring.new_entry import Beginning, begin, recognised
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.reading.capture_logs.header_angles import angle_deg
from sitegen.reading.reader import read_diary
from sitegen.rebuild import check
from tests.authoring.conftest import TODAY, MakeFrames, gathered, later_ns

OTHER_RIG = """name: Small train
telescope: {focal_length_mm: 400}
camera: {pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}
filters: {Ha: {kind: narrowband}, L: {kind: broadband}}
"""
OTHER_SITE = "name: Lake\nlatitude_deg: 60.2\nlongitude_deg: 25.6\ntime_zone: Europe/Helsinki\n"


def begun(folders: Folders, *words: Path | str, today: date = TODAY, **options: Any) -> Beginning:
    memory = FrameMemory(folders.keep, later_ns())
    return begin("new-one", find_files(map(str, words)), memory, folders, today, GatherOptions(**options))


def complaints(folders: Folders) -> list[str]:
    """What check says but for the paragraphs that only the author can write."""
    gap = "this paragraph is still to be written, and not published until it is"
    return [str(problem) for problem in check(folders, TODAY) if problem.wrong != gap]


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
    assert complaints(folders) == []
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    entry = next(entry for entry in diary.entries if entry.slug == "new-one")
    assert (entry.stage, entry.targets[0].name, len(entry.subs)) == ("gathering", "NGC 2070", 5)
    assert "#  2026-11-21: {clouds: , wind: , ended_by: }  # L 2 × 300 s" in text_of(folders)


def test_a_filter_the_rig_does_not_have(folders: Folders, make_frames: MakeFrames) -> None:
    """The logs wait, and say what for; the entry checks clean, and still does when the rig has the filter and they are awake."""
    done = begun(folders, *make_frames("disk", 2), *make_frames("disk", 2, start="2026-11-21T10:00:00", FILTER="OIII"))
    doubt = "guessed from the headers' 1000 mm, 3.76 µm pixels, 6248 × 4176 px; 'OIII' is none of its filters"
    assert recognised(done.draft)[1] == ("rig", "first-train", False, doubt)
    waiting = (
        "# 2 subs wait for 'OIII': add the line 'OIII: {kind: narrowband, centre_nm: 500.7}' under 'filters' in "
        "rigs/first-train.yaml, or 'spelt: [OIII]' to one of its filters: Ha, L\n"
        "# The logs wait until that is done; then take the '#' away.\n#logs: "
    )
    assert waiting in text_of(folders)
    assert complaints(folders) == []
    rig = folders.content / "rigs/first-train.yaml"
    rig.write_text(rig.read_text("utf-8").replace("\n  Ha:", "\n  OIII: {kind: narrowband}\n  Ha:", 1), "utf-8")
    add(folders, "entries/new-one.md", text_of(folders).replace("\n#logs: ", "\nlogs: "))
    assert complaints(folders) == []


def test_a_spelling_of_a_filter_that_the_rig_has(folders: Folders, make_frames: MakeFrames) -> None:
    """The hint leads to no second filter."""
    begun(folders, *make_frames("disk", 2, FILTER="Ha deep 3"))
    line = "# 2 subs wait for 'Ha deep 3': add 'spelt: [Ha deep 3]' to the filter 'Ha' in rigs/first-train.yaml"
    assert line in text_of(folders).splitlines()


def test_subs_without_a_filter_where_the_rig_has_some(folders: Folders, make_frames: MakeFrames) -> None:
    """Such a log would be an error: it waits, and the line that ends the waiting stands there; with it the diary checks clean."""
    begun(folders, *make_frames("disk", 2, FILTER=None))
    line = "logs: [{files: [logs/new-one.ecsv], filter: Ha}]"
    assert f"2 subs wait for the name of their filter, which no header tells: write '{line}' if it was 'Ha'" in text_of(folders)
    assert complaints(folders) == []
    add(folders, "entries/new-one.md", text_of(folders).replace("#logs: [logs/new-one.ecsv]", line))
    assert complaints(folders) == []


def test_the_exact_place_is_written_nowhere(folders: Folders, make_frames: MakeFrames) -> None:
    """The site is recognised by its position; a tenth of a degree of it stays in the log, nothing in the entry."""
    begun(folders, *make_frames("disk", 2))
    assert "36.85" not in (folders.content / "logs/new-one.ecsv").read_text("utf-8")
    assert "36" not in text_of(folders) and "174" not in text_of(folders)


def test_a_name_unknown_but_a_known_field(folders: Folders, make_frames: MakeFrames) -> None:
    """The header's own name is kept with its place; 05 38 36, -69 05 11 is NGC 2070 (OpenNGC), which is only offered."""
    done = begun(folders, *make_frames("disk", 1, OBJECT="session 7", OBJCTRA="05 38 40", OBJCTDEC="-69 06 00"))
    assert done.draft.target is not None
    assert (done.draft.target.name, done.draft.target.offered) == ("session 7", "NGC 2070")
    line = (
        "target: {name: session 7, ra: 84.6667, dec: -69.1}  # to be confirmed: guessed from the headers' own name and "
        "pointing; the catalogue has NGC 2070 there\n"
    )
    assert line in text_of(folders)
    assert complaints(folders) == []


def test_no_name_but_a_known_field(folders: Folders, make_frames: MakeFrames) -> None:
    """Then the pointing alone is left to guess from, and is said to be."""
    begun(folders, *make_frames("disk", 1, OBJECT=None, OBJCTRA="05 38 42", OBJCTDEC="-69 11 00"))
    line = "target: NGC 2070  # to be confirmed: guessed from the pointing, 5′ from it; the headers name nothing"
    assert line in text_of(folders).splitlines()


def test_a_panel_of_a_mosaic(folders: Folders, make_frames: MakeFrames) -> None:
    """Its target is guessed from the panel's name, and is said to be; it becomes no neighbour within the field."""
    begun(folders, *make_frames("disk", 2, OBJECT="NGC 253 panel 2", OBJCTRA="00 48 10", OBJCTDEC="-25 20 00"))
    line = "target: NGC 253  # to be confirmed: guessed from the panel's name 'NGC 253 panel 2'\n"
    assert line in text_of(folders)


def test_a_comet(folders: Folders, make_frames: MakeFrames) -> None:
    """What moves has no place, and the draft checks clean."""
    begun(folders, *make_frames("disk", 2, OBJECT="C/2031 Q9", OBJCTRA="00 48 10", OBJCTDEC="-25 20 00"))
    assert "target: {name: C/2031 Q9, kind: moving}  # to be confirmed: guessed from its name\n" in text_of(folders)
    assert complaints(folders) == []


def test_a_field_nobody_named(folders: Folders, make_frames: MakeFrames) -> None:
    """The header's own name with its coordinates, to be confirmed; the entry still checks clean."""
    done = begun(folders, *make_frames("disk", 1, OBJECT="empty: field", RA=40.0, DEC=-60.2))
    line = "target: {name: \"empty: field\", ra: 40.0, dec: -60.2}  # to be confirmed: guessed from the headers' own name and"
    assert f"{line} pointing" in text_of(folders).splitlines()
    assert done.problems == ()
    assert complaints(folders) == []


@pytest.mark.parametrize(
    ("first_night", "published", "stage"),
    [
        ("2021-03-05", "2021-03-07", "finished"),
        ("2026-11-20", "2026-11-22", "gathering"),
        ("2026-11-24", "2026-11-25", "gathering"),
    ],
)
def test_a_project_is_dated_by_its_last_night(
    folders: Folders, make_frames: MakeFrames, first_night: str, published: str, stage: str
) -> None:
    """Published the day after it and never in the future; still gathering where it is younger than two months."""
    second = str(date.fromisoformat(first_night).replace(day=int(first_night[-2:]) + 1))
    begun(folders, *make_frames("a", 1, start=f"{first_night}T10:00:00"), *make_frames("b", 1, start=f"{second}T10:00:00"))
    assert f"\npublished: {published}\n" in text_of(folders)
    assert f"\nstage: {stage}\n" in text_of(folders)


def test_wanted_of_a_colour_camera(folders: Folders, make_frames: MakeFrames) -> None:
    """The key that works when the '#' is taken away."""
    colour = OTHER_RIG.replace("mono", "colour").replace("filters: {Ha: {kind: narrowband}, L: {kind: broadband}}\n", "")
    add(folders, "rigs/colour.yaml", colour)
    begun(folders, *make_frames("disk", 2, FILTER=None, FOCALLEN=400.0, BAYERPAT="RGGB"))
    assert "rig: colour\n" in text_of(folders)
    assert "#wanted: {colour: 4}" in text_of(folders)
    add(folders, "entries/new-one.md", text_of(folders).replace("#wanted", "wanted"))
    assert complaints(folders) == []


def test_it_counts_what_gather_counts(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Copies, combined frames and other targets are in neither; the night lines are those of the subs."""
    make_frames("disk/lights", 4)
    make_frames("disk/calibrated", 4, prefix="cal_", dtype="float32", CALSTAT="BDF")
    make_frames("disk/stacks", 1, prefix="sum_", dtype="float32", EXPTIME=1200.0, NCOMBINE=4)
    make_frames("disk/other", 2, start="2026-11-21T10:00:00", OBJECT="NGC 253")
    done = begun(folders, tmp_path / "disk")
    assert "#  2026-11-20: {clouds: , wind: , ended_by: }  # Ha 4 × 300 s\n" in text_of(folders)
    assert "#  2026-11-21" not in text_of(folders)
    assert done.sorting.kinds == gathered(folders, tmp_path / "disk", name="elsewhere").sorting.kinds
    assert (done.sorting.kept, done.sorting.kinds["copy"], done.sorting.kinds["combined"]) == (4, 4, 1)


def test_a_table_keeps_what_it_says(folders: Folders, tmp_path: Path) -> None:
    """Kept, reason, measures and notes of its rows, and begin counts them so."""
    table = tmp_path / "t.csv"
    table.write_text(
        "start,exposure_s,filter,kept,reason,fwhm_arcsec,note\n2026-11-20T10:00:00Z,300,Ha,yes,,2.3,calm\n"
        "2026-11-20T11:00:00Z,300,L,no,wind,,\n", "utf-8"
    )  # fmt: skip
    done = begun(folders, table)
    assert (done.sorting.kept, done.sorting.discarded, done.sorting.rows) == (1, 1, 2)
    assert "#  2026-11-20: {clouds: , wind: , ended_by: }  # Ha 1 × 300 s\n" in text_of(folders)
    rows = (folders.content / "logs/new-one.ecsv").read_text("utf-8").splitlines()[-2:]
    assert rows == [
        "2026-11-20T10:00:00Z,300,Ha,light,True,,,,,2.3,calm,Ha,",
        "2026-11-20T11:00:00Z,300,L,light,False,wind,,,,,,L,table: wind",
    ]  # fmt: skip


def test_many_nights_are_summed(folders: Folders, make_frames: MakeFrames) -> None:
    """Forty night lines at most; those before them in one."""
    frames = [path for day in range(45) for path in
              make_frames("disk", 1, start=f"2026-{9 + day // 28:02d}-{1 + day % 28:02d}T10:00:00")]  # fmt: skip
    begun(folders, *frames)
    assert "#  5 nights before these: Ha 5 × 300 s\n" in text_of(folders)
    assert text_of(folders).count("{clouds: , wind: , ended_by: }") == 40


def test_a_rig_in_doubt_is_marked(folders: Folders, make_frames: MakeFrames) -> None:
    """The nearest rig is named, with what speaks against it."""
    done = begun(folders, *make_frames("disk", 1, FOCALLEN=600.0))
    line = (
        "rig: first-train  # to be confirmed: guessed from the headers' 600 mm, 3.76 µm pixels, 6248 × 4176 px; "
        "FOCALLEN is 600 mm, the rig 'first-train' had 1000 mm that evening\n"
    )
    assert line in text_of(folders)
    assert [problem.severity for problem in done.problems] == ["warning"]


def test_without_a_rig_the_logs_wait(folders: Folders, make_frames: MakeFrames) -> None:
    """A diary without rigs gets an entry that checks clean, its logs asleep."""
    shutil.rmtree(folders.content / "rigs")
    (folders.content / "entries/first-light.md").unlink()
    begun(folders, *make_frames("disk", 1))
    assert "#logs: [logs/new-one.ecsv]" in text_of(folders)
    assert complaints(folders) == []


def test_logs_inside_the_diary_are_named_where_they_lie(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """No second log is written; a folder's frames become one pattern, a table its own name."""
    make_frames("diary/content/logs/night", 3)
    make_frames("diary/content/logs/night", 2, start="2026-11-21T10:00:00", suffix=".fits.gz")
    done = begun(folders, folders.content / "logs/night", folders.content / "logs/first-light.csv")
    assert done.draft.logs == ("logs/first-light.csv", "logs/night/*.fits", "logs/night/*.fits.gz")
    assert done.gathering is None
    assert complaints(folders) == []


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
    """Frames of another target would count into the wrong entry: they are set aside."""
    done = begun(folders, *make_frames("a", 2), *make_frames("b", 1, start="2026-11-21T10:00:00", OBJECT="NGC 253"))
    assert done.sorting.other_targets == {"NGC 253": 1}


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
        ("5e-05", 0.00005),
        ("1.5E+02", 150.0),
        ("-0 30 00", -0.5),
        ("here", None),
        ("", None),
    ],
)
def test_angles_in_headers(text: str, degrees: float | None) -> None:
    """Decimal, sexagesimal, with a sign or a letter; a sign before a zero counts."""
    assert angle_deg(text) == (None if degrees is None else pytest.approx(degrees, abs=1e-6))


def test_the_clock_that_is_named_holds_for_all_logs(folders: Folders, tmp_path: Path) -> None:
    """One table in the diary and one elsewhere, both by Auckland's clock, 13 h ahead of UTC in November."""
    add(folders, "logs/inside.csv", "start,exposure_s,filter\n2026-11-20T22:00:00,300,Ha\n")
    (tmp_path / "outside.csv").write_text("start,exposure_s,filter\n2026-11-20T23:00:00,300,Ha\n", "utf-8")
    begun(folders, folders.content / "logs/inside.csv", tmp_path / "outside.csv", time_zone="Pacific/Auckland")
    assert "\nlogs: [{files: [logs/inside.csv], time_zone: Pacific/Auckland}, logs/new-one.ecsv]\n" in text_of(folders)
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    entry = next(entry for entry in diary.entries if entry.slug == "new-one")
    assert [f"{sub.start:%Y-%m-%dT%H:%M}" for sub in entry.subs] == ["2026-11-20T09:00", "2026-11-20T10:00"]


def test_odd_names_of_filters_break_no_entry(folders: Folders, tmp_path: Path) -> None:
    """A line end, quotes, a backslash, 70 letters: the entry is read, and each line that its log waits for works when pasted."""
    names = ["a\nb", 'the "new" one', "x \\ y", "duo: 7nm", f"{'a rather long name ' * 4}of 78"]
    rows = "".join(f'2026-11-20T1{hour}:00:00Z,300,"{name.replace(chr(34), chr(34) * 2)}"\n' for hour, name in enumerate(names))
    (tmp_path / "odd.csv").write_text(f"start,exposure_s,filter\n{rows}", "utf-8")
    begun(folders, tmp_path / "odd.csv")
    assert complaints(folders) == []
    rig = folders.content / "rigs/first-train.yaml"
    for new in re.findall(r"# 1 sub waits for .*?: add the line '(.*)' under 'filters'", text_of(folders)):
        rig.write_text(rig.read_text("utf-8").replace("\n  Ha:", f"\n  {new}\n  Ha:", 1), "utf-8")
    add(folders, "entries/new-one.md", text_of(folders).replace("\n#logs: ", "\nlogs: "))
    assert complaints(folders) == []
    assert "  \"duo: 7nm\": {kind: dual-band}\n" in rig.read_text("utf-8")
