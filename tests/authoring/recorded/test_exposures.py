"""Cells of exposure times that nobody writes, and damage does."""

import pytest

from sitegen.authoring.recorded.exposures import read_exposure
from sitegen.reading.capture_logs.log_problems import ValueProblem


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("9" * 400 + " x 300 s", "out of range"),
        ("9" * 5_000 + " x 300 s", "out of range"),
        ("200000 x 1 s", "out of range"),
        ("1x" * 3_000 + "300 s", "two counts"),
        ("3/" + "9" * 900, "not a duration"),
    ],
    ids=["more than a float holds", "more than an int takes", "more than a run", "counts of counts", "a long fraction"],
)
def test_a_damaged_cell_is_doubted_at_once(text: str, wrong: str) -> None:
    """No traceback, and no minute of looking for numbers."""
    with pytest.raises(ValueProblem, match=wrong):
        read_exposure(text)
