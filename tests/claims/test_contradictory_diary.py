"""Whole diaries under `check`: one that contradicts itself, in its places and word for word, and the demo."""

import time
from pathlib import Path

from sitegen.folders import Folders
from sitegen.rebuild import check
from tests.conftest import TODAY
from tests.entries.diary_text import DiaryText, read_diary_text

HERE = Path(__file__).parent


def write(diary: DiaryText, content: Path) -> None:
    for path, _, _, text in diary.parts:
        file = content / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")


def test_a_diary_that_contradicts_itself_gets_exactly_these_lines(tmp_path: Path) -> None:
    """Each with its place, both values and a cure; nothing of the quotation, of what others took, and of the marked paragraph."""
    diary = read_diary_text(HERE / "contradictory.diary")
    write(diary, tmp_path / "content")
    folders = Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")
    assert [str(problem).replace(f"{tmp_path}/", "") for problem in check(folders, TODAY)] == list(diary.problems)


def test_a_doubt_of_the_front_matter_follows_its_line(tmp_path: Path) -> None:
    """A comment above it changes no record, and moves the place."""
    diary = read_diary_text(HERE / "contradictory.diary")
    write(diary, tmp_path / "content")
    folders = Folders(tmp_path / "content", tmp_path / "themes", tmp_path / "output", tmp_path / "kept")
    before = next(problem for problem in check(folders, TODAY) if "it was calm" in problem.wrong)
    entry = tmp_path / "content/entries/ring.md"
    text = entry.read_text("utf-8")
    time.sleep(0.05)
    entry.write_text(text.replace("title: Four", "# ours\ntitle: Four").replace("\n\nThe first", "\nThe first"), "utf-8")
    after = next(problem for problem in check(folders, TODAY) if "it was calm" in problem.wrong)
    assert (after.line, after.column, after.wrong) == (before.line + 1, before.column, before.wrong)


def test_the_demo_agrees_with_its_logs(demo_folders: Folders) -> None:
    """Not one doubt, nor any other warning."""
    assert [str(problem) for problem in check(demo_folders, TODAY)] == []
