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


class SiteFacts(Struct, frozen=True):
    """What templates know of the site as `site`."""

    title: str
    tagline: str | None
    author: str | None
    licence: str | None
    address: str | None
    nav: tuple[tuple[str, str], ...]


class SiteFrame:
    """Draws pages in one theme and language."""

    def __init__(self, settings: Settings, theme: Theme, words: Words, shower: Shower, made_by: str | None = None) -> None:
        nav = _navigation(settings)
        self.site = SiteFacts(settings.title, settings.tagline, settings.author, settings.licence, settings.address, nav)
        self.env = environment(theme.folders, words, shower.numbers, made_by)
        self.env.globals.update(helpers(words, shower.numbers))

    def draw(self, page: Page) -> str:
        return render(self.env, page.template, page.address, self.site.address, {"site": self.site, "page": page, **page.context})


def _navigation(settings: Settings) -> tuple[tuple[str, str], ...]:
    """The outlook stands before the search, where it is published."""
    if not settings.outlook.published:
        return NAVIGATION
    return (*NAVIGATION[:-1], ("outlook", addresses.OUTLOOK), NAVIGATION[-1])
