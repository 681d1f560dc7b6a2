"""The demo diary in content/ is a diary."""

from pathlib import Path

from sitegen.reading.reader import read_diary
from tests.reading.desks import TODAY

CONTENT = Path(__file__).resolve().parents[2] / "content"


def test_the_demo_diary_has_no_problem() -> None:
    """Not even a warning: it is what new authors copy from."""
    reading = read_diary(CONTENT, TODAY)
    assert [str(problem) for problem in reading.problems] == []
    assert reading.diary is not None
    assert len(reading.diary.entries) >= 8
    assert {"trial", "gathering", "finished"} == {entry.stage for entry in reading.diary.entries}
