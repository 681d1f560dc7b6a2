"""The contract of a page: an address, a template, and plain values for it; and of a kind of page."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any, Literal

from msgspec import Struct, field

from sitegen.diary.settings import Settings

if TYPE_CHECKING:
    from sitegen.pages.diary_index import DiaryIndex
    from sitegen.pages.prepared import PreparedEntry


class Page(Struct, frozen=True):
    """`context` holds plain records only, so that its hash tells whether the page must be drawn again. `facts` are published
    beside the page as facts.json; None for a page without. `chapter` is the key of the place in the navigation to mark."""

    address: str
    template: str
    title: str
    context: dict[str, Any] = field(default_factory=dict)
    chapter: str = "diary"
    description: str | None = None
    facts: Struct | None = None


def always(_: Settings) -> bool:
    return True


class Navigation(Struct, frozen=True):
    """A place in the navigation of every page. `key` is the section of the pages below it; its word is 'nav.KEY'. `wanted` says
    whether a diary shows it."""

    key: str
    address: str
    wanted: Callable[[Settings], bool] = always


class Kind(Struct, frozen=True, kw_only=True):
    """One kind of page, and all that the rest of the site asks of it: nothing else lists kinds.

    `name` stands in reports, and in facts.json where `has_facts`. `addresses` are those of all its pages, told without making a
    page, for the sitemap. `navigation` is its place there, in the order of the registry; None where other pages lead to it.
    """

    name: str
    addresses: Callable[["DiaryIndex"], Iterable[str]]
    navigation: Navigation | None = None
    has_facts: bool = False
    in_sitemap: bool = True


class PageKind(Kind, frozen=True, kw_only=True):
    """Pages made from cards alone: the card of every entry must be known. `shows` says what of them: where only the nights and
    numbers of entries are shown (`card.without_words`), no changed title draws these pages again."""

    pages: Callable[["DiaryIndex"], Iterable[Page]]
    shows: Literal["cards", "numbers", "no entries"] = "cards"


class EntryPageKind(Kind, frozen=True, kw_only=True):
    """Pages made from entries with all their facts, beside the entries."""

    pages: Callable[[Iterable["PreparedEntry"], "DiaryIndex"], Iterable[Page]]
