"""All cards to the pages that gather them."""

from collections.abc import Sequence

from sitegen.build.context import BuildContext
from sitegen.build.rule import Outcome
from sitegen.build.rules.entry_pages import EntryPages
from sitegen.build.rules.lists import ListJob
from sitegen.build.work.drawing import digests_of, drawn, outputs_of
from sitegen.build.work.drawing_kit import DrawingKit, kit_of
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.registry import PAGE_KINDS


def kinds_of_pages() -> dict[str, str]:
    """Each by its name, with what it shows of entries."""
    return {kind.name: kind.shows for kind in PAGE_KINDS}


def draw_lists(context: BuildContext, chunk: Sequence[ListJob]) -> list[Outcome[EntryPages]]:
    return [_draw_list(kit_of(context), job) for job in chunk]


def _draw_list(kit: DrawingKit, job: ListJob) -> Outcome[EntryPages]:
    kind = next(kind for kind in PAGE_KINDS if kind.name == job.kind)
    pages = drawn(kit, kind.pages(_whole_book(kit, job)), job.earlier)
    return Outcome(EntryPages(digests_of(pages)), outputs=outputs_of(pages), uses=kit.charts.taken_used())


_books: dict[tuple[str, float, tuple[str, ...]], DiaryIndex] = {}


def _whole_book(kit: DrawingKit, job: ListJob) -> DiaryIndex:
    """Read once a process. A preview stays one while settings, rigs and words change: the same cards are then another book."""
    key = kit.context.look, job.half_hours, job.cards
    if key not in _books:
        _books.clear()
        _books[key] = kit.book(tuple(kit.context.store.get(name, EntryCard) for name in job.cards), job.half_hours)
    return _books[key]
