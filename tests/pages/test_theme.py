"""What a theme is promised: the names its templates get, file by file over the default, in every language."""

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import html5lib
import pytest

from sitegen.diary.settings import Settings
from sitegen.number_text import NumberText
from sitegen.pages.entry_page import entry_page
from sitegen.pages.night_pages import night_pages
from sitegen.pages.page import Page
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.registry import PAGE_KINDS
from sitegen.pages.shown import Shower
from sitegen.pages.site_book import SiteBook
from sitegen.pages.site_frame import SiteFrame
from sitegen.pages.theme import open_theme
from sitegen.pages.words import words_from
from tests.conftest import ROOT
from tests.diaries import HILL
from tests.pages.test_year_cloth import book_at, prepared_at

THEMES = ROOT / "themes"


def all_pages(book: SiteBook, prepared: PreparedEntry) -> Iterator[Page]:
    yield entry_page(prepared, book)
    yield from night_pages([prepared], book)
    for kind in PAGE_KINDS:
        yield from kind.pages(book)


def frame_of(theme_name: str, language: str, book: SiteBook) -> tuple[SiteFrame, SiteBook]:
    """The frame of a theme in a language, and the book that speaks it."""
    theme, problems = open_theme(theme_name, THEMES)
    assert problems == []
    words = words_from(language, theme.word_texts(language))
    shower = Shower(NumberText(language, words), words)
    spoken = replace(book, shower=shower, settings=Settings("A diary", language=language, theme=theme_name))
    return SiteFrame(spoken.settings, theme, words, shower), spoken


def documented() -> dict[str, set[str]]:
    """Template to the names that CONTEXT.md promises it."""
    text = (THEMES / "default" / "CONTEXT.md").read_text("utf-8").split("## Page by page")[1]
    rows = re.findall(r"^\| `([\w.]+)` \| (.*) \|$", text, re.M)
    return {template: set(re.findall(r"`(\w+)`", names)) for template, names in rows}


def test_the_document_names_what_templates_get() -> None:
    """CONTEXT.md and the pages agree, name by name, both ways."""
    given: dict[str, set[str]] = {}
    for page in all_pages(book_at(HILL), prepared_at(HILL)):
        given.setdefault(page.template, set()).update(page.context)
    promised = documented()
    assert {template: promised.get(template) for template in given} == given


@pytest.mark.parametrize("theme", ["default", "almanac"])
@pytest.mark.parametrize("language", ["en", "de"])
def test_every_page_is_drawn_well_formed(theme: str, language: str) -> None:
    """Each page of a small diary, in both themes and both languages, passes an independent HTML5 parser."""
    frame, book = frame_of(theme, language, book_at(HILL))
    for page in all_pages(book, prepared_at(HILL)):
        parser = html5lib.HTMLParser()
        parser.parse(frame.draw(page))
        assert parser.errors == [], (page.address, parser.errors[:3])


def test_german_pages_say_no_english() -> None:
    """The words that stand on every English page are gone from the German ones."""
    frame, book = frame_of("default", "de", book_at(HILL))
    text = re.sub(r"<[^>]*>", " ", frame.draw(entry_page(prepared_at(HILL), book)))
    assert "Gesammeltes Licht" in text
    assert not re.search(r"\b(Light gathered|nights on a common clock|Image scale|discarded|The train)\b", text)


def test_a_theme_stands_over_the_default_file_by_file(tmp_path: Path) -> None:
    """A theme of one template and one word replaces just those."""
    (tmp_path / "mine" / "html").mkdir(parents=True)
    (tmp_path / "mine" / "words").mkdir()
    (tmp_path / "mine" / "html" / "credits.html").write_text("<p>{{ say('nav.sky') }} {{ say('nav.gear') }}</p>")
    (tmp_path / "mine" / "words" / "en.yaml").write_text("nav: {sky: Above}")
    theme, problems = open_theme("mine", tmp_path)
    words = words_from("en", theme.word_texts("en"))
    shower = Shower(NumberText("en", words), words)
    book = replace(book_at(HILL), shower=shower)
    frame = SiteFrame(book.settings, theme, words, shower)
    drawn = {page.template: frame.draw(page) for page in all_pages(book, prepared_at(HILL))}
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
