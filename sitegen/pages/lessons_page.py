"""What worked, what failed, what is still to do: all lessons of the diary in one place."""

from collections.abc import Iterable
from datetime import date

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.text_parts import CautionInText

KINDS = ("next", "worked", "failed")


def pages(book: DiaryIndex) -> Iterable[Page]:
    page = CautionsSaid()
    lessons = {
        kind: [_lesson(card, lesson, page) for card in book.cards for lesson in getattr(card.lessons, kind)] for kind in KINDS
    }
    yield Page(addresses.LESSONS, "lessons.html", book.formatter.words["page.lessons"], {"lessons": lessons}, chapter="lessons")


def _lesson(card: EntryCard, lesson: str, page: CautionsSaid) -> tuple[str, str, date, str, tuple[CautionInText, ...]]:
    """`page` hears them in the order in which they are shown."""
    cautions = page.shown(card.lesson_cautions.get(lesson, ()))
    return card.slug, card.title, card.published, to_inline_html(lesson), cautions


KIND = PageKind(
    name="lessons",
    pages=pages,
    addresses=lambda _: (addresses.LESSONS,),
    navigation=Navigation("lessons", addresses.LESSONS),
)
