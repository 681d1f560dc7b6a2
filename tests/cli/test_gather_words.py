"""What gather and begin say: each kind in one line with its number and evidence, and commands that work when pasted."""

import json
import os
import shlex
import shutil
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.cli.test_author_commands import make_frame


def frames(folder: Path, count: int, evening: str = "2026-11-20", **cards: object) -> list[Path]:
    """Two minutes each, of a header that tells its clock."""
    return [make_frame(folder / f"{evening}_{number:02d}.fits", f"{evening}T10:{3 * number:02d}:00", TIMESYS="UTC", **cards)
            for number in range(count)]  # fmt: skip


def pasted(run: Run, line: str) -> str:
    """What the command at the end of a line says when it is run."""
    words = shlex.split(line[line.index("sitegen ") :])
    done = run(*words[1:])
    assert done.exit_code == 0, done.output
    return done.stdout


def test_every_kind_has_its_line(run: Run, tmp_path: Path) -> None:
    """Word for word."""
    disk = tmp_path / "disk"
    frames(disk / "lights", 3)
    frames(disk / "lights/rejected", 2, "2026-11-21")
    frames(disk / "calibrated", 3, CALSTAT="BDF")
    frames(disk / "sum", 1, EXPTIME=360.0, NCOMBINE=3)
    frames(disk / "focus", 4, "2026-11-19", EXPTIME=2.0)
    frames(disk / "flats", 2, "2026-11-18", IMAGETYP="Flat")
    make_frame(disk / "unclear.fits", "2026-11-22T10:00:00", OBJECT="who knows")
    (disk / "notes.txt").write_text("x")
    done = run("gather", "first-light", disk)
    assert done.exit_code == 0, done.output
    assert done.stdout.splitlines() == [
        "content/logs/first-light.ecsv: 6 frames, 4 kept, 2 discarded, 2 calibration; 8 new",
        "  2026-11-18  flat 2 × 120 s",
        "  2026-11-20  Ha 3 × 120 s",
        "  2026-11-22  Ha 1 × 120 s",
        "  discarded by the folder 'rejected': 2",
        "  not counted: 3 copies (3 calibrated: start, exposure and camera of another frame)",
        "  not counted: 1 combined frame (the header counts its inputs: 1)",
        "  not counted: 4 frames of focus runs (a folder or name says so: 4)",
        "  passed over: 1 (1 .txt)",
        "  1 frame tells neither pointing nor a known object: taken for NGC 2070",
        "  1 frame does not tell its clock: read as UTC; with the clock of the camera: "
        f"sitegen gather first-light {disk} --time-zone Pacific/Auckland",
    ]


def test_frames_of_other_targets_and_the_command_that_gathers_them(run: Run, tmp_path: Path) -> None:
    """Drawn together, in a folder whose name wants quotes; the command works when it is pasted, and again."""
    disk = tmp_path / "my captures"
    frames(disk, 2)
    frames(disk, 3, "2026-11-21", OBJECT="NGC 253")
    said = run("gather", "first-light", disk)
    assert said.exit_code == 0
    line = f"  3 frames of NGC 253 set aside: sitegen gather ngc-253 '{disk}' --target 'NGC 253'"
    assert said.stdout.splitlines()[-1] == line
    assert pasted(run, line).startswith("content/logs/ngc-253.ecsv: 3 frames, 3 kept, 0 discarded; 3 new\n")
    assert run("gather", "first-light", disk).stdout.splitlines()[-1] == line


def test_a_name_that_is_taken_is_not_proposed(run: Run, tmp_path: Path) -> None:
    """An entry of that name may be of something else."""
    Path("content/entries/ngc-253.md").write_text("---\ntitle: Mine\npublished: 2026-01-01\n---\n", "utf-8")
    frames(tmp_path / "disk", 2)
    frames(tmp_path / "disk", 1, "2026-11-21", OBJECT="NGC 253")
    assert "1 frame of NGC 253 set aside: sitegen gather ngc-253-2 " in run("gather", "first-light", tmp_path / "disk").stdout


def test_the_log_itself_is_not_proposed(run: Run, tmp_path: Path) -> None:
    """It is called by one target, and most frames were of another: they would be taken out of it."""
    frames(tmp_path / "disk", 2)
    frames(tmp_path / "disk", 1, "2026-11-21", OBJECT="NGC 253")
    assert "1 frame of NGC 253 set aside: sitegen gather ngc-253-2 " in run("gather", "ngc-253", tmp_path / "disk").stdout


