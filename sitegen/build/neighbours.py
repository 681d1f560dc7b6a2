"""What the page of one entry may know of the others: no more than it shows, so that no more than that draws it again."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from itertools import pairwise

from msgspec.structs import replace

from sitegen.build.store import key_of
from sitegen.pages.card_groups import Card, SummaryIndex
from sitegen.pages.entry_summary import EntrySummary, Evening

EveningBetween = tuple[date | None, date, date | None]
"""An evening between the ones before and after it."""


def neighbour_summary(card: EntrySummary) -> EntrySummary:
    """A card as a neighbour shows it: its name, day, and what it is about."""
    return replace(card, summary=None, updated=None, nights=(), picture=None, recalled_years=())


class Neighbours:
    """Of every entry, the cards around it; of every evening, the evenings around it."""

    def __init__(self, book: SummaryIndex, links: Mapping[str, Sequence[str]], sights: Mapping[str, Sequence[str]]) -> None:
        self.book = book
        self.links = links
        self.sights = sights
        self.summaries = {card.slug: neighbour_summary(card) for card in book.cards}
        self.keys = {slug: key_of(card) for slug, card in self.summaries.items()}
        self.evenings = _between(list(book.by_evening))
        self.words = {evening: f"{before} {evening} {after}" for evening, (before, _, after) in self.evenings.items()}
        self.near = _near(book)
        self.ticked = _ticked(book)

    def slugs(self, slug: str) -> list[str]:
        """The entry itself, its neighbours in every thread, what its text leads to, and of what its pictures show the newest
        entry with that target, what it ticks off and what ticks it off; sorted."""
        linked = {other for other in self.links.get(slug, ()) if other in self.summaries}
        seen = {newest.slug for sight in self.sights.get(slug, ()) for newest in self.book.by_target.get(sight, ())[:1]}
        return sorted({slug} | self.near[slug] | linked | seen | self.ticked.get(slug, set()))

    def cards(self, slug: str) -> tuple[EntrySummary, ...]:
        """Of these, newest first."""
        return newest_first(self.summaries[other] for other in self.slugs(slug))

    def key(self, slug: str) -> list[str]:
        return [self.keys[other] for other in self.slugs(slug)]


def _between(evenings: Sequence[date]) -> dict[date, EveningBetween]:
    """Each evening with the one before and the one after it."""
    around = zip((None, *evenings), evenings, (*evenings[1:], None), strict=False)
    return {three[1]: three for three in around}


def _near(book: SummaryIndex) -> dict[str, set[str]]:
    """Of every entry, those before and after it in time and with the same target, rig or topic."""
    near: dict[str, set[str]] = {card.slug: set() for card in book.cards}
    for thread in (book.cards, *book.by_target.values(), *book.by_rig.values(), *book.by_topic.values()):
        for later, earlier in pairwise(thread):
            near[later.slug].add(earlier.slug)
            near[earlier.slug].add(later.slug)
    return near


def _ticked(book: SummaryIndex) -> dict[str, set[str]]:
    """Of entries with plans that others ticked off, those others, and the other way round."""
    pairs = [(card.slug, done.of) for card in book.cards for done in card.done if done.of in book.by_slug]
    ticked: dict[str, set[str]] = {}
    for later, earlier in pairs:
        ticked.setdefault(later, set()).add(earlier)
        ticked.setdefault(earlier, set()).add(later)
    return ticked


def newest_first(cards: Iterable[EntrySummary]) -> tuple[EntrySummary, ...]:
    return tuple(sorted(cards, key=lambda card: (-card.published.toordinal(), card.slug)))


def with_evenings(card: Card, evenings: Iterable[date]) -> Card:
    """The card with nights that are only days."""
    return replace(card, nights=tuple(Evening(evening, card.slug) for evening in sorted(evenings)))
