"""What the sentences of every listed entry claim, held against its logs, the sky, the calendar and the entries it leads to."""

from collections.abc import Iterable
from datetime import date
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.rule import Rule, Task
from sitegen.build.rules.facts import FACTS, FactsSummary, entry_file
from sitegen.build.store import key_of

if TYPE_CHECKING:
    from sitegen.build.graph import Build

CLAIMS_S = 0.01


class ClaimsHeld(Struct, frozen=True, gc=False):
    """`doubts`: how many there are; the doubts themselves are the task's problems."""

    doubts: int


class ClaimsJob(Struct, frozen=True):
    """`prepared` names the prepared entry; `published` are the dates of the entries that its text leads to."""

    prepared: str
    published: tuple[tuple[str, date], ...]


def _tasks(build: "Build") -> Iterable[Task]:
    facts = build.values(FACTS)
    for slug, entry in facts.items():
        published = tuple((other, facts[other].card.published) for other in entry.links if other in facts)
        yield _task(slug, entry, published, build.context.settings.language)


def _task(slug: str, entry: FactsSummary, published: tuple[tuple[str, date], ...], language: str) -> Task:
    key = key_of(entry.prepared, language, [f"{other} {day}" for other, day in published])
    return Task(slug, key, partial(ClaimsJob, entry.prepared, published), CLAIMS_S, entry_file(slug))


CLAIMS: Rule[ClaimsHeld] = Rule(
    name="claims",
    value=ClaimsHeld,
    work="work.claims:claims_of_entries",
    tasks=_tasks,
    doing="checking claims",
    stage="claims",
    counted="claims of entries",
    prewarmed=True,
)
