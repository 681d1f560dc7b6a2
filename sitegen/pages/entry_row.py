"""An entry as a row of a list: title, when, how much, and its nights as a cloth of ribbons."""

from dataclasses import dataclass
from datetime import date

from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.picture_view import PictureView
from sitegen.pages.site_book import SiteBook


@dataclass(frozen=True, slots=True)
class EntryRow:
    """`nights` are at most `CLOTH_NIGHTS` of them, the fullest ones in time order; `more_nights` is how many are left."""

    slug: str
    title: str
    published: date
    stage: str
    summary: str | None
    targets: tuple[tuple[str, str], ...]
    rigs: tuple[tuple[str, str], ...]
    total_s: float
    kept: int
    night_count: int
    nights: tuple[NightCard, ...]
    more_nights: int
    picture: PictureView | None


CLOTH_NIGHTS = 6


def entry_row(card: EntryCard, book: SiteBook) -> EntryRow:
    fullest = sorted(card.nights, key=lambda night: (-night.integration_s, night.evening))[:CLOTH_NIGHTS]
    return EntryRow(
        slug=card.slug,
        title=card.title,
        published=card.published,
        stage=card.stage,
        summary=card.summary,
        targets=tuple((target.slug, target.name) for target in card.targets),
        rigs=tuple((slug, book.rigs[slug].name) for slug in card.rigs),
        total_s=card.integration["total_s"],
        kept=card.integration["kept"],
        night_count=len({night.evening for night in card.nights}),
        nights=tuple(sorted(fullest, key=lambda night: (night.evening, night.site))),
        more_nights=len(card.nights) - len(fullest),
        picture=card.picture,
    )


def entry_rows(cards: list[EntryCard] | tuple[EntryCard, ...], book: SiteBook) -> tuple[EntryRow, ...]:
    return tuple(entry_row(card, book) for card in cards)
