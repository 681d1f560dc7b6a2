"""What it taught: the author's lessons, and what became of the plans."""

from datetime import date

from msgspec import Struct

from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.entry_summary import EntrySummary
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.plans import doer_of, doers_of
from sitegen.pages.prepared import PreparedEntry

Elsewhere = tuple[str, str, date] | None
"""Name, title and day of another entry: the one in which a plan was done, or the one that had planned what is done here."""


class Taught(Struct, frozen=True):
    """Lessons as written and as HTML, by what became of them, each with the other entry that it leads to."""

    worked: tuple[tuple[str, str, Elsewhere], ...]
    failed: tuple[tuple[str, str, Elsewhere], ...]
    next: tuple[tuple[str, str, Elsewhere], ...]
    done: tuple[tuple[str, str, Elsewhere], ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Taught | None:
    lessons, slug = prepared.view.entry.lessons, prepared.view.entry.slug
    if not lessons.all:
        return None
    doers = doers_of(book) if lessons.next else {}
    return Taught(
        worked=tuple((lesson, to_inline_html(lesson), None) for lesson in lessons.worked),
        failed=tuple((lesson, to_inline_html(lesson), None) for lesson in lessons.failed),
        next=tuple((plan, to_inline_html(plan), _named(doer_of(slug, plan, doers))) for plan in lessons.next),
        done=tuple((done.what, to_inline_html(done.what), _named(book.by_slug.get(done.of))) for done in lessons.done),
    )


def _named(card: EntrySummary | None) -> Elsewhere:
    return (card.slug, card.title, card.published) if card else None


SECTION = EntrySection("taught", section)
