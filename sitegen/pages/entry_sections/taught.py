"""What it taught: the author's lessons."""

from msgspec import Struct

from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.prepared import PreparedEntry


class Taught(Struct, frozen=True):
    """Sentences as HTML, by what became of them."""

    worked: tuple[str, ...]
    failed: tuple[str, ...]
    next: tuple[str, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> Taught | None:
    lessons = prepared.view.entry.lessons
    kinds = (lessons.worked, lessons.failed, lessons.next)
    return Taught(*(tuple(map(to_inline_html, kind)) for kind in kinds)) if any(kinds) else None
