"""The rules of gathering where one small project shows them: derivatives, foreign frames, filters, words for thrown-away frames.
Common practice, no source."""

import re
from pathlib import Path

import pytest

from tests.disk.command import Diagnostics, counts_of
from tests.disk.conftest import OneProject, WrittenDisk
from tests.disk.projects import WALL_CLOCK
from tests.disk.truth import TrueFrame, gathered

RAW = ("carina/east/2025-04-05", "carina/east/2025-04-08")
MIXTURES = {
    "raw frames first": (RAW, ("carina/east",)),
    "calibrated copies first": (("carina/east/calibrated",), ("carina/east",)),
    "registered copies first": (("carina/east/registered",), ("carina/east",)),
    "backups first": (("carina/east/backup",), ("carina/east",)),
    "combined frames first": (("carina/east/result",), ("carina/east",)),
    "all at once, twice": (("carina/east",), ("carina/east",)),
    "folder by folder": (
        ("carina/east/calibrated", "carina/east/backup"),
        ("carina/east/result", *RAW),
        ("carina/east/registered",),
    ),
}  # fmt: skip


@pytest.mark.parametrize("steps", MIXTURES.values(), ids=MIXTURES)
def test_any_mixture_gives_the_same_totals(
    steps: tuple[tuple[str, ...], ...], one_project: OneProject, disk: WrittenDisk
) -> None:
    """In whatever order raw frames, copies and combined frames are gathered."""
    diagnostics = one_project("carina")
    for folders in steps:
        assert diagnostics.gather("carina", *folders, options=WALL_CLOCK).exit_code == 0
    truth = gathered(disk.truth, "carina", ("carina/east",)).frames
    assert diagnostics.counted("carina") == (43, 1)
    assert sorted(told(row) for row in diagnostics.rows("carina")) == sorted(map(true_of, truth))


def told(row: dict[str, str]) -> tuple[str, float, str, bool]:
    return row["start"][:19], float(row["exposure_s"]), row["filter"], row["kept"].casefold() in ("true", "yes")


def true_of(frame: TrueFrame) -> tuple[str, float, str, bool]:
    return f"{frame.start:%Y-%m-%dT%H:%M:%S}", frame.exposure_s, frame.filter or "", frame.kept


def test_focus_runs_alone_are_no_light(one_project: OneProject) -> None:
    """Nothing is counted where there is nothing else."""
    diagnostics = one_project("tucana")
    counts = counts_of(diagnostics.report("tucana", "tucana/focus", options=WALL_CLOCK))
    assert (counts["kept"], counts["focus"]) == (0, 8)


def test_foreign_frames_are_listed_with_their_cure(one_project: OneProject) -> None:
    """How many, of what, by which telescope, and the command that gathers them. Those whose OBJECT was left from before are never
    called frames of the very target that they were set aside from."""
    diagnostics = one_project("sculptor")
    done = diagnostics.gather("sculptor", "sculptor/2025-10-02", "sculptor/2025-10-03")
    assert done.exit_code == 0
    lines = [line for line in done.output.splitlines() if "sitegen gather" in line]
    assert any(re.search(r"\b(8|13) frames of NGC 7293\b", line) for line in lines)
    assert any(re.search(r"\b6 frames of NGC 104\b", line) for line in lines)
    assert any(re.search(r"\b6 frames of another train \(135 mm", line) for line in lines)


def test_a_name_left_from_before_is_not_believed(one_project: OneProject) -> None:
    """Frames that point at the Helix are not listed as frames of NGC 253, set aside from NGC 253, with a command for NGC 253."""
    diagnostics = one_project("sculptor")
    said = diagnostics.gather("sculptor", "sculptor/2025-10-02").output
    assert "NGC 7293" in said
    assert not re.search(r"frames of NGC 253 set aside", said)


def test_the_target_can_be_told(one_project: OneProject) -> None:
    """With `--target` the other frames of the folder are the ones gathered."""
    diagnostics = one_project("sculptor")
    counts = counts_of(diagnostics.report("stray", "sculptor/2025-10-02", options=("--target", "NGC 7293")))
    assert (counts["kept"], counts["other_target"]) == (13, 18)


