"""One page a target, and the list of all of them."""

from collections.abc import Iterable, Sequence

from sitegen.diary import addresses
from sitegen.diary.target import Target
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
        yield _page(targets[slug], cards, book)
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
    return Page(
        addresses.target(target.slug),
        "target.html",
        target.name,
        {"place": place_of(target, book), **group_context(cards, totals, book)},
        chapter="sky",
        facts=list_facts("targets", target.slug, cards, totals, wanted_s=wishes_of(cards)),
    )


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.TARGETS, *map(addresses.target, sorted(book.by_target))]


KIND = PageKind(name="targets", pages=pages, addresses=_addresses, has_facts=True)
