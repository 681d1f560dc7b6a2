"""The contract of a list for machines: the whole diary's cards in, its files out."""

from collections.abc import Callable, Iterable, Mapping

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.search_entry import SearchEntry
from sitegen.pages.diary_index import DiaryIndex

NEWEST = 20


class FeedSource(Struct, frozen=True):
    """`texts`: the HTML of the newest entries' bodies by slug, links as `link` gives them. `searched`: what the search knows of
    each entry, newest first."""

    book: DiaryIndex
    texts: Mapping[str, str]
    searched: tuple[SearchEntry, ...]

    def link(self, address: str) -> str:
        """Absolute where the diary has an address, else relative to the site's root."""
        return absolute(self.book, address)


class Feed(Struct, frozen=True):
    """`make` gives nothing where the list makes no sense: a sitemap without an address."""

    name: str
    make: Callable[[FeedSource], Iterable[Artifact]]


def absolute(book: DiaryIndex, address: str) -> str:
    """The site's own address joined with a page's; the page's alone where the diary has none."""
    root = book.settings.address
    if root is None:
        return addresses.relative(addresses.INDEX, address)
    return f"{root.rstrip('/')}/{address}"
