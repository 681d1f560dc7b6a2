"""What stands around every page, and the door through which pages become HTML."""

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.diary.settings import Settings
from sitegen.pages.drawing import helpers
from sitegen.pages.page import Page
from sitegen.pages.shown import Shower
from sitegen.pages.templating import environment, render
from sitegen.pages.theme import Theme
from sitegen.pages.words import Words

NAVIGATION: tuple[tuple[str, str], ...] = (
    ("diary", addresses.INDEX),
    ("nights", addresses.NIGHTS),
    ("sky", addresses.SKY),
    ("gear", addresses.RIGS),
    ("totals", addresses.TOTALS),
    ("lessons", addresses.LESSONS),
    ("search", addresses.SEARCH),
)


class DiaryFacts(Struct, frozen=True):
    """What templates know of the diary as `diary`. `chapters`: key and address of what the navigation leads to."""

    title: str
    tagline: str | None
    author: str | None
    licence: str | None
    address: str | None
    chapters: tuple[tuple[str, str], ...]


class SiteFrame:
    """Draws pages in one theme and language."""

    def __init__(self, settings: Settings, theme: Theme, words: Words, shower: Shower, made_by: str | None = None) -> None:
        chapters = _navigation(settings)
        self.diary = DiaryFacts(settings.title, settings.tagline, settings.author, settings.licence, settings.address, chapters)
        self.env = environment(theme.folders, words, shower.numbers, made_by)
        self.env.globals.update(helpers(words, shower.numbers))

    def draw(self, page: Page) -> str:
        around = {"diary": self.diary, "page": page}
        return render(self.env, page.template, page.address, self.diary.address, around | page.context)


def _navigation(settings: Settings) -> tuple[tuple[str, str], ...]:
    """The outlook stands before the search, where it is published."""
    if not settings.outlook.published:
        return NAVIGATION
    return (*NAVIGATION[:-1], ("outlook", addresses.OUTLOOK), NAVIGATION[-1])
