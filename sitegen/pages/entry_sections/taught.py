"""What it taught: the author's lessons."""

from msgspec import Struct

from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.prepared import PreparedEntry


class Taught(Struct, frozen=True):
    """Lessons as written and as HTML, by what became of them."""

    worked: tuple[tuple[str, str], ...]
    failed: tuple[tuple[str, str], ...]
    next: tuple[tuple[str, str], ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Taught | None:
    lessons = prepared.view.entry.lessons
    kinds = (lessons.worked, lessons.failed, lessons.next)
    return Taught(*(tuple((lesson, to_inline_html(lesson)) for lesson in kind) for kind in kinds)) if any(kinds) else None


SECTION = EntrySection("taught", section)
