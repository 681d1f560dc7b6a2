"""Frames that two entries tell: a rebuild after any edit of either gives the bytes of a rebuild from nothing."""

import json
from pathlib import Path
from typing import Any

import pytest

from sitegen.folders import Folders
from sitegen.rebuild import Report, rebuild
from tests.build.small_diary import bytes_of, settle
from tests.conftest import TODAY
from tests.whole.frames_twice import lay_out, write_entry


def built(folders: Folders) -> Report:
    settle()
    return rebuild(folders, TODAY, jobs=1)


def total_s(folders: Folders, page: str = "totals") -> Any:
    return json.loads((folders.output / page / "facts.json").read_text("utf-8"))["integration"]["total_s"]


def is_fresh(folders: Folders, elsewhere: Path) -> bool:
    rebuild(Folders(folders.content, folders.themes, elsewhere, None), TODAY, jobs=1)
    return bytes_of(folders.output) == bytes_of(elsewhere)


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    """The progress entry, and another rig's of the same night."""
    lay_out(tmp_path / "content", "progress", "twin")
    return Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")


def test_whatever_becomes_of_an_entry_that_shares_frames(folders: Folders, tmp_path: Path) -> None:
    """It appears, keeps another frame, is hidden, comes back, is published earlier than the other, and goes: the diary's total
    after each, counted by hand, and every second time the bytes of a fresh build."""
    content, log = folders.content, folders.content / "logs" / "final.csv"
    built(folders)
    assert total_s(folders) == 900 + 1200
    write_entry(content, "final")
    built(folders)
    assert total_s(folders) == 600 + 3000 + 1200
    log.write_text(log.read_text("utf-8").replace("12:20:00.2,300,L,no", "12:20:00.2,300,L,yes"), "utf-8")
    built(folders)
    assert total_s(folders) == 900 + 3000 + 1200
    assert is_fresh(folders, tmp_path / "fresh-kept")
    write_entry(content, "final", "topics:", "unlisted: true\ntopics:")
    built(folders)
    assert total_s(folders) == 900 + 1200
    assert is_fresh(folders, tmp_path / "fresh-hidden")
    log.write_text(log.read_text("utf-8").replace("12:00:00.2,300,L,yes", "12:00:00.2,300,L,no"), "utf-8")
    write_entry(content, "final")
    built(folders)
    assert total_s(folders) == 600 + 3000 + 1200
    write_entry(content, "final", "2026-10-20", "2026-09-14")
    built(folders)
    assert total_s(folders) == 900 + 3000 + 1200
    assert is_fresh(folders, tmp_path / "fresh-flipped")
    (content / "entries" / "final.md").unlink()
    built(folders)
    assert total_s(folders) == 900 + 1200
    assert is_fresh(folders, tmp_path / "fresh-gone")


def test_a_sentence_of_one_makes_no_facts_of_the_other(folders: Folders) -> None:
    """Entries that share frames hang on each other's frames, not on their words; a row of a log concerns both."""
    write_entry(folders.content, "final")
    built(folders)
    write_entry(folders.content, "progress", "Text of", "More text of")
    report = built(folders)
    assert report.made["facts of entries"] == 1
    assert {kind: made for kind, made in report.made.items() if kind.startswith("pages") and made} == {"pages of entries": 1}
    log = folders.content / "logs" / "progress.csv"
    log.write_text(log.read_text("utf-8").replace("12:30:00,300,L,no", "12:30:00,300,L,yes"), "utf-8")
    assert built(folders).made["facts of entries"] == 2


def test_a_contradiction_stays_told_without_being_looked_for_again(folders: Folders) -> None:
    """The warning of an entry that nobody touched comes from what is kept."""
    write_entry(folders.content, "final")
    first = built(folders)
    write_entry(folders.content, "twin", "Text of", "More text of")
    second = built(folders)
    assert len(first.problems) == 1
    assert second.problems == first.problems
    assert second.made["facts of entries"] == 1
