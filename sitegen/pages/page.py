"""The contract of a page: an address, a template, and plain values for it."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any

from msgspec import Struct, field

if TYPE_CHECKING:
    from sitegen.pages.site_book import SiteBook


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


class PageKind(Struct, frozen=True):
    """One kind of page: a name for reports, and all pages of that kind for a diary."""

    name: str
    pages: Callable[["SiteBook"], Iterable[Page]]