def test_without_an_entry_most_frames_decide(one_project: OneProject) -> None:
    """Twelve of NGC 253 against six by name of NGC 104 and thirteen by place of NGC 7293: the thirteen."""
    diagnostics = one_project("sculptor")
    assert counts_of(diagnostics.report("stray", "sculptor/2025-10-02"))["kept"] == 13


@pytest.mark.parametrize("where", ["on the command line", "in diary.yaml"])
def test_a_pattern_for_discarded_frames(where: str, one_project: OneProject) -> None:
    """In an English diary a German folder says nothing; a pattern does."""
    diagnostics = one_project("helix")
    pattern = "*/verworfen/*"
    captures = f"captures: {{discarded: ['{pattern}']}}\n" if where == "in diary.yaml" else ""
    (diagnostics.content / "diary.yaml").write_text(f"title: A diary\nlanguage: en\n{captures}", "utf-8")
    options = () if captures else ("--discarded", pattern)
    assert counts_of(diagnostics.report("helix", "helix", options=options))["discarded"] == 2


def test_a_german_word_in_an_english_diary(one_project: OneProject) -> None:
    """Says nothing without a pattern."""
    diagnostics = one_project("helix")
    (diagnostics.content / "diary.yaml").write_text("title: A diary\nlanguage: en\n", "utf-8")
    assert counts_of(diagnostics.report("helix", "helix"))["discarded"] == 0


def test_german_words_in_a_german_diary(one_project: OneProject) -> None:
    """`verworfen` says it all."""
    diagnostics = one_project("helix")
    assert counts_of(diagnostics.report("helix", "helix"))["discarded"] == 2


def unknown_filter(one_project: OneProject) -> tuple[Diagnostics, str]:
    diagnostics = one_project("helix", spelt=False)
    return diagnostics, diagnostics.gather("helix", "helix").output + diagnostics.run("check").output


def test_an_unknown_filter_names_the_line_to_add(one_project: OneProject) -> None:
    """Told with the number of its subs and the line for the rig."""
    _, said = unknown_filter(one_project)
    assert "Nebula X" in said
    assert re.search(r"spelt: \[[\"']?Nebula X", said)
    assert "rigs/long.yaml" in said


def test_an_unknown_filter_loses_no_other_sub(one_project: OneProject) -> None:
    """They are in the log, and how many the unknown one concerns is said: 3 of 44."""
    diagnostics, said = unknown_filter(one_project)
    assert len(diagnostics.rows("helix")) == 44
    assert re.search(r"\b3 of 44 subs\b", said)


def test_the_line_for_an_unknown_filter_works(one_project: OneProject) -> None:
    """Pasted into the rig, with nothing gathered again, it gives the three subs their filter."""
    diagnostics, _ = unknown_filter(one_project)
    rig = diagnostics.content / "rigs/long.yaml"
    added = re.sub(r"(\n  OIII: \{.*)\}", r"\1, spelt: [Nebula X]}", rig.read_text("utf-8"))
    assert added != rig.read_text("utf-8")
    rig.write_text(added, "utf-8")
    by_filter = diagnostics.rebuilt_facts("helix")["integration"]["by_filter"]
    assert (by_filter["Ha"]["kept"], by_filter["OIII"]["kept"], by_filter["OIII"]["discarded"]) == (20, 21, 2)


def test_without_names(one_project: OneProject) -> None:
    """`--no-names` leaves the names of files out of the log, and counts the same."""
    diagnostics = one_project("paw")
    diagnostics.gather("paw", "paw", options=("--no-names",))
    assert "paw_0" not in diagnostics.log("paw").read_text("utf-8")
    assert diagnostics.counted("paw") == (64, 0)


def test_frames_without_name_and_pointing_belong_and_are_told(one_project: OneProject) -> None:
    """Three of twenty."""
    diagnostics = one_project("kettle")
    done = diagnostics.gather("kettle", "kettle")
    assert any(re.search(r"\b3\b", line) and "pointing" in line for line in done.output.splitlines()), done.output


def test_the_log_has_no_private_path(one_project: OneProject, tmp_path: Path) -> None:
    """Paths below the folder gathered, never of the machine; no place of the observer's finer than a tenth of a degree."""
    diagnostics = one_project("pinwheel")
    diagnostics.gather("pinwheel", "pinwheel")
    text = diagnostics.log("pinwheel").read_text("utf-8")
    assert str(tmp_path) not in text
    assert "48.208" not in text
