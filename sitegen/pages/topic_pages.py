"""One page a topic, and the list of all of them."""

from collections.abc import Iterable, Sequence

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals, light_totals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.groups import group_context
from sitegen.pages.page import Page, PageKind


def pages(book: DiaryIndex) -> Iterable[Page]:
    totals = {slug: _totals(cards) for slug, cards in sorted(book.by_topic.items())}
    for slug, cards in sorted(book.by_topic.items()):
        yield Page(addresses.topic(slug), "topic.html", book.topic_words[slug], group_context(cards, totals[slug], book))
    groups = [
        (addresses.topic(slug), book.topic_words[slug], len(cards), totals[slug].total_s)
        for slug, cards in sorted(book.by_topic.items())
    ]
    yield Page(addresses.TOPICS, "groups.html", book.formatter.words["page.topics"], {"groups": groups, "kind": "topics"})


def _totals(cards: Sequence[EntryCard]) -> LightTotals:
    """Of what the topic's own entries tell: a frame that an entry outside of it tells too belongs to it all the same."""
    among = frozenset(card.slug for card in cards)
    return light_totals(((night.evening, night.light) for card in cards for night in card.nights), among)


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.TOPICS, *map(addresses.topic, sorted(book.by_topic))]


KIND = PageKind(name="topics", pages=pages, addresses=_addresses)
