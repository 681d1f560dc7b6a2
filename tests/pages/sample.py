"""Every page of a small diary that has something for each kind of page, in any theme and language."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from msgspec.structs import replace as changed

from sitegen.diary.entry import Lessons
from sitegen.diary.settings import OutlookSettings, Settings
from sitegen.feeds import sitemap
from sitegen.feeds.feed import FeedSource
from sitegen.number_text import NumberText
from sitegen.pages import topic_pages
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.page import EntryPageKind, Kind, Page, PageKind
from sitegen.pages.page_layout import PageLayout
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.registry import KINDS
from sitegen.pages.theme import open_theme
from sitegen.pages.words import Words, words_from
from tests.conftest import ROOT
from tests.diaries import HILL
from tests.pages.test_year_cloth import book_at, prepared_at

THEMES = ROOT / "themes"
FIRST = date(2021, 3, 1)
LONG = 25
"""Entries of a list that has pages of years."""


def sample_book() -> DiaryIndex:
    """One entry that is still gathering, with a topic and a lesson; a published outlook and an address."""
    plain = book_at(HILL)
    card = changed(plain.cards[0], topics=("dew",), stage="gathering", lessons=Lessons(next=("Darker nights.",)))
    return replace(plain, cards=(card,))


def long_book(count: int) -> DiaryIndex:
    """So many entries, ten days apart, each with one night and one lesson, all of one target, rig, site and topic."""
    plain = sample_book()
    cards = tuple(_card(plain.cards[0], number) for number in reversed(range(count)))
    return replace(plain, cards=cards)


def _card(card: EntryCard, number: int) -> EntryCard:
    slug, evening = f"entry-{number}", FIRST + timedelta(days=10 * number)
    night = changed(card.nights[0], evening=evening, entry=slug)
    lessons = Lessons(next=(f"Lesson {number}.",))
    return changed(
        card, slug=slug, title=f"Entry {number}", published=evening + timedelta(days=2), nights=(night,), lessons=lessons
    )


def spoken(book: DiaryIndex, words: Words, theme_name: str = "default") -> DiaryIndex:
    """The book in these words."""
    settings = Settings(
        "A diary", language=words.language, theme=theme_name, address="https://nights.example/", outlook=OutlookSettings(True)
    )
    return replace(book, formatter=FactFormatter(NumberText(words.language, words), words), settings=settings)


def pages_of(kind: Kind, book: DiaryIndex, prepared: PreparedEntry) -> list[Page]:
    if isinstance(kind, EntryPageKind):
        return list(kind.pages([prepared], book))
    assert isinstance(kind, PageKind)
    return list(kind.pages(book))


def all_pages(book: DiaryIndex, prepared: PreparedEntry) -> Iterator[Page]:
    for kind in KINDS:
        yield from pages_of(kind, book, prepared)
    long = replace(book, cards=long_book(LONG).cards)
    yield from (page for page in topic_pages.pages(long) if page.template == "list_year.html")


def prepared_sample() -> PreparedEntry:
    return prepared_at(HILL)


def layout_of(theme_name: str, language: str, book: DiaryIndex) -> tuple[PageLayout, DiaryIndex]:
    """The page layout of a theme in a language, and the book that speaks it."""
    theme, problems = open_theme(theme_name, THEMES)
    assert problems == []
    words = words_from(language, theme.word_texts(language))
    translated = spoken(book, words, theme_name)
    return PageLayout(translated.settings, theme, words, translated.formatter), translated


def sitemap_of(book: DiaryIndex) -> str:
    (artifact,) = sitemap.make(FeedSource(book, {}, ()))
    assert isinstance(artifact.content, bytes)
    return artifact.content.decode("utf-8")
