"""All cards to the pages that gather them."""

from collections.abc import Sequence

from sitegen.assembly.bench import Bench
from sitegen.assembly.entry_drawing import drawn
from sitegen.assembly.jobs import CARDS, ListJob
from sitegen.assembly.records import DrawnPages
from sitegen.pages.registry import PAGE_KINDS
from sitegen.pages.site_book import SiteBook


def list_names() -> tuple[str, ...]:
    return tuple(kind.name for kind in PAGE_KINDS)


def draw_lists(bench: Bench, chunk: Sequence[ListJob]) -> list[DrawnPages]:
    return [_draw_list(bench, job) for job in chunk]


def _draw_list(bench: Bench, job: ListJob) -> DrawnPages:
    kind = next(kind for kind in PAGE_KINDS if kind.name == job.kind)
    pages = drawn(bench, kind.pages(_whole_book(bench, job.cards)), job.earlier)
    return DrawnPages(job.key, pages, charts=bench.charts_used())


_books: dict[tuple[str, tuple[str, ...]], SiteBook] = {}


def _whole_book(bench: Bench, cards: tuple[str, ...]) -> SiteBook:
    """Read once a process. A preview stays one while settings, rigs and words change: the same cards are then another book."""
    key = bench.look, cards
    if key not in _books:
        _books.clear()
        _books[key] = bench.book(tuple(bench.get(CARDS, digest) for digest in cards))
    return _books[key]
