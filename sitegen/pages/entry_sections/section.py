"""The contract of a section of an entry's page: what it shows, and the name by which the text leads to it."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec import Struct

if TYPE_CHECKING:
    from sitegen.pages.diary_index import DiaryIndex
    from sitegen.pages.prepared import PreparedEntry


class EntrySection(Struct, frozen=True):
    """`make` gives what the template draws, None where the entry has nothing to say. `figure` is the name in
    `![](figure:NAME)` and the anchor in `entry.html`; None for a section without a figure."""

    name: str
    make: "Callable[[PreparedEntry, DiaryIndex], Any]"
    figure: str | None = None
