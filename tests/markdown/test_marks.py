"""Marks for this program are shown to no reader."""

import pytest

from sitegen.markdown.marks import MARKS, without_marks
from sitegen.pages.markdown_text import to_inline_html


@pytest.mark.parametrize("mark", MARKS)
def test_a_mark_is_shown_nowhere(mark: str) -> None:
    """In a note, shown as it stands, and in a lesson, which is Markdown; other words keep their places."""
    assert without_marks(f"Cap on first. []({mark}) Then the ladder.") == "Cap on first. Then the ladder."
    assert to_inline_html(f"Cap on *first*. []({mark})") == "Cap on <em>first</em>."


def test_a_text_without_marks_stays_as_it_is() -> None:
    assert without_marks("Two  blanks, []() and [words](no.md)") == "Two  blanks, []() and [words](no.md)"