def test_frames_of_another_train_and_the_rig_that_they_need(run: Run, tmp_path: Path) -> None:
    """Which keys, and a command that works as soon as the rig is there."""
    frames(tmp_path / "disk", 5)
    frames(tmp_path / "disk", 3, "2026-11-21", FOCALLEN=400.0, XPIXSZ=2.9)
    said = run("gather", "first-light", tmp_path / "disk").stdout.splitlines()[-1]
    assert said == (
        "  3 frames of another train (400 mm, 2.9 µm pixels, 6 × 4 px) set aside: describe it in rigs/first-light-400mm.yaml "
        "(name: …, telescope: {focal_length_mm: 400}, camera: {pixel_um: 2.9, width_px: 6, height_px: 4, colour: mono}), then "
        f"sitegen gather first-light-400mm {tmp_path}/disk --target 'NGC 2070' --rig first-light-400mm"
    )
    camera = "{pixel_um: 2.9, width_px: 6, height_px: 4, colour: mono}"
    rig = f"name: Small\ntelescope: {{focal_length_mm: 400}}\ncamera: {camera}\n"
    Path("content/rigs/first-light-400mm.yaml").write_text(rig, "utf-8")
    assert pasted(run, said).startswith("content/logs/first-light-400mm.ecsv: 3 frames, 3 kept, 0 discarded; 3 new\n")


def test_frames_no_longer_there_and_both_commands(run: Run, tmp_path: Path) -> None:
    """They stay until one of them is run."""
    first, *_ = frames(tmp_path / "disk", 3)
    run("gather", "first-light", tmp_path / "disk")
    first.unlink()
    command = f"sitegen gather first-light {tmp_path}/disk --gone"
    said = run("gather", "first-light", tmp_path / "disk").stdout.splitlines()
    assert said[0] == "content/logs/first-light.ecsv: 3 frames, 3 kept, 0 discarded; 0 new, 2 there already"
    assert said[1] == f"  no longer there: 1 gathered before; to discard them: {command} discard; to keep them: {command} keep"
    said = run("gather", "first-light", tmp_path / "disk", "--gone", "discard").stdout.splitlines()
    assert said == [
        "content/logs/first-light.ecsv: 3 frames, 2 kept, 1 discarded; 0 new, 2 there already",
        "  discarded now: 1",
        "  no longer there, and discarded: 1",
    ]


def test_a_clock_named_later(run: Run, tmp_path: Path) -> None:
    """The command that is proposed corrects the starts in place."""
    for number in range(3):
        make_frame(tmp_path / f"disk/{number}.fits", f"2026-11-20T22:1{number}:00")
    said = run("gather", "first-light", tmp_path / "disk").stdout.splitlines()[-1]
    again = pasted(run, said).splitlines()
    assert again[0] == "content/logs/first-light.ecsv: 3 frames, 3 kept, 0 discarded; 0 new, 3 there already"
    assert again[1] == "  starts corrected to the clock Pacific/Auckland: 3"


def test_the_clock_that_check_proposes(run: Run, tmp_path: Path) -> None:
    """Its command names the folder as the log does, and works where the frames lie still."""
    for number in range(3):
        os.utime(make_frame(tmp_path / f"my captures/{number}.fits", f"2026-11-20T22:1{number}:00"), (1, 1))
    run("gather", "first-light", tmp_path / "my captures")
    (line,) = (line for line in run("check").stderr.splitlines() if "lie in daylight" in line)
    assert "starts corrected to the clock Pacific/Auckland: 3" in pasted(run, line)
    assert "daylight" not in run("check").stderr


def test_the_clock_of_an_entry_that_was_begun(run: Run, tmp_path: Path) -> None:
    """An entry is begun once: what is proposed then gathers its log again, or is the line for logs of the diary."""
    for number in range(3):
        make_frame(tmp_path / f"disk/{number}.fits", f"2026-11-20T22:1{number}:00")
    (said,) = (line for line in run("begin", "outside", tmp_path / "disk").stdout.splitlines() if "read as UTC" in line)
    assert "starts corrected to the clock Pacific/Auckland: 3" in pasted(run, said)
    Path("content/logs/inside.csv").write_text("start,exposure_s,filter\n2026-11-20T22:30:00,60,Ha\n", "utf-8")
    (said,) = (line for line in run("begin", "inside", "content/logs/inside.csv").stdout.splitlines() if "read as UTC" in line)
    line = "logs: [{files: [logs/inside.csv], time_zone: Pacific/Auckland}]"
    assert said.endswith(f"with the clock of the camera: write '{line}' in entries/inside.md")
    entry = Path("content/entries/inside.md")
    entry.write_text(entry.read_text("utf-8").replace("logs: [logs/inside.csv]", line), "utf-8")
    assert "daylight" not in run("check").stderr


