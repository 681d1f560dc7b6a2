"""Pages that gather entries: one task a kind of page."""

from collections.abc import Iterable, Mapping
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.resolve import resolve
from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entry_pages import ENTRY_PAGES, EntryPages, Pages, common_half_hours, earlier_pages
from sitegen.build.rules.facts import FACTS
from sitegen.build.store import key_of

if TYPE_CHECKING:
    from sitegen.build.graph import Build

LIST_S, LIST_S_PER_ENTRY = 0.05, 0.0001
KINDS = "sitegen.build.work.lists:kinds_of_pages"


class ListJob(Struct, frozen=True):
    """One kind of page for the whole diary; `cards` names the entries' cards, newest first."""

    kind: str
    cards: tuple[str, ...]
    half_hours: float
    earlier: Pages


def _tasks(build: "Build") -> Iterable[Task]:
    entries = tuple(build.values(ENTRY_PAGES).values())
    cards = tuple(entry.card for entry in entries)
    shown = {"cards": cards, "numbers": tuple(entry.numbers for entry in entries), "no entries": ()}
    keys = {what: key_of(build.context.look, names) for what, names in shown.items()}
    seconds = LIST_S + LIST_S_PER_ENTRY * len(cards)
    return [Task(kind, key, partial(_job, build, kind, cards), seconds) for kind, key in _kinds(build, keys).items()]


def _job(build: "Build", kind: str, cards: tuple[str, ...]) -> ListJob:
    return ListJob(kind, cards, common_half_hours(build.values(FACTS)), earlier_pages(build, LISTS, kind))


def _kinds(build: "Build", keys: Mapping[str, str]) -> dict[str, str]:
    """Each kind with its key. Of the last rebuild where all are up to date, so that what draws lists need not be loaded."""
    earlier = build.earlier.tasks.get(LISTS.name, {})
    version = build.version(LISTS)
    if earlier and all(record.code == version and record.key in keys.values() for record in earlier.values()):
        return {kind: record.key for kind, record in earlier.items()}
    return {kind: keys[shows] for kind, shows in resolve(KINDS)().items()}


LISTS: Rule[EntryPages] = Rule(
    name="lists",
    value=EntryPages,
    work="work.lists:draw_lists",
    tasks=_tasks,
    doing="drawing lists",
    stage="lists",
    counted="pages of lists",
    counts_pages=True,
    most_at_once=16,
)
