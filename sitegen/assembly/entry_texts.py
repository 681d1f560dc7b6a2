"""The markers and links of the authors' texts, followed without drawing a page."""

from collections.abc import Sequence

from sitegen.assembly.bench import Bench
from sitegen.assembly.jobs import CORES
from sitegen.pages.entry_text import text_of
from sitegen.pages.outer_card import OuterCard
from sitegen.problems import Problem


def texts_that_err(bench: Bench, chunk: Sequence[tuple[str, tuple[OuterCard, ...]]]) -> list[bool]:
    """Jobs are (core, the cards its text may know)."""
    return [bool(text_of(bench.get(CORES, core), bench.book(around)).mistakes) for core, around in chunk]


def mistakes_of(bench: Bench, core: str, cards: tuple[OuterCard, ...]) -> list[Problem]:
    """In words, with every entry of the diary known for the hint."""
    prepared = bench.get(CORES, core)
    entry = prepared.view.entry
    shown = bench.frame.folder.shown(f"entries/{entry.slug}.md")
    return [
        Problem(shown, entry.body_line + mistake.line, 1, mistake.wrong, mistake.remedy)
        for mistake in text_of(prepared, bench.book(cards)).mistakes
    ]
