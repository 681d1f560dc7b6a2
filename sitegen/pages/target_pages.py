"""One page a target, and the list of all of them."""

from collections.abc import Iterable, Sequence

from sitegen.diary import addresses
from sitegen.diary.target import Target
from sitegen.pages.by_year import addresses_by_year, pages_by_year
from sitegen.pages.card import EntryCard
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.where import place_of
from sitegen.pages.groups import group_context
from sitegen.pages.list_facts import list_facts, wishes_of
from sitegen.pages.page import Page, PageKind


def pages(book: DiaryIndex) -> Iterable[Page]:
    targets = {target.slug: target for card in reversed(book.cards) for target in card.targets}
    for slug, cards in sorted(book.by_target.items()):
        yield from pages_by_year(_page(targets[slug], cards, book), cards, book)
    yield Page(
        addresses.TARGETS,
        "groups.html",
        book.formatter.words["page.targets"],
        {"groups": [(addresses.target(slug), targets[slug].name, len(cards), _hours(slug, book))
                    for slug, cards in sorted(book.by_target.items(), key=lambda item: targets[item[0]].name)],
         "kind": "targets"},
        chapter="sky",
    )  # fmt: skip


def _hours(slug: str, book: DiaryIndex) -> float:
    totals = book.totals_by_target.get(slug)
    return totals.total_s if totals else 0.0


def _page(target: Target, cards: Sequence[EntryCard], book: DiaryIndex) -> Page:
    totals = book.totals_by_target.get(target.slug, LightTotals())
    address = addresses.target(target.slug)
    return Page(
        address,
        "target.html",
        target.name,
        {"place": place_of(target, book), **group_context(address, cards, totals, book)},
        chapter="sky",
        facts=list_facts("targets", target.slug, cards, totals, wanted_s=wishes_of(cards)),
    )


def _addresses(book: DiaryIndex) -> list[str]:
    groups = ((addresses.target(slug), cards) for slug, cards in sorted(book.by_target.items()))
    return [addresses.TARGETS, *addresses_by_year(groups)]


KIND = PageKind(name="targets", pages=pages, addresses=_addresses, has_facts=True)
