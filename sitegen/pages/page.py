"""The contract of a page: an address, a template, and plain values for it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from sitegen.pages.site_book import SiteBook


@dataclass(frozen=True, slots=True)
class Page:
    """`context` holds plain records only, so that its hash tells whether the page must be drawn again."""

    address: str
    template: str
    title: str
    context: dict[str, Any] = field(default_factory=dict)
    section: str = "diary"
    description: str | None = None


@dataclass(frozen=True, slots=True)
class PageKind:
    """One kind of page: a name for reports, and all pages of that kind for a diary."""

    name: str
    pages: Callable[["SiteBook"], Iterable[Page]]
