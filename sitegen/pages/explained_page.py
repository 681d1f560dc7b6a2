"""How every computed number is obtained: from the same lines that stand beside the numbers."""

from collections.abc import Iterable
from typing import Any

from sitegen.diary import addresses
from sitegen.facts.facts_json import path_of
from sitegen.facts.registry import FACTS
from sitegen.pages.page import Page, PageKind
from sitegen.pages.site_book import SiteBook


def pages(book: SiteBook) -> Iterable[Page]:
    groups: list[tuple[str, list[dict[str, Any]]]] = []
    for scope, facts in FACTS.items():
        rows = [
            {
                "path": path_of(scope, fact),
                "anchor": addresses.explained_anchor(path_of(scope, fact)),
                "title": book.shower.title(fact, path_of(scope, fact)),
                "unit": fact.unit,
                "how": book.shower.how(fact, path_of(scope, fact)),
                "source": book.shower.words.phrase(fact.source),
            }
            for fact in facts
        ]
        groups.append((f"numbers.{scope}", rows))
    yield Page(addresses.EXPLAINED, "explained.html", book.shower.words["page.explained"], {"groups": groups})


KIND = PageKind("explained", pages)
