"""Pages that gather entries: one task a kind of page."""

from collections.abc import Iterable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.resolve import resolve
from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entry_pages import ENTRY_PAGES, EntryPages, Pages, earlier_pages
from sitegen.build.store import key_of

if TYPE_CHECKING:
    from sitegen.build.graph import Build

LIST_S, LIST_S_PER_ENTRY = 0.3, 0.002
KINDS = "sitegen.build.work.lists:kinds_of_pages"


class ListJob(Struct, frozen=True):
    """One kind of page for the whole diary; `cards` names the entries' cards, newest first."""

    kind: str
    cards: tuple[str, ...]
    earlier: Pages


def _tasks(build: "Build") -> Iterable[Task]:
    cards = tuple(pages.card for pages in build.values(ENTRY_PAGES).values())
    key = key_of(build.context.look, cards)
    seconds = LIST_S + LIST_S_PER_ENTRY * len(cards)
    return [Task(kind, key, partial(_job, build, kind, cards), seconds) for kind in _kinds(build, key)]


def _job(build: "Build", kind: str, cards: tuple[str, ...]) -> ListJob:
    return ListJob(kind, cards, earlier_pages(build, LISTS, kind))


def _kinds(build: "Build", key: str) -> Sequence[str]:
    """Of the last rebuild where it was one of the same code, so that what draws lists need not be loaded."""
    earlier = build.earlier.tasks.get(LISTS.name, {})
    version = build.version(LISTS)
    same = earlier and all((record.code, record.key) == (version, key) for record in earlier.values())
    kinds: Sequence[str] = tuple(earlier) if same else resolve(KINDS)()
    return kinds


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
