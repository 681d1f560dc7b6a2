"""What pages say of a train that a picture measured, or that a simulated picture was drawn with."""

import re

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import Picture, PictureType
from sitegen.facts.facts_json import facts_of
from sitegen.facts.views import EntryView
from sitegen.pages.card import card_of
from sitegen.pages.entry_page import KIND
from sitegen.pages.picture_view import PreparedPicture
from sitegen.pages.prepared import PreparedEntry
from sitegen.pictures.pointing_records import Pointing
from tests.facts.test_measured_scale import solved, view_with
from tests.pages.pictured import prepared_picture
from tests.pages.sample import layout_of, pages_of, sample_book

HOW = {
    ("observation", "en"): ("measured", "Measured focal length"),
    ("observation", "de"): ("gemessen", "Gemessene Brennweite"),
    ("simulation", "en"): ("simulated", "Focal length in a simulated picture"),
    ("simulation", "de"): ("simuliert", "Brennweite in einem simulierten Bild"),
}
NOT_SEEN = {
    "en": "the field lies as in a simulated picture, not as a camera saw it.",
    "de": "Das Feld liegt wie in einem simulierten Bild, nicht wie eine Kamera es sah.",
}


def page_with(type_: PictureType, language: str) -> str:
    """The page of an entry with one solved picture of this type."""
    pointed = solved(0.78, type_)
    view = view_with(pointed)
    picture = Picture(pointed.file, "a spiral", type=type_)
    one = _prepared(replace(view, entry=replace(view.entry, pictures=(picture,))), picture, pointed.solution)
    layout, book = layout_of("default", language, sample_book())
    (page,) = pages_of(KIND, book, one)
    return layout.draw(page)


def _prepared(view: EntryView, picture: Picture, solution: object) -> PreparedEntry:
    facts = facts_of(view)
    pictures: tuple[PreparedPicture, ...] = (prepared_picture(picture, Pointing(solution, "stars")),)  # type: ignore[arg-type]
    return PreparedEntry(view, facts, card_of(view, facts), pictures)


@pytest.mark.parametrize(("type_", "language"), HOW)
def test_a_page_says_whether_a_train_was_measured_or_simulated(type_: PictureType, language: str) -> None:
    """Beside the nominal focal length under the picture, and as the number's name in both tables; the other word is nowhere."""
    html = page_with(type_, language)
    word, title = HOW[type_, language]
    place = re.sub(r"<[^>]+>", "", re.findall(r'<p class="place">.*?</p>', html, re.S)[0])
    assert re.search(rf"The long train: 994\smm {word}, 1[,.]000\smm ", place)
    assert html.count(f">{title}</") == 2
    (other,) = {of for of in HOW if of[1] == language} - {(type_, language)}
    assert HOW[other][1] not in html and f"mm {HOW[other][0]}" not in html


@pytest.mark.parametrize(("type_", "language"), HOW)
def test_the_finder_map_says_whose_field_it_draws(type_: PictureType, language: str) -> None:
    """A field that no camera saw is drawn, since it is where the picture lies, and named."""
    assert (NOT_SEEN[language] in page_with(type_, language)) is (type_ == "simulation")
