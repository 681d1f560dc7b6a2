"""What a preview loads while its author writes."""

from datetime import date
from pathlib import Path

import jinja2
import pytest

from sitegen.build.warm_up import warm_up
from sitegen.diary.settings import Settings
from sitegen.folders import Folders
from sitegen.number_text import NumberText
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.page_layout import PageLayout
from sitegen.pages.theme import open_theme
from sitegen.pages.words import words_from
from tests.cli.conftest import Run


def test_the_first_save_compiles_nothing(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """Templates stand compiled for the diary's own theme and language before a page asks for them; no site is written."""
    diary = Path("content/diary.yaml")
    diary.write_text(diary.read_text("utf-8").replace("language: en", "language: de"), "utf-8")
    folders = Folders(Path("content"), Path("themes"), Path("output"), Path(".sitegen"))
    warm_up(folders, Path(".sitegen/store"), date(2026, 11, 25))
    assert not Path("output").exists()
    monkeypatch.setattr(jinja2.Environment, "compile", lambda self, source, *more: pytest.fail(f"compiled {more[0]}"))
    theme, _ = open_theme("default", Path("themes"))
    words = words_from("de", theme.word_texts("de"))
    layout = PageLayout(Settings("", language="de"), theme, words, FactFormatter(NumberText("de", words), words))
    for name in ("entry.html", "index.html", "night.html"):
        layout.env.get_template(name)