def test_one_frame_and_the_entry_it_lacks(run: Run, tmp_path: Path) -> None:
    """One is no 'frames'; the command that begins the entry works when it is pasted, and repeats nothing of clocks."""
    make_frame(tmp_path / "disk/0.fits", "2026-11-20T22:10:00")
    said = run("gather", "alone", tmp_path / "disk").stdout.splitlines()
    assert said[0] == "content/logs/alone.ecsv: 1 frame, 1 kept, 0 discarded; 1 new"
    assert said[-1] == "no entry is called alone yet; to begin it: sitegen begin alone content/logs/alone.ecsv"
    again = pasted(run, said[-1])
    assert again.startswith("content/entries/alone.md: begun\n") and "  1 frame, 1 kept, 0 discarded\n" in again
    assert "clock" not in again


def test_nothing_gathered_begins_nothing(run: Run, tmp_path: Path) -> None:
    """There is no log from which an entry could be begun."""
    (tmp_path / "t.csv").write_text("Start,Exposure\n2026-02-31 10:00:00,300\n", "utf-8")
    done = run("gather", "nothing", tmp_path / "t.csv")
    assert (done.exit_code, done.stdout) == (1, "content/logs/nothing.ecsv: 0 frames, 0 kept, 0 discarded; 0 new\n")


def test_what_was_asked_for_holds_in_what_is_proposed(run: Run, tmp_path: Path) -> None:
    """The rig, and the target unless it is another's frames that are proposed."""
    first, *_ = frames(tmp_path / "disk", 3, OBJECT="NGC 253")
    make_frame(tmp_path / "disk/other.fits", "2026-11-21T10:00:00", OBJECT="NGC 2070", TIMESYS="UTC")
    asked = ("--target", "NGC 253", "--rig", "first-train")
    other = next(line for line in run("gather", "sculptor", tmp_path / "disk", *asked).stdout.splitlines() if "aside" in line)
    assert other.endswith(f"sitegen gather ngc-2070 {tmp_path}/disk --rig first-train --target 'NGC 2070'")
    first.unlink()
    gone = next(line for line in run("gather", "sculptor", tmp_path / "disk", *asked).stdout.splitlines() if "longer" in line)
    command = f"sitegen gather sculptor {tmp_path}/disk --target 'NGC 253' --rig first-train --gone"
    assert gone == f"  no longer there: 1 gathered before; to discard them: {command} discard; to keep them: {command} keep"


def test_dry_and_back(run: Run, tmp_path: Path) -> None:
    """A dry run says that nothing was written; undo says what was put back, an edited log is refused with its earlier copy."""
    log = Path("content/logs/first-light.ecsv")
    frames(tmp_path / "disk", 2)
    said = run("gather", "first-light", tmp_path / "disk", "--dry-run").stdout.splitlines()[0]
    assert said == "content/logs/first-light.ecsv: 2 frames, 2 kept, 0 discarded; 2 new (nothing was written)"
    assert not log.exists()
    run("gather", "first-light", tmp_path / "disk")
    assert run("gather", "first-light", "--undo").stdout == (
        "content/logs/first-light.ecsv: put back as it was before the last gathering\n"
    )
    assert not log.exists()
    run("gather", "first-light", tmp_path / "disk")
    log.write_text(log.read_text("utf-8") + "# mine\n", "utf-8")
    refused = run("gather", "first-light", "--undo")
    assert refused.exit_code == 1
    assert "was edited since it was gathered, and is left as it is; as it was before, it lies in" in refused.stderr


def test_json_adds_up(run: Run, tmp_path: Path) -> None:
    """All files are of exactly one kind, rows of tables included."""
    frames(tmp_path / "disk", 4)
    frames(tmp_path / "disk/rejected", 1, "2026-11-21")
    frames(tmp_path / "disk/backup", 4)
    frames(tmp_path / "disk", 2, "2026-11-22", OBJECT="NGC 253")
    (tmp_path / "disk/x.jpg").write_text("x")
    (tmp_path / "disk/bad.fits").write_bytes(b"nonsense" * 400)
    table = tmp_path / "t.csv"
    table.write_text("start,exposure_s,filter\n2026-11-23T10:00:00Z,60,Ha\n2026-11-20T10:00:00Z,120,Ha\n", "utf-8")
    report = json.loads(run("gather", "first-light", tmp_path / "disk", table, "--json").stdout)
    assert (report["files"], report["rows"]) == (13, 2)
    assert sum(report["kinds"].values()) == 15
    assert {kind: count for kind, count in report["kinds"].items() if count} == {
        "kept": 5, "discarded": 1, "copy": 5, "other target": 2, "passed over": 1, "unreadable": 1
    }  # fmt: skip
    assert report["totals"] == {"kept": 5, "discarded": 1, "calibration": 0}
    assert report["set_aside"]["targets"] == {"NGC 253": 2}


