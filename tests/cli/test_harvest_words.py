"""What `sitegen harvest` says and how it ends. Common practice, no source."""

import json
import os
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from sitegen.authoring.captures import reading
from sitegen.cli import main
from tests.authoring.conftest import make_frames

__all__ = ["make_frames"]
KINDS = ["counted", "discarded", "calibration", "derived", "set_aside", "other", "unreadable", "unclear"]
LONG_AGO = 1_700_000_000


def harvest(tmp_path: Path, *words: str) -> Result:
    places = ("--content", tmp_path / "content", "--output", tmp_path / "output")
    return CliRunner().invoke(main, ["harvest", str(tmp_path / "captures"), *words, *map(str, places)], catch_exceptions=False)


@pytest.fixture
def captures(tmp_path: Path, make_frames: Any) -> Path:
    """Four frames of an old night, one of them thrown away, a note, and a file that is none."""
    make_frames("captures", 3, start="2026-01-20T10:00:00", TELESCOP="Dome Newtonian")
    make_frames("captures/rejected", 1, start="2026-01-20T12:00:00", TELESCOP="Dome Newtonian")
    (tmp_path / "captures/note.txt").write_text("dew", "utf-8")
    (tmp_path / "captures/torn.fits").write_bytes(b"")
    for path in (tmp_path / "captures").rglob("*"):
        os.utime(path, (LONG_AGO, LONG_AGO))
    return tmp_path / "captures"


def test_what_it_says(tmp_path: Path, captures: Path) -> None:
    """The table, the kinds with their reasons, the question with its answer; a torn file is no fault of the diary."""
    done = harvest(tmp_path)
    assert done.exit_code == 0
    lines = done.stdout.splitlines()
    assert lines[0].split() == ["entry", "target", "rig", "site", "nights", "kept", "thrown", "hours", "new"]
    assert lines[1].split() == ["ngc-2070", "NGC", "2070", "dome-newtonian", "37s-175e", "1", "3", "1", "0.2", "4"]
    assert lines[2:6] == [
        "6 files: 3 counted, 1 discarded, 1 other, 1 unreadable",
        "  1 discarded: the folder 'rejected'",
        "  1 other: a file that ends in .txt",
        "  1 unreadable: is empty",
    ]
    zone = "Pacific/Auckland is of the nearest place that the table of time zones names (UTC+12:00)"
    assert lines[6] == f"question 1: is it right? {zone}"
    assert lines[7] == (
        f"  answer in {tmp_path}/content/sites/37s-175e.yaml: time_zone: 'time_zone: Pacific/Auckland', without the mark, "
        "or what is right"
    )
    assert lines[-1] == "what only you can write is marked 'To write:' in the entries"
    assert done.stderr.splitlines()[-1].endswith("torn.fits:1:1: warning: is empty; copy the frame again")


def test_the_report(tmp_path: Path, captures: Path) -> None:
    """Eight kinds that add up to the files, and the keys of a project."""
    report = json.loads(harvest(tmp_path, "--json").stdout)
    assert list(report)[:10] == ["files", *KINDS, "projects"]
    assert sum(report[kind] for kind in KINDS) == report["files"] == 6
    (project,) = report["projects"]
    assert list(project)[:8] == ["entry", "target", "rig", "site", "nights", "kept", "discarded", "total_s"]
    assert (project["nights"], project["total_s"]) == (["2026-01-20"], 900.0)


def test_frames_that_were_read_are_not_opened_again(
    tmp_path: Path, captures: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Neither where nothing is new, nor for a report; the answer is the same but for what was new."""
    first = harvest(tmp_path)

    def refuse(file: object) -> None:
        raise AssertionError(f"{file} is opened again")

    monkeypatch.setattr(reading, "record_of", refuse)
    again = harvest(tmp_path)
    assert (again.exit_code, again.stdout.splitlines()[-1]) == (0, "nothing new")
    assert again.stdout.splitlines()[2:8] == first.stdout.splitlines()[2:8]
    assert json.loads(harvest(tmp_path, "--json").stdout)["written"] == []


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    done = harvest(tmp_path)
    assert (done.exit_code, list(tmp_path.iterdir())) == (2, [])
    assert "does not exist" in done.stderr
