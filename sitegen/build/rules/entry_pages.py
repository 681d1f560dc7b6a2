"""Pages of entries, and of the nights that no other entry shares."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.neighbours import EveningBetween, Neighbours, with_evenings
from sitegen.build.resolve import resolve
from sitegen.build.rule import Rule, Task
from sitegen.build.rules.facts import FACTS, FactsSummary, entry_file
from sitegen.build.store import Output, key_of
from sitegen.pages.card_groups import SummaryIndex
from sitegen.pages.common_clock import half_clock
from sitegen.pages.entry_summary import EntrySummary
from sitegen.problems import Problem

if TYPE_CHECKING:
    from sitegen.build.graph import Build

IN_FEEDS = 20
DRAW_S = 0.15
Pages = Mapping[str, tuple[str, Output]]
"""The digest of what each page shows, and its file, by its path in the site."""


class EntryPages(Struct, frozen=True, gc=False):
    """`digests` of what each page shows, by its path in the site. `card` names the record of the card with its ribbons, `numbers`
    is the digest of its nights and numbers;
    `feed_html` is the text as feeds show it, None for all but the newest; `mistaken`: the text has a marker that leads
    nowhere."""

    digests: Mapping[str, str]
    card: str = ""
    numbers: str = ""
    feed_html: str | None = None
    mistaken: bool = False


class DrawJob(Struct, frozen=True):
    """`cards`: those that its page may know, its own among them; `evenings`: its nights that no other entry shares; `in_feed`:
    its text stands in the feeds; `earlier`: pages drawn before."""

    prepared: str
    half_hours: float
    cards: tuple[EntrySummary, ...]
    evenings: tuple[EveningBetween, ...]
    in_feed: bool
    earlier: Pages


def neighbours_of(build: "Build") -> Neighbours:
    """Of slender cards with nights that are only days."""
    facts = build.values(FACTS)
    cards = tuple(with_evenings(entry.card, entry.evenings) for entry in facts.values())
    links = {slug: entry.links for slug, entry in facts.items()}
    return Neighbours(SummaryIndex(cards), links, {slug: entry.labelled_objects for slug, entry in facts.items()})


def common_half_hours(facts: Mapping[str, FactsSummary]) -> float:
    """Of the clock on which every night of the diary is drawn."""
    return half_clock(max((entry.half_night_s for entry in facts.values()), default=0.0))


def shared_evenings(book: SummaryIndex) -> dict[date, list[str]]:
    """Evenings on which several entries have nights: their slugs, newest entry first."""
    evenings = {evening: list(dict.fromkeys(night.entry for night in nights)) for evening, nights in book.by_evening.items()}
    return {evening: slugs for evening, slugs in evenings.items() if len(slugs) > 1}


def earlier_pages(build: "Build", rule: "Rule[EntryPages]", name: str) -> Pages:
    record, earlier = build.earlier_record(rule, name), build.earlier_value(rule, name)
    if record is None or earlier is None:
        return {}
    return {output.path: (earlier.digests[output.path], output) for output in record.outputs}


def _tasks(build: "Build") -> Iterable[Task]:
    neighbours, facts = build.once(neighbours_of), build.values(FACTS)
    half_hours, shared = common_half_hours(facts), shared_evenings(neighbours.book)
    for place, card in enumerate(neighbours.book.cards):
        own = tuple(neighbours.evenings[day] for day in sorted(facts[card.slug].evenings) if day not in shared)
        yield _task(build, card.slug, facts[card.slug].prepared, half_hours, neighbours, own, place < IN_FEEDS)


def _task(build: "Build", slug: str, prepared: str, half_hours: float, neighbours: Neighbours,
          evenings: tuple[EveningBetween, ...], in_feed: bool) -> Task:  # fmt: skip
    words = [neighbours.words[between[1]] for between in evenings]
    key = key_of(build.context.look, prepared, half_hours, neighbours.key(slug), words, in_feed)

    def job() -> DrawJob:
        cards, earlier = neighbours.cards(slug), earlier_pages(build, ENTRY_PAGES, slug)
        return DrawJob(prepared, half_hours, cards, evenings, in_feed, earlier)

    return Task(slug, key, job, DRAW_S, entry_file(slug))


def mistakes_of(build: "Build", slugs: Iterable[str]) -> Iterable[Problem]:
    """In words, with every entry of the diary known for the hint."""
    for slug in slugs:
        cards = build.once(neighbours_of).book.cards
        yield from resolve(MISTAKES)(build.context, build.values(FACTS)[slug].prepared, cards)


def _mistakes(build: "Build") -> Iterable[Problem]:
    return mistakes_of(build, [slug for slug, pages in build.values(ENTRY_PAGES).items() if pages.mistaken])


MISTAKES = "sitegen.build.work.texts:mistakes_of"
ENTRY_PAGES: Rule[EntryPages] = Rule(
    name="entry pages",
    value=EntryPages,
    work="work.drawing:draw_entries",
    tasks=_tasks,
    doing="drawing entries",
    stage="pages of entries and nights",
    counted="pages of entries",
    counts_pages=True,
    together=_mistakes,
    most_at_once=16,
    prewarmed=True,
)
