"""The layout that every page stands in, and the one place where pages become HTML."""

from collections.abc import Callable

from msgspec import Struct

from sitegen.diary.settings import Settings
from sitegen.pages.drawing import helpers
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.page import Page
from sitegen.pages.picture_element import PictureView
from sitegen.pages.registry import KINDS
from sitegen.pages.templating import environment, render
from sitegen.pages.text_parts import TextParts
from sitegen.pages.theme import Theme
from sitegen.pages.words import Words


class DiaryFacts(Struct, frozen=True):
    """What templates know of the diary as `diary`. `chapters`: key and address of what the navigation leads to."""

    title: str
    tagline: str | None
    author: str | None
    licence: str | None
    address: str | None
    chapters: tuple[tuple[str, str], ...]


class PageLayout:
    """Draws pages inside the common layout of the diary, in one theme and language."""

    def __init__(
        self, settings: Settings, theme: Theme, words: Words, formatter: FactFormatter, made_by: str | None = None
    ) -> None:
        chapters = _navigation(settings)
        self.diary = DiaryFacts(settings.title, settings.tagline, settings.author, settings.licence, settings.address, chapters)
        self.env = environment(theme.folders, words, formatter.numbers, made_by)
        self.env.globals.update(helpers(words, formatter.numbers))

    def draw(self, page: Page) -> str:
        around = {"diary": self.diary, "page": page}
        return render(self.env, page.template, page.address, self.diary.address, around | page.context)

    def feed_text(self, text: TextParts, link: Callable[[str], str], picture: PictureView | None = None) -> str:
        """An entry's text alone, for readers far from the site: `link` gives absolute addresses; `picture` is the one that feeds
        name beside the text."""
        return self.env.get_template("feed_text.html").render(text=text, link=link, picture=picture)


def _navigation(settings: Settings) -> tuple[tuple[str, str], ...]:
    """Key and address of every kind that has a place there, in the order of the registry."""
    places = (kind.navigation for kind in KINDS if kind.navigation is not None)
    return tuple((place.key, place.address) for place in places if place.wanted(settings))
