"""Diaries broken in one way each, as text, with the problem lines expected: see diary_text.py for the form."""

from datetime import date
from pathlib import Path

import pytest

from sitegen.problems import errors_in
from sitegen.reading.reader import read_diary
from tests.entries.diary_text import BROKEN, HERE, lay_out, read_diary_text

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_a_broken_diary_gets_exactly_these_lines(path: Path, tmp_path: Path) -> None:
    """Every problem is told at once, in its place, in these words, and no diary comes out while one is an error."""
    expected = read_diary_text(path)
    lay_out(expected, tmp_path / "content")
    reading = read_diary(tmp_path / "content", TODAY)
    assert [str(problem) for problem in reading.problems] == list(expected.problems)
    assert (reading.diary is None) == bool(errors_in(reading.problems))


def test_the_sound_diary_has_no_problem(tmp_path: Path) -> None:
    """What the broken diaries are made from is a diary."""
    sound = read_diary_text(HERE / "sound.diary")
    lay_out(sound, tmp_path / "content")
    reading = read_diary(tmp_path / "content", TODAY)
    assert reading.problems == ()
    assert reading.diary is not None
    assert [len(entry.subs) for entry in reading.diary.entries] == [2]


def test_there_are_broken_diaries_enough() -> None:
    """At least forty, each with a problem and a sentence of its own."""
    texts = [read_diary_text(path) for path in BROKEN]
    assert len(texts) >= 40
    assert all(text.problems and text.promise for text in texts)
    assert len({text.promise for text in texts}) == len(texts)


# None so far; a problem whose cure cannot be named gets its reason here.
WITHOUT_A_CURE: frozenset[str] = frozenset()


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_every_error_names_its_cure(path: Path, tmp_path: Path) -> None:
    """What is wrong is half of a problem; the other half is what to write or do."""
    lay_out(read_diary_text(path), tmp_path / "content")
    problems = errors_in(read_diary(tmp_path / "content", TODAY).problems)
    assert [problem.wrong for problem in problems if not problem.remedy and problem.wrong not in WITHOUT_A_CURE] == []
