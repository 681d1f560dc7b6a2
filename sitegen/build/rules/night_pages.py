"""Pages of the nights that several entries share."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.neighbours import EveningBetween
from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entry_pages import EntryPages, Pages, common_half_hours, earlier_pages, neighbours_of, shared_evenings
from sitegen.build.rules.facts import FACTS
from sitegen.build.store import key_of

if TYPE_CHECKING:
    from sitegen.build.graph import Build

NIGHT_S = 0.02


class NightJob(Struct, frozen=True):
    """An evening with the prepared entries of all who share it."""

    prepared: tuple[str, ...]
    half_hours: float
    evening: EveningBetween
    earlier: Pages


def _tasks(build: "Build") -> Iterable[Task]:
    neighbours = build.once(neighbours_of)
    half_hours = common_half_hours(build.values(FACTS))
    for evening, slugs in sorted(shared_evenings(neighbours.book).items()):
        yield _task(build, evening, slugs, half_hours, neighbours.evenings[evening])


def _task(build: "Build", evening: date, slugs: Sequence[str], half_hours: float, between: EveningBetween) -> Task:
    entries = [build.values(FACTS)[slug] for slug in slugs]
    key = key_of(build.context.look, [entry.at_night for entry in entries], half_hours, between)
    prepared = tuple(entry.prepared for entry in entries)
    name = str(evening)
    return Task(name, key, lambda: NightJob(prepared, half_hours, between, earlier_pages(build, NIGHT_PAGES, name)), NIGHT_S)


NIGHT_PAGES: Rule[EntryPages] = Rule(
    name="night pages",
    value=EntryPages,
    work="work.drawing:draw_nights",
    tasks=_tasks,
    doing="drawing shared nights",
    stage="pages of entries and nights",
    counted="pages of shared nights",
    counts_pages=True,
    most_at_once=16,
)
