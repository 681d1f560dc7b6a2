"""One page a target, and the list of all of them."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.diary.target import Target
from sitegen.pages.card import EntryCard
from sitegen.pages.entry_sections.where import place_of
from sitegen.pages.groups import group_context
from sitegen.pages.page import Page, PageKind
from sitegen.pages.site_book import SiteBook


def pages(book: SiteBook) -> Iterable[Page]:
    targets = {target.slug: target for card in reversed(book.cards) for target in card.targets}
    for slug, cards in sorted(book.by_target.items()):
        yield _page(targets[slug], book, group_context(cards, book))
    yield Page(
        addresses.TARGETS,
        "groups.html",
        book.shower.words["page.targets"],
        {"groups": [(addresses.target(slug), targets[slug].name, len(cards), _hours(cards))
                    for slug, cards in sorted(book.by_target.items(), key=lambda item: targets[item[0]].name)],
         "kind": "targets"},
        section="sky",
    )  # fmt: skip


def _hours(cards: Iterable[EntryCard]) -> float:
    return sum(float(card.integration.total_s) for card in cards)


def _page(target: Target, book: SiteBook, group: dict[str, object]) -> Page:
    return Page(
        addresses.target(target.slug),
        "target.html",
        target.name,
        {"place": place_of(target, book), **group},
        section="sky",
    )


KIND = PageKind("targets", pages)
