"""Answers are remembered by the table's shape, and what cannot be an answer is refused."""

from pathlib import Path

import pytest

from sitegen.authoring.recorded.asked_columns import read_asked
from sitegen.authoring.recorded.shapes import FILE, ShapeMemory
from sitegen.problems import DiaryProblems
from tests.authoring.recorded.cases import Table
from tests.authoring.recorded.test_tables import read

OPEN = "Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n"
TOLD_BY_ITSELF = "DATE ,Time,exposure,Filter\n18/4/2026,21:00,300,L\n"


def _starts(table: Table, folder: Path, keep: Path) -> list[str]:
    memory = ShapeMemory(keep)
    reading = read(table, folder, memory)
    memory.save()
    return [sub.start.isoformat() for sub in reading.subs] or [problem.wrong for problem in reading.problems]


@pytest.mark.parametrize(
    ("before", "asked"),
    [(OPEN, ("date=Date:%d/%m/%Y",)), (TOLD_BY_ITSELF, ())],
    ids=["the author said it", "another file showed it"],
)
def test_the_next_file_of_that_shape_needs_nothing(before: str, asked: tuple[str, ...], tmp_path: Path) -> None:
    """Headings are the shape, whatever their case."""
    assert "may be 2026-04-03 or 2026-03-04" in _starts(Table(OPEN), tmp_path, tmp_path)[0]
    _starts(Table(before, asked=asked), tmp_path, tmp_path)
    assert _starts(Table(OPEN), tmp_path, tmp_path) == ["2026-04-03T21:00:00+00:00"]


def test_what_a_file_shows_is_believed_before_what_was_remembered(tmp_path: Path) -> None:
    """The same headings may come from another country."""
    _starts(Table(TOLD_BY_ITSELF), tmp_path, tmp_path)
    american = Table("Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n3/18/2026,21:00,300,L\n")
    assert _starts(american, tmp_path, tmp_path)[0] == "2026-03-04T21:00:00+00:00"


def test_headings_of_one_s_own_are_remembered(tmp_path: Path) -> None:
    """A second file of these headings is read without an option."""
    text = "When it began;How long;Glass\n2026-04-18 21:00;300 s;Ha\n"
    _starts(Table(text, asked=("start=When it began,exposure_s=How long,filter=Glass",)), tmp_path, tmp_path)
    assert _starts(Table(text.replace("18", "19")), tmp_path, tmp_path) == ["2026-04-19T21:00:00+00:00"]


def test_a_refused_table_leaves_nothing_behind(tmp_path: Path) -> None:
    """A wrong answer is not remembered: the order that the author names contradicts the dates."""
    wrong = Table(OPEN.replace("3/4", "18/4"), asked=("date=Date:%m/%d/%Y",))
    assert _starts(wrong, tmp_path, tmp_path) == ["'Date' is day first, not month first"]
    assert not (tmp_path / FILE).exists()


def test_a_damaged_memory_is_forgotten(tmp_path: Path) -> None:
    """It costs the question again, and no more."""
    (tmp_path / FILE).write_text('{"shapes": 3')
    assert "may be" in _starts(Table(OPEN), tmp_path, tmp_path)[0]


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ("strat=Beginn", "'strat' is no key of a table"),
        ("start", "'start' names no column"),
        ("dates=night", "'dates' is 'night'"),
    ],
)
def test_a_key_that_is_none_is_told(words: str, sentence: str) -> None:
    """Before any file is opened."""
    with pytest.raises(DiaryProblems, match=sentence):
        read_asked([words])


def test_a_heading_may_hold_a_comma() -> None:
    """A comma parts two columns only where a key follows it."""
    asked = read_asked(["start=Begin, local,exposure_s=Time (s):min"])
    assert {key: (column.heading, column.form) for key, column in asked.items()} == {
        "start": ("Begin, local", ""), "exposure_s": ("Time (s)", "min"),
    }  # fmt: skip
