"""The markers and links of the authors' texts, followed without drawing a page."""

from collections.abc import Sequence

from sitegen.build.context import BuildContext
from sitegen.build.rule import Outcome
from sitegen.build.rules.facts import entry_file
from sitegen.build.rules.texts import TextChecked, TextJob
from sitegen.build.work.drawing_kit import kit_of
from sitegen.build.work.kept_prepared import get_prepared
from sitegen.pages.entry_summary import EntrySummary
from sitegen.pages.entry_text import text_of
from sitegen.problems import Problem


def check_texts(context: BuildContext, chunk: Sequence[TextJob]) -> list[Outcome[TextChecked]]:
    return [Outcome(TextChecked(_is_mistaken(context, job))) for job in chunk]


def _is_mistaken(context: BuildContext, job: TextJob) -> bool:
    prepared = get_prepared(context.store, job.prepared)
    return bool(text_of(prepared, kit_of(context).book(job.cards)).mistakes)


def mistakes_of(context: BuildContext, prepared: str, cards: tuple[EntrySummary, ...]) -> list[Problem]:
    """In words, with these entries known for the hint."""
    entry_with_facts = get_prepared(context.store, prepared)
    entry = entry_with_facts.view.entry
    shown = context.config.folder.shown(entry_file(entry.slug))
    return [
        Problem(shown, entry.body_line + mistake.line, 1, mistake.wrong, mistake.remedy)
        for mistake in text_of(entry_with_facts, kit_of(context).book(cards)).mistakes
    ]