def test_the_same_asked_again_is_answered_from_memory(run: Run, tmp_path: Path) -> None:
    """Word for word what looking at everything gives; a new file, an edit of the log or other words end it."""
    disk = tmp_path / "disk"
    kept = [*frames(disk, 3), *frames(disk / "rejected", 2, "2026-11-21"), *frames(disk, 2, "2026-11-22", OBJECT="NGC 253")]
    for path in kept:
        os.utime(path, (1, 1))
    run("gather", "first-light", disk)
    remembered = run("gather", "first-light", disk)
    shutil.rmtree(".sitegen/answers")
    looked_at = run("gather", "first-light", disk)
    assert remembered.output == looked_at.output
    assert looked_at.stdout.startswith("content/logs/first-light.ecsv: 5 frames, 3 kept, 2 discarded; 0 new, 5 there already\n")
    os.utime(frames(disk, 1, "2026-11-23")[0], (1, 1))
    assert "1 new, 5 there already" in run("gather", "first-light", disk).stdout
    log = Path("content/logs/first-light.ecsv")
    log.write_text(log.read_text("utf-8").replace("10:00:00Z,120,Ha,light,True,,", "10:00:00Z,120,Ha,light,no,dew,", 1), "utf-8")
    assert "6 frames, 3 kept, 3 discarded" in run("gather", "first-light", disk).stdout
    (disk / "rejected").rename(disk / "fine")
    assert "6 frames, 5 kept, 1 discarded" in run("gather", "first-light", disk).stdout


def test_no_line_a_frame(run: Run, tmp_path: Path) -> None:
    """However many there are of a kind; errors alike are drawn together, too."""
    frames(tmp_path / "disk", 9)
    for number in range(9):
        (tmp_path / f"disk/broken_{number}.fits").write_bytes(b"nonsense" * 400)
    for command in ("gather", "begin"):
        done = run(command, "another", tmp_path / "disk")
        assert done.exit_code == 1
        assert done.stderr.count("is not FITS") == 1 and "is not FITS (so in 8 more files)" in done.stderr
        assert len(done.stdout.splitlines()) < 12


def test_begin_says_what_it_guessed_from(run: Run, tmp_path: Path) -> None:
    """And what the logs wait for, as the line to add."""
    frames(tmp_path / "disk", 3, FILTER="OIII", FOCALLEN=800.0, OBJECT="NGC 253 panel 1")
    said = run("begin", "sculptor", tmp_path / "disk").stdout.splitlines()
    assert said[:5] == [
        "content/entries/sculptor.md: begun",
        "  target  NGC 253 (to be confirmed: guessed from the panel's name 'NGC 253 panel 1')",
        "  rig     first-train (to be confirmed: guessed from the headers' 800 mm, 6 × 4 px; FOCALLEN is 800 mm, the rig "
        "'first-train' had 1000 mm that evening)",
        "  site    garden",
        "  3 frames, 3 kept, 0 discarded",
    ]
    line = "'OIII: {kind: narrowband, centre_nm: 500.7}' under 'filters' in rigs/first-train.yaml"
    assert f"  3 subs wait for 'OIII': add the line {line}, or 'spelt: [OIII]' to one of its filters: Ha, L" in said
    assert run("check").exit_code == 0


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        (("gather", "a"), "Missing argument 'LOG...'"),
        (("gather", "a", "x", "--gone", "maybe"), "'maybe' is not one of 'keep', 'discard'"),
        (("gather", "a", "x", "--kept-list", "nowhere.txt"), "File 'nowhere.txt' does not exist"),
    ],
)
def test_wrong_words_are_status_two(run: Run, words: tuple[str, ...], wanted: str) -> None:
    """And say how they are meant."""
    done = run(*words)
    assert (done.exit_code, wanted in done.stderr) == (2, True)


def test_a_rig_that_is_not_there(run: Run, tmp_path: Path) -> None:
    """With the nearest that is."""
    frames(tmp_path / "disk", 1)
    done = run("gather", "first-light", tmp_path / "disk", "--rig", "frist-train")
    assert done.exit_code == 1
    assert "rigs/frist-train.yaml:1:1: error: there is no rig of that name; did you mean 'first-train'?" in done.stderr
