"""An entry as a row of a list: title, when, how much, and its nights as a cloth of ribbons."""

from collections.abc import Sequence
from datetime import date

from msgspec import Struct

from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.picture_element import PictureView


class EntryRow(Struct, frozen=True):
    """`nights` are at most `CLOTH_NIGHTS` of them, the fullest ones in time order; `more_nights` is how many are left.
    `is_line`: shown as a line, title and day."""

    slug: str
    title: str
    published: date
    stage: str
    summary: str | None
    targets: tuple[tuple[str, str], ...]
    rigs: tuple[tuple[str, str], ...]
    total_s: float
    kept: int
    recalled_s: float
    night_count: int
    nights: tuple[NightCard, ...]
    more_nights: int
    picture: PictureView | None
    is_line: bool = False


CLOTH_NIGHTS = 6
MOST_WHOLE_ROWS = 100
"""Of a year or a month with more entries each is a line: five hundred whole rows are more than a phone can show at once."""
WOVEN_ROWS = 12
"""So many rows of a list show their nights, 70 of them at most: a page of a thousand ribbons would be read by nobody, and hardly
load."""


def entry_row(card: EntryCard, book: DiaryIndex, woven: bool = True, is_line: bool = False) -> EntryRow:
    """`woven`: with its nights."""
    fullest = sorted(card.nights, key=lambda night: (-night.integration_s, night.evening))[:CLOTH_NIGHTS]
    return EntryRow(
        slug=card.slug,
        title=card.title,
        published=card.published,
        stage=card.stage,
        summary=card.summary,
        targets=tuple((target.slug, target.name) for target in card.targets),
        rigs=tuple((slug, book.rigs[slug].name) for slug in card.rigs),
        total_s=card.integration.total_s,
        kept=card.integration.kept,
        recalled_s=card.integration.recalled_s,
        night_count=len({night.evening for night in card.nights}),
        nights=tuple(sorted(fullest, key=lambda night: (night.evening, night.site))) if woven else (),
        more_nights=len(card.nights) - len(fullest) if woven else 0,
        picture=card.picture,
        is_line=is_line,
    )


def entry_rows(cards: list[EntryCard] | tuple[EntryCard, ...], book: DiaryIndex) -> tuple[EntryRow, ...]:
    """The first of them woven."""
    return tuple(entry_row(card, book, index < WOVEN_ROWS) for index, card in enumerate(cards))


def rows_of_time(cards: Sequence[EntryCard], book: DiaryIndex) -> tuple[EntryRow, ...]:
    """Of all entries of a year or a month, without their nights."""
    return tuple(entry_row(card, book, woven=False, is_line=len(cards) > MOST_WHOLE_ROWS) for card in cards)
