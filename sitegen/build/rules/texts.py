"""The markers and links of the authors' texts, followed without drawing a page: for `check` alone."""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entry_pages import mistakes_of, neighbours_of
from sitegen.build.rules.facts import FACTS, entry_file
from sitegen.build.store import key_of
from sitegen.pages.entry_summary import EntrySummary
from sitegen.problems import Problem

if TYPE_CHECKING:
    from sitegen.build.graph import Build

TEXT_S = 0.003


class TextChecked(Struct, frozen=True, gc=False):
    """`mistaken`: it has a marker that leads nowhere."""

    mistaken: bool


class TextJob(Struct, frozen=True):
    """A prepared entry, and the cards that its text may know."""

    prepared: str
    cards: tuple[EntrySummary, ...]


def _tasks(build: "Build") -> Iterable[Task]:
    neighbours, facts = build.once(neighbours_of), build.values(FACTS)
    for card in neighbours.book.cards:
        yield _task(facts[card.slug].prepared, card.slug, neighbours.key(card.slug), neighbours.cards(card.slug))


def _task(prepared: str, slug: str, around: Sequence[str], cards: tuple[EntrySummary, ...]) -> Task:
    return Task(slug, key_of(prepared, around), lambda: TextJob(prepared, cards), TEXT_S, entry_file(slug))


def _mistakes(build: "Build") -> Iterable[Problem]:
    return mistakes_of(build, [slug for slug, text in build.values(TEXTS).items() if text.mistaken])


TEXTS: Rule[TextChecked] = Rule(
    name="texts",
    value=TextChecked,
    work="work.texts:check_texts",
    tasks=_tasks,
    doing="checking texts",
    stage="texts",
    counted="texts checked",
    together=_mistakes,
)
