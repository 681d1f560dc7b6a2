"""The page of keys is the model's, to the letter."""

from pathlib import Path

import sitegen
from sitegen.reading.key_reference import key_reference


def test_the_page_is_up_to_date() -> None:
    """After a change of the model, write what key_reference() gives into it."""
    page = Path(sitegen.__file__).parent / "reading/KEYS.md"
    assert page.read_text("utf-8") == key_reference()
