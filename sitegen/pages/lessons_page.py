"""What worked, what failed, what is still to do: the newest lessons of the diary in one place, and those of each year."""

from collections.abc import Iterable, Sequence
from datetime import date

from sitegen.diary import addresses
from sitegen.pages.by_year import NEWEST, ListYear, addresses_by_year, list_years
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.text_parts import CautionInText

KINDS = ("next", "worked", "failed")


def pages(book: DiaryIndex) -> Iterable[Page]:
    title, years = book.formatter.words["page.lessons"], list_years(addresses.LESSONS, book.cards)
    yield _page(addresses.LESSONS, title, book.cards[:NEWEST], years, None)
    for place in years:
        title_of_year = book.formatter.words.say("group.of_year", name=title, year=place.year)
        yield _page(place.address, title_of_year, book.published_years[place.year], years, place.year)


def _page(address: str, title: str, cards: Sequence[EntryCard], years: Sequence[ListYear], year: int | None) -> Page:
    """What these entries teach; `year` is None on the first page, which has the newest ones."""
    cautions_above = CautionsSaid()
    lessons = {
        kind: [_lesson(card, lesson, cautions_above) for card in cards for lesson in getattr(card.lessons, kind)]
        for kind in KINDS
    }
    return Page(address, "lessons.html", title, {"lessons": lessons, "years": years, "year": year}, chapter="lessons")


def _lesson(card: EntryCard, lesson: str, cautions_above: CautionsSaid) -> tuple[str, str, date, str, tuple[CautionInText, ...]]:
    """`cautions_above` hears the cautions in the order in which they are shown."""
    cautions = cautions_above.shown(card.lesson_cautions.get(lesson, ()))
    return card.slug, card.title, card.published, to_inline_html(lesson), cautions


def _addresses(book: DiaryIndex) -> list[str]:
    return addresses_by_year([(addresses.LESSONS, book.cards)])


KIND = PageKind(
    name="lessons",
    pages=pages,
    addresses=_addresses,
    navigation=Navigation("lessons", addresses.LESSONS),
)
