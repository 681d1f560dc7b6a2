"""A picture that is no observation says so wherever it is shown: on pages, in lists, feeds and search, and inside the file."""

import json
from dataclasses import replace as with_changes
from datetime import date
from typing import get_args

import pytest
from msgspec.structs import replace

from sitegen.artifact import Artifact
from sitegen.diary.entry import Entry, Picture, PictureType
from sitegen.diary.settings import Settings
from sitegen.feeds import search_index
from sitegen.feeds.feed import FeedSource
from sitegen.feeds.search_terms import search_entry
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_pictures import Figure, StepView
from sitegen.pages.entry_row import entry_rows
from sitegen.pages.linked_data import entry_linked_data
from sitegen.pages.picture_element import PictureView
from sitegen.pages.text_parts import PictureInText
from sitegen.pictures.packet_values import Exposures, packet_values
from tests.feeds.search_reading import read_back
from tests.pages.sample import layout_of, prepared_sample, sample_book

SEEN = PictureView(
    alt="a spiral", caption_html="Five nights.", role="result", width_px=30, height_px=20, sources=(), fallback="p/x.jpg",
    full="p/x.jpg", placeholder="data:,", colour="#000", tiles=None, thumb="p/x.jpg", thumb_size=(3, 2),
)  # fmt: skip
MADE = replace(SEEN, type="simulation")
LABEL = {"en": "Simulation, not an observation", "de": "Simulation, keine Beobachtung"}
LUMINANCE = Exposures("The long train", "mono camera", "Luminance", 550.0, "2026-09-20T12:00:00Z", 900.0)


def pictured(view: PictureView, language: str = "en") -> DiaryIndex:
    _, book = layout_of("default", language, sample_book())
    return with_changes(book, cards=(replace(book.cards[0], picture=view),))


def drawn(call: str, language: str = "en", **values: object) -> str:
    """What one call of a macro draws."""
    layout, _ = layout_of("default", language, sample_book())
    source = "{% import 'pictures.html' as pictures with context %}{% import 'entry_rows.html' as listed with context %}"
    return layout.env.from_string(source + "{{ " + call + " }}").render(link=lambda address: address, **values)


def source_of(view: PictureView, language: str = "en") -> FeedSource:
    book = pictured(view, language)
    slug = book.cards[0].slug
    return FeedSource(book, {slug: "<p>Text.</p>"}, (search_entry(book.cards[0], book.rigs, ""),))


def text_of(artifact: Artifact) -> str:
    assert isinstance(artifact.content, bytes)
    return artifact.content.decode("utf-8")


@pytest.mark.parametrize("language", LABEL)
def test_under_the_picture_and_in_its_alternative_text(language: str) -> None:
    """With and without a caption; the large view of the script is given the same words."""
    for view in (MADE, replace(MADE, caption_html=None)):
        html = drawn("pictures.figure(one, '1px')", language, one=Figure("picture-1", view, None, None, ()))
        assert f'<p class="picture-type">{LABEL[language]}</p>' in html
        assert f'alt="{LABEL[language]}: a spiral"' in html
        assert f'data-say-type="{LABEL[language]}"' in html


def test_an_observation_is_not_labelled() -> None:
    html = drawn("pictures.figure(one, '1px')", one=Figure("picture-1", SEEN, None, None, ()))
    assert 'alt="a spiral"' in html
    assert "picture-type" not in html and "say-type" not in html


def test_laid_over_each_other_and_in_steps() -> None:
    """Each by itself: an observation beside a simulation stays one."""
    figure = Figure("picture-1", SEEN, None, None, (StepView("stacked", MADE),), SEEN, MADE)
    assert drawn("pictures.compared(one, '1px')", one=figure).count(f"({LABEL['en']})") == 1
    assert drawn("pictures.steps(one)", one=figure).count(f'<p class="picture-type">{LABEL["en"]}</p>') == 1


def test_within_the_text() -> None:
    """On the page and in feeds, which draw texts with the same template."""
    layout, _ = layout_of("default", "en", sample_book())
    html = layout.feed_text((PictureInText(MADE, ""),), lambda address: address)
    assert f'alt="{LABEL["en"]}: a spiral"' in html
    assert f"({LABEL['en']})</span>" in html


@pytest.mark.parametrize("language", LABEL)
def test_in_every_list(language: str) -> None:
    """Front page, search, targets, rigs, sites, topics and years all draw their entries with one macro. The label stands
    outside of the link that is hidden from those who hear the page."""
    rows = entry_rows(pictured(MADE, language).cards, pictured(MADE, language))
    html = drawn("listed.entries(rows)", language, rows=rows)
    assert f'</a><p class="picture-type">{LABEL[language]}</p>' in html.replace("\n", "")


@pytest.mark.parametrize("language", LABEL)
def test_in_the_text_of_both_feeds(language: str) -> None:
    """After the text, since a feed names the picture beside it (`image`) or leaves it to its reader to fetch."""
    layout, _ = layout_of("default", language, sample_book())
    assert LABEL[language] in layout.feed_text(("<p>Text.</p>",), lambda address: address, MADE)
    assert layout.feed_text(("<p>Text.</p>",), lambda address: address, SEEN) == "<p>Text.</p>"


def test_the_search_finds_it_by_its_label() -> None:
    """The words of the label lead to the entry whose picture it is, and its row names the type."""
    index = read_back(*map(text_of, search_index.make(source_of(MADE))), parts=[])
    assert index.head["types"][index.rows[0][5]] == LABEL["en"]
    assert set(index.head["types"]) == set(get_args(PictureType)) - {"observation"}
    assert all(index.entries(word) == [0] for word in ("simulation", "observation"))


def test_in_linked_data() -> None:
    """schema.org's ImageObject: `genre`, and the caption."""
    book = pictured(MADE)
    graph = json.loads(entry_linked_data(prepared_sample(), book, MADE))["@graph"]
    image = next(node for node in graph if node["@type"] == "ImageObject")
    assert (image["genre"], image["caption"]) == ("simulation", f"{LABEL['en']}: a spiral")


@pytest.mark.parametrize("kind", get_args(PictureType))
def test_inside_the_file(kind: PictureType) -> None:
    """AVM 1.2, `Type`. What no sub went into names no telescope, camera or exposure."""
    entry = Entry("e", "Title", date(2026, 10, 20), "Text.")
    values = packet_values(entry, Picture("a.jpg", "a spiral", type=kind), Settings("A diary"), (LUMINANCE,))
    assert values["Type"] == kind.capitalize()
    assert ("Facility" in values) is (kind in ("observation", "collage", "planetary"))
