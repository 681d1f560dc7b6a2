"""What worked, what failed, what is still to do and what was done: the newest lessons of the diary in one place, and those of
each year."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.pages.by_year import NEWEST, ListYear, addresses_by_year, list_years
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_summary import EntrySummary
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.plans import Doers, as_planned, doer_of, doers_of
from sitegen.pages.text_parts import CautionInText

KINDS = ("next", "done", "worked", "failed")
MOST_WHOLE = 200
"""Of a year with more lessons each is a line: what was learnt, and the entry that tells it."""


class LessonShown(Struct, frozen=True):
    """`subject` is what it is grouped by, '' for none; `topic` its page, where it has one. `done`: name, title and day of the
    entry in which a plan was done."""

    slug: str
    title: str
    published: date
    html: str
    cautions: tuple[CautionInText, ...]
    subject: str
    topic: str | None
    done: tuple[str, str, date] | None = None


Subjects = list[tuple[str, list[LessonShown]]]
"""Lessons by their subject, which has no name where they are in one list."""


def pages(book: DiaryIndex) -> Iterable[Page]:
    title, years, doers = book.formatter.words["page.lessons"], list_years(addresses.LESSONS, book.cards), doers_of(book)
    yield _page(addresses.LESSONS, title, book.cards[:NEWEST], years, None, book, doers)
    for place in years:
        title_of_year = book.formatter.words.say("group.of_year", name=title, year=place.year)
        yield _page(place.address, title_of_year, book.published_years[place.year], years, place.year, book, doers)


def _page(
    address: str,
    title: str,
    cards: Sequence[EntryCard],
    years: Sequence[ListYear],
    year: int | None,
    book: DiaryIndex,
    doers: Doers,
) -> Page:
    """What these entries teach; `year` is None on the first page, which has the newest ones."""
    shelf = _Lessons(book, doers)
    lessons: dict[str, Subjects] = {
        "next": [("", list(shelf.still_open(cards)))],
        "done": [("", list(shelf.done(cards)))],
        "worked": _by_subject(shelf.learnt(cards, "worked")),
        "failed": _by_subject(shelf.learnt(cards, "failed")),
    }
    lessons = {kind: [group for group in lessons[kind] if group[1]] for kind in KINDS}
    are_lines = sum(len(group) for groups in lessons.values() for _, group in groups) > MOST_WHOLE
    context = {"are_lines": are_lines, "lessons": lessons, "years": years, "year": year}
    return Page(address, "lessons.html", title, context, chapter="lessons")


class _Lessons:
    """Lessons of one page, asked for in the order in which they are shown: cautions are said in full where they come first."""

    def __init__(self, book: DiaryIndex, doers: Doers) -> None:
        self.book, self.doers, self.cautions_above = book, doers, CautionsSaid()

    def still_open(self, cards: Iterable[EntryCard]) -> Iterator[LessonShown]:
        """Newest first."""
        for card in cards:
            for plan in card.lessons.next:
                if doer_of(card.slug, plan, self.doers) is None:
                    yield self._shown(card, plan)

    def done(self, cards: Iterable[EntryCard]) -> Iterator[LessonShown]:
        """What these entries ticked off first, each in the words of the entry that planned it."""
        for doer in cards:
            for done in dict.fromkeys(doer.done):
                planner = self.book.by_slug.get(done.of)
                if planner is not None and self.doers[done.key] is doer:
                    yield self._shown(planner, as_planned(done, planner.lessons.next), doer)

    def learnt(self, cards: Iterable[EntryCard], kind: str) -> Iterator[LessonShown]:
        return (self._shown(card, lesson) for card in cards for lesson in getattr(card.lessons, kind))

    def _shown(self, card: EntryCard, lesson: str, doer: EntrySummary | None = None) -> LessonShown:
        subject = card.lessons.subjects.get(lesson) or next(iter(card.topics), "")
        slug = addresses.slug_of(subject) if subject else ""
        return LessonShown(
            card.slug,
            card.title,
            card.published,
            to_inline_html(lesson),
            self.cautions_above.shown(card.lesson_cautions.get(lesson, ())),
            self.book.topic_words.get(slug, subject),
            addresses.topic(slug) if slug in self.book.topic_words else None,
            (doer.slug, doer.title, doer.published) if doer else None,
        )


def _by_subject(lessons: Iterable[LessonShown]) -> Subjects:
    """The subject of the newest lesson first; what has none comes last."""
    groups: dict[str, list[LessonShown]] = {}
    for lesson in lessons:
        groups.setdefault(addresses.slug_of(lesson.subject) if lesson.subject else "", []).append(lesson)
    named = [(group[0].subject, group) for slug, group in groups.items() if slug]
    return [*named, *(("", group) for slug, group in groups.items() if not slug)]


def _addresses(book: DiaryIndex) -> list[str]:
    return addresses_by_year([(addresses.LESSONS, book.cards)])


KIND = PageKind(
    name="lessons",
    pages=pages,
    addresses=_addresses,
    navigation=Navigation("lessons", addresses.LESSONS),
)
