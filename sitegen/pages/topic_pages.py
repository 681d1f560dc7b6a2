"""One page a topic, and the list of all of them."""

from collections.abc import Iterable, Sequence

from sitegen.diary import addresses
from sitegen.pages.by_year import addresses_by_year, pages_by_year
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals, light_totals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.groups import group_context
from sitegen.pages.page import Page, PageKind
from sitegen.pages.recalled_light import add_recalled


def pages(book: DiaryIndex) -> Iterable[Page]:
    totals = {slug: _totals(cards) for slug, cards in sorted(book.by_topic.items())}
    for slug, cards in sorted(book.by_topic.items()):
        address = addresses.topic(slug)
        page = Page(address, "topic.html", book.topic_words[slug], group_context(address, cards, totals[slug], book))
        yield from pages_by_year(page, cards, book)
    groups = [
        (addresses.topic(slug), book.topic_words[slug], len(cards), totals[slug].total_s)
        for slug, cards in sorted(book.by_topic.items())
    ]
    yield Page(addresses.TOPICS, "groups.html", book.formatter.words["page.topics"], {"groups": groups, "kind": "topics"})


def _totals(cards: Sequence[EntryCard]) -> LightTotals:
    """Of what the topic's own entries tell: a frame that an entry outside of it tells too belongs to it all the same."""
    among = frozenset(card.slug for card in cards)
    logged = light_totals(((night.evening, night.light) for card in cards for night in card.nights), among)
    return add_recalled({"": logged}, cards, lambda *_: ("",))[""]


def _addresses(book: DiaryIndex) -> list[str]:
    groups = ((addresses.topic(slug), cards) for slug, cards in sorted(book.by_topic.items()))
    return [addresses.TOPICS, *addresses_by_year(groups)]


KIND = PageKind(name="topics", pages=pages, addresses=_addresses)
