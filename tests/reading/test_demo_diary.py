"""The demo diary in content/ is a diary."""

import re
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


def test_every_entry_of_the_demo_shows_how_numbers_and_figures_are_put_into_a_text() -> None:
    """Computed numbers cannot contradict the logs; a visitor has no use for the seed of a simulated picture."""
    texts = {path.stem: path.read_text("utf-8") for path in sorted((CONTENT / "entries").glob("*.md"))}
    assert [name for name, text in texts.items() if "](fact:" not in text] == []
    assert [name for name, text in texts.items() if "](figure:" not in text] == []
    assert [name for name, text in texts.items() if re.search(r"\bseeds? \d", text)] == []
