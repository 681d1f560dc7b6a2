"""Prose with its places: one paragraph, caption or note, as a reader sees it."""

from bisect import bisect_right
from datetime import date
from typing import Literal

from msgspec import Struct

HIDDEN = "\ufffc"
"""Stands in a passage's text for a computed number, a picture and code: nothing of it is the author's claim."""

Role = Literal["title", "summary", "caption", "lesson", "note", "wind", "clouds", "ended_by", "paragraph", "quotation", "table"]


class Spot(Struct, frozen=True):
    """From `offset` of a passage's text on, letters stand in the file from this line and column on, both counted from 1."""

    offset: int
    line: int
    column: int


class EntryLink(Struct, frozen=True):
    """A link to another entry: its name, and where its words stand in the text."""

    slug: str
    start: int
    end: int


class NightMark(Struct, frozen=True):
    """A computed number of one night, as `[](fact:nights.dark_s@2025-08-08)`."""

    evening: date
    start: int


class Passage(Struct, frozen=True):
    """`key` leads to a text of the front matter ('nights', '2025-08-02', 'note'), and is empty for the body, whose places are its
    `spots`. `evening` is that of a night's note."""

    text: str
    role: Role
    spots: tuple[Spot, ...] = ()
    key: tuple[str | int, ...] = ()
    links: tuple[EntryLink, ...] = ()
    nights: tuple[NightMark, ...] = ()
    evening: date | None = None
    undoubted: bool = False

    def place(self, offset: int) -> tuple[int, int]:
        """Line and column in the file, of a passage of the body."""
        spot = self.spots[max(0, bisect_right(self.spots, offset, key=lambda spot: spot.offset) - 1)]
        return spot.line, spot.column + offset - spot.offset
