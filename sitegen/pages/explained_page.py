"""How every computed number is obtained: from the same lines that stand beside the numbers."""

from collections.abc import Iterable
from typing import Any

from sitegen.diary import addresses
from sitegen.facts.places import ROOTS, Place, places_in
from sitegen.facts.registry import EntryFacts
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Page, PageKind

NAMES = {"nights": "night", "subs": "sub", "pictures": "picture", "panels": "panel"}
"""Of groups whose words are in the singular."""


def pages(book: DiaryIndex) -> Iterable[Page]:
    groups = [(f"numbers.{name}", [_row(place, book) for place in places]) for name, places in _groups()]
    yield Page(addresses.EXPLAINED, "explained.html", book.formatter.words["page.explained"], {"groups": groups})


def _groups() -> Iterable[tuple[str, list[Place]]]:
    """As facts.json has them: what names the entry, its objects, and what stands at the end."""
    own, head = list(places_in(EntryFacts)), EntryFacts.__struct_fields__.index("target") - 1
    yield "entry", own[:head]
    for root, kind in ROOTS.items():
        if root:
            yield NAMES.get(root, root), list(places_in(kind))
    yield "entry_end", own[head:]


def _row(place: Place, book: DiaryIndex) -> dict[str, Any]:
    return {
        "path": place.path,
        "anchor": addresses.explained_anchor(place.path),
        "title": book.formatter.title(place.fact, place.path),
        "unit": place.fact.unit,
        "how": book.formatter.how(place.fact, place.path),
        "source": book.formatter.words.phrase(place.fact.source),
    }


KIND = PageKind(name="explained", pages=pages, addresses=lambda _: (addresses.EXPLAINED,), shows="no entries")
