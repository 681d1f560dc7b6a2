"""What worked, what failed, what is still to do: all lessons of the diary in one place."""

from collections.abc import Iterable

from sitegen.diary import addresses
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.page import Navigation, Page, PageKind

KINDS = ("next", "worked", "failed")


def pages(book: DiaryIndex) -> Iterable[Page]:
    found = {
        kind: [
            (card.slug, card.title, card.published, to_inline_html(sentence))
            for card in book.cards
            for sentence in getattr(card.lessons, kind)
        ]
        for kind in KINDS
    }
    yield Page(addresses.LESSONS, "lessons.html", book.formatter.words["page.lessons"], {"lessons": found}, chapter="lessons")


KIND = PageKind(
    name="lessons",
    pages=pages,
    addresses=lambda _: (addresses.LESSONS,),
    navigation=Navigation("lessons", addresses.LESSONS),
)
