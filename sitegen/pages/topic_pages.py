"""One page a topic, and the list of all of them."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.groups import group_context
from sitegen.pages.page import Page, PageKind
from sitegen.pages.site_book import SiteBook


def pages(book: SiteBook) -> Iterable[Page]:
    for slug, cards in sorted(book.by_topic.items()):
        yield Page(addresses.topic(slug), "topic.html", book.topic_words[slug], group_context(cards, book))
    groups = [
        (addresses.topic(slug), book.topic_words[slug], len(cards), sum(card.integration.total_s for card in cards))
        for slug, cards in sorted(book.by_topic.items())
    ]
    yield Page(addresses.TOPICS, "groups.html", book.shower.words["page.topics"], {"groups": groups, "kind": "topics"})


KIND = PageKind("topics", pages)
