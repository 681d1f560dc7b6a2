"""What a theme is promised: the names its templates get, file by file over the default, in every language."""

import re
from dataclasses import replace
from pathlib import Path

import html5lib
import pytest

from sitegen.number_text import NumberText
from sitegen.pages.entry_page import entry_page
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.page_layout import PageLayout
from sitegen.pages.theme import open_theme
from sitegen.pages.words import words_from
from tests.pages.sample import THEMES, all_pages, layout_of, prepared_sample, sample_book

NOTHING = "nothing of its own"


def documented() -> dict[str, set[str]]:
    """Template to the names that its first line promises."""
    firsts = {path.name: path.read_text("utf-8").partition("\n")[0] for path in (THEMES / "default" / "html").iterdir()}
    promises = {name: re.fullmatch(r"{# Gets: (.*)\. #}", first) for name, first in firsts.items()}
    return {name: set(found[1].split()) - set(NOTHING.split()) for name, found in promises.items() if found}


def test_a_template_s_first_line_names_what_it_gets() -> None:
    """The first line of each page's template and the pages agree, name by name, both ways."""
    given: dict[str, set[str]] = {}
    _, book = layout_of("default", "en", sample_book())
    for page in all_pages(book, prepared_sample()):
        given.setdefault(page.template, set()).update(page.context)
    assert documented() == given


@pytest.mark.parametrize("theme", ["default", "almanac"])
@pytest.mark.parametrize("language", ["en", "de"])
def test_every_page_is_drawn_well_formed(theme: str, language: str) -> None:
    """Each page of a small diary, in both themes and both languages, passes an independent HTML5 parser."""
    layout, book = layout_of(theme, language, sample_book())
    for page in all_pages(book, prepared_sample()):
        parser = html5lib.HTMLParser()
        parser.parse(layout.draw(page))
        assert parser.errors == [], (page.address, parser.errors[:3])


def test_german_pages_say_no_english() -> None:
    """The words that stand on every English page are gone from the German ones."""
    layout, book = layout_of("default", "de", sample_book())
    text = re.sub(r"<[^>]*>", " ", layout.draw(entry_page(prepared_sample(), book)))
    assert "Belichtung je Filter" in text
    assert not re.search(r"\b(Integration by filter|nights on a common clock|Image scale|discarded|Optical train)\b", text)


def test_a_theme_stands_over_the_default_file_by_file(tmp_path: Path) -> None:
    """A theme of one template and one word replaces just those."""
    (tmp_path / "mine" / "html").mkdir(parents=True)
    (tmp_path / "mine" / "words").mkdir()
    (tmp_path / "mine" / "html" / "credits.html").write_text("<p>{{ say('nav.sky') }} {{ say('nav.gear') }}</p>")
    (tmp_path / "mine" / "words" / "en.yaml").write_text("nav: {sky: Above}")
    theme, problems = open_theme("mine", tmp_path)
    words = words_from("en", theme.word_texts("en"))
    formatter = FactFormatter(NumberText("en", words), words)
    book = replace(sample_book(), formatter=formatter)
    layout = PageLayout(book.settings, theme, words, formatter)
    drawn = {page.template: layout.draw(page) for page in all_pages(book, prepared_sample())}
    assert problems == []
    assert drawn["credits.html"] == "<p>Above Gear</p>"
    assert ">Above</a>" in drawn["lessons.html"]


def test_an_unknown_theme_is_one_line(tmp_path: Path) -> None:
    """The nearest known theme is the hint."""
    _, problems = open_theme("almanach", tmp_path)
    assert [str(one) for one in problems] == [f"{tmp_path}/almanach:1:1: error: no theme 'almanach'; did you mean 'almanac'?"]


def test_a_misnamed_folder_of_a_theme_is_named(tmp_path: Path) -> None:
    """The names that folders once had lead to those of now, others to the nearest; hidden ones and files are left alone."""
    for folder in ("templates", "static", "word", "html", ".git", "_notes"):
        (tmp_path / "mine" / folder).mkdir(parents=True)
    (tmp_path / "mine" / "README.md").write_text("Mine.")
    _, problems = open_theme("mine", tmp_path)
    assert [str(problem).removeprefix(f"{tmp_path}/mine/") for problem in problems] == [
        "static:1:1: error: 'static' is no folder of a theme; did you mean 'look'?",
        "templates:1:1: error: 'templates' is no folder of a theme; did you mean 'html'?",
        "word:1:1: error: 'word' is no folder of a theme; did you mean 'words'?",
    ]
