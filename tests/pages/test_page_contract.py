"""What every kind of page promises, whatever it shows: a new one is covered by its line in the registry."""

import re
from functools import cache

import pytest

from sitegen.diary import addresses
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Kind, Page
from sitegen.pages.registry import KINDS
from sitegen.pages.words import Words, words_from
from tests.pages.sample import THEMES, layout_of, pages_of, prepared_sample, sample_book, sitemap_of, spoken

NOT_IN_SITEMAP = {"not found"}  # it is no place to go to
LED_TO_BY_NO_PAGE = {addresses.NOT_FOUND}  # a web server shows it

pytestmark = pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)


@cache
def book_and_links(theme: str) -> tuple[DiaryIndex, dict[str, set[str]]]:
    """The sample in English, and for every page the addresses that its links lead to."""
    layout, book = layout_of(theme, "en", sample_book())
    drawn = {page.address: layout.draw(page) for kind in KINDS for page in pages_of(kind, book, prepared_sample())}
    return book, {address: leads_to(address, html) for address, html in drawn.items()}


def leads_to(here: str, html: str) -> set[str]:
    """Addresses of the site, by what is written in the links of a page."""
    hrefs = re.findall(r'<a [^>]*href="([^"#]+)', html)
    return {resolved(here, href).removesuffix("index.html") for href in hrefs if "://" not in href}


def resolved(here: str, href: str) -> str:
    parts = addresses.file_of(here).split("/")[:-1]
    for step in href.split("/"):
        parts = parts[:-1] if step == ".." else [*parts, step]
    return "/".join(parts)


def sample_pages(kind: Kind) -> list[Page]:
    return pages_of(kind, book_and_links("default")[0], prepared_sample())


def keys_for_words() -> Words:
    """Each word is its own key in guillemets."""
    english = words_from("en", ((THEMES / "default" / "words" / "en.yaml").read_text("utf-8"),))
    return Words("en", {key: f"‹{key}›" for key in english})


def own_names(book: DiaryIndex) -> set[str]:
    """What needs no words: names that the author gave, and years."""
    names = {target.name for card in book.cards for target in card.targets} | {card.title for card in book.cards}
    names |= {rig.name for rig in book.rigs.values()} | {site.name for site in book.sites.values()}
    return names | set(book.topic_words.values()) | set(map(str, book.years)) | {book.settings.title}


def test_the_sample_shows_it(kind: Kind) -> None:
    """A page of each kind is drawn, in both themes and languages, by `test_theme.py`: there must be one."""
    assert sample_pages(kind)


def test_its_name_and_its_place_are_its_own(kind: Kind) -> None:
    assert [other.name for other in KINDS].count(kind.name) == 1
    keys = [other.navigation.key for other in KINDS if other.navigation]
    assert kind.navigation is None or keys.count(kind.navigation.key) == 1


def test_it_tells_its_addresses(kind: Kind) -> None:
    """Each page's once, without making a page."""
    told = list(kind.addresses(book_and_links("default")[0]))
    assert sorted(told) == sorted(page.address for page in sample_pages(kind))


def test_its_addresses_are_the_site_s(kind: Kind) -> None:
    """So that its pages can be withdrawn without a record."""
    assert [page.address for page in sample_pages(kind) if not addresses.may_be_ours(addresses.file_of(page.address))] == []


def test_the_sitemap_has_its_pages(kind: Kind) -> None:
    text = sitemap_of(book_and_links("default")[0])
    expected = kind.name not in NOT_IN_SITEMAP
    assert {f"<loc>https://nights.example/{page.address}</loc>" in text for page in sample_pages(kind)} == {expected}


@pytest.mark.parametrize("theme", ["default", "almanac"])
def test_a_reader_finds_its_pages(kind: Kind, theme: str) -> None:
    """By the navigation, or from a page elsewhere."""
    _, links = book_and_links(theme)
    led_to = {there for here, found in links.items() for there in found if there != here} | LED_TO_BY_NO_PAGE
    assert [page.address for page in sample_pages(kind) if page.address not in led_to] == []


def test_the_navigation_shows_where_its_pages_are(kind: Kind) -> None:
    """The chapter of each page is the key of a place in the navigation."""
    keys = {other.navigation.key for other in KINDS if other.navigation}
    assert {page.chapter for page in sample_pages(kind)} <= keys


def test_the_theme_s_words_name_it(kind: Kind) -> None:
    """A page's title comes from the theme's words or from the author."""
    book = spoken(sample_book(), keys_for_words())
    titles = [page.title for page in pages_of(kind, book, prepared_sample())]
    assert [title for title in titles if "‹" not in title and title not in own_names(book)] == []


def test_facts_beside_it_name_it(kind: Kind) -> None:
    """facts.json says of which kind the page is, and the schema knows that kind."""
    named = {getattr(page.facts, "page", None) for page in sample_pages(kind) if page.facts is not None}
    assert named == ({kind.name} if kind.has_facts else set())
