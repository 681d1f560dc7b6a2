"""What markers in a text stand for is drawn by the theme, and nothing in them becomes HTML."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_pictures import Figure
from sitegen.pages.entry_sections.registry import FIGURES
from sitegen.pages.entry_text import text_of
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.markdown_text import Resolvers, to_html
from sitegen.pages.page_layout import PageLayout
from sitegen.pages.picture_element import PictureView
from sitegen.pages.text_parts import FigureLink, NumberInText, PictureInText, TextParts
from sitegen.pages.theme import Theme
from tests.pages.sample import THEMES, layout_of, prepared_sample, sample_book

HARM = '<b>"&'
SAFE = "&lt;b&gt;&#34;&amp;"
VIEW = PictureView(
    alt=HARM, caption_html=None, role="result", width_px=30, height_px=20, sources=(), fallback="entries/a/pictures/x.jpg",
    full="entries/a/pictures/x.jpg", placeholder="data:,", colour="#000", tiles=None, thumb="x", thumb_size=(3, 2),
)  # fmt: skip


def drawn(*text: TextParts, layout: PageLayout | None = None) -> str:
    layout = layout or layout_of("default", "en", sample_book())[0]
    return "".join(layout.feed_text(part, lambda address: f"https://nights.example/{address}") for part in text)


def text_with(body: str) -> tuple[TextParts, DiaryIndex]:
    """The sample's entry with another text."""
    prepared = prepared_sample()
    entry = replace(prepared.view.entry, body=body)
    book = layout_of("default", "en", sample_book())[1]
    return text_of(replace(prepared, view=replace(prepared.view, entry=entry)), book).parts, book


def test_a_number_stands_in_its_sentence() -> None:
    """Alone in the marker's place, or beside the words; its way to the explanation is that of the page or feed."""
    parts, _ = text_with("In all [](fact:integration.total_s), [so much](fact:integration.total_s).")
    number = (
        '<a class="n" href="https://nights.example/explained/#fact-integration-total-s" '
        'title="Sum of the kept light frames.">35\u202fmin</a>'
    )
    beside = f'<span class="told">so much</span><span class="beside" role="note">Integration: {number}</span>'
    assert drawn(parts) == f"<p>In all {number}, {beside}.</p>\n"


def test_a_figure_is_led_to() -> None:
    parts, _ = text_with("![](figure:nights) ![the hours](figure:light-gathered)")
    assert drawn(parts) == (
        '<p><a class="figure-link" href="#nights">nights</a> <a class="figure-link" href="#light-gathered">the hours</a></p>\n'
    )


@pytest.mark.parametrize(
    "part",
    [
        NumberInText(Shown(HARM, "integration.total_s", HARM, HARM), HARM),
        FigureLink(HARM, HARM),
        PictureInText(VIEW, HARM),
    ],
    ids=lambda part: part.kind,
)
def test_words_stay_words(part: NumberInText | FigureLink | PictureInText) -> None:
    """Whatever an author, a file or a catalogue is called."""
    html = drawn((part,))
    assert HARM not in html and "<b" not in html
    assert SAFE in html


def test_no_text_can_pretend_to_be_a_marker() -> None:
    """NUL, or a reference to it, is U+FFFD (CommonMark 0.31, sections 2.3 and 2.5)."""
    link = FigureLink("nights", "nights")
    rendered = to_html("\0" + "0\0 &#0;0&#0; ![](figure:nights)", Resolvers(lambda _: "", lambda *_: "", lambda *_: link))
    assert rendered.parts == ("<p>\ufffd0\ufffd \ufffd0\ufffd ", link, "</p>\n")


def test_a_theme_changes_how_it_looks(tmp_path: Path) -> None:
    """One macro of one template."""
    _, book = layout_of("default", "en", sample_book())
    (tmp_path / "html").mkdir()
    (tmp_path / "html" / "text.html").write_text("{% macro prose(text) %}{{ text|length }} parts{% endmacro %}", "utf-8")
    theme = Theme((tmp_path, THEMES / "default"))
    mine = PageLayout(book.settings, theme, book.formatter.words, book.formatter)
    assert drawn(("<p>", FigureLink("nights", ""), "</p>"), layout=mine) == "3 parts"


def test_an_alternative_text_is_no_html() -> None:
    """Of two pictures laid over each other, where neither has a caption."""
    layout, _ = layout_of("default", "en", sample_book())
    source = "{% import 'pictures.html' as pictures with context %}{{ pictures.compared(one, '1px') }}"
    figure = Figure("picture-1", VIEW, None, None, (), VIEW, VIEW)
    html = layout.env.from_string(source).render(one=figure, link=lambda address: address)
    assert html.count(f": {SAFE}</p>") == 2 and "<b" not in html


@pytest.mark.parametrize("figure", FIGURES)
def test_a_figure_has_its_place_on_the_entry_s_page(figure: str) -> None:
    """Where a text leads to a section, the template has an anchor of that name."""
    assert f'id="{figure}"' in (THEMES / "default" / "html" / "entry.html").read_text("utf-8")
