"""A caution stands before what it is of: on the page of an entry, a night and a rig, in feeds, among the lessons."""

from datetime import date

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import Entry, Lessons, NightNote
from sitegen.diary.rig import Work
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.pages import lessons_page
from sitegen.pages.card import card_of
from sitegen.pages.cautions_below import cautions_below
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.drawing import basis_words
from sitegen.pages.entry_text import text_of
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.page import Page
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.text_parts import CautionInText
from tests.diaries import RIG, diary, entry, run
from tests.pages.sample import layout_of, pages_of, sample_book

LASER = "Put the laser into the focuser."
LADDER = "Climb the ladder to the top."


def prepared(told: Entry, *work: Work) -> PreparedEntry:
    book = diary(told, rig=replace(RIG, work=work))
    (view,) = views_of(book, book.entries)
    facts = facts_of(view)
    return PreparedEntry(view, facts, card_of(view, facts), ())


def order(told: PreparedEntry) -> list[str]:
    """The text's paragraphs by their first word, and its cautions by kind, a repeated one in brackets."""
    shown = []
    for part in text_of(told, sample_book()).parts:
        if isinstance(part, CautionInText):
            shown.append(f"({part.caution})" if part.is_again else part.caution)
        elif isinstance(part, str):
            shown += [line.partition(">")[2].partition(" ")[0] for line in part.splitlines() if line.startswith(("<p", "<h"))]
    return shown


def test_a_caution_stands_before_its_paragraph() -> None:
    """Once for a section, in short where the text has said it under another heading."""
    body = f"Fog.\n\n{LASER}\n\n{LASER}\n\n## After\n\nDew.\n\n{LASER}\n\n{LADDER}"
    assert order(prepared(entry(body=body))) == [
        "Fog.</p>", "laser", "Put", "Put", "After</h2>", "Dew.</p>", "(laser)", "Put", "weight", "Climb",
    ]  # fmt: skip


def test_what_is_flagged_comes_before_the_how_to() -> None:
    """Topics and titles at the top, unless a paragraph itself calls for it; work before the paragraph that tells of it."""
    assert order(prepared(entry(body="Fog.\n\nDew.", topics=("laser",)))) == ["laser", "Fog.</p>", "Dew.</p>"]
    assert order(prepared(entry(body=f"Fog.\n\n{LASER}", topics=("laser",)))) == ["Fog.</p>", "laser", "Put"]
    assert order(prepared(entry(body="Fog.", title="With a laser"))) == ["laser", "Fog.</p>"]
    work = Work(date(2026, 10, 1), "corrector plate", "turned to its pencil mark", caution="weight")
    told = "The plate was turned until the pencil line was whole; the corrector sat well."
    lights = run("2026-09-12 12:00", 2)
    assert order(prepared(entry(lights, body=f"Fog.\n\n{told}"), work)) == ["Fog.</p>", "weight", "The"]
    assert order(prepared(entry(lights, body="Fog.\n\nDew."), work)) == ["Fog.</p>", "Dew.</p>"]
    assert order(prepared(entry(body="Fog.\n\nDew."), work)) == ["weight", "Fog.</p>", "Dew.</p>"]


def test_a_denied_paragraph_has_none_and_the_mark_is_not_shown() -> None:
    told = prepared(entry(body=f"[](no_caution:){LASER}\n\nDew."))
    assert order(told) == ["Put", "Dew.</p>"]
    layout, book = layout_of("default", "en", sample_book())
    html = layout.feed_text(text_of(told, book).parts, lambda address: address)
    assert html == f"<p>{LASER}</p>\n<p>Dew.</p>\n"
    assert told.facts.cautions == ()
    assert to_inline_html(f"{LASER} [](no_caution:)") == LASER


@pytest.mark.parametrize(("language", "label"), [("en", "Caution: laser."), ("de", "Vorsicht: Laser.")])
def test_feeds_carry_it_with_the_text(language: str, label: str) -> None:
    """In full, ahead of its paragraph, with what it rests on."""
    layout, book = layout_of("default", language, sample_book())
    html = layout.feed_text(text_of(prepared(entry(body=f"Fog.\n\n{LASER}")), book).parts, lambda address: address)
    assert html.index("Fog.") < html.index(label) < html.index("IEC 60825-1") < html.index(LASER)


def test_lessons_and_nights_carry_theirs() -> None:
    """Below the text what the page has said is named only; a night below freezing is cold."""
    notes = {date(2026, 9, 12): NightNote(temperature_c=-3.0, note=LADDER)}
    told = prepared(entry(run("2026-09-12 12:00", 2), body="Fog.", night_notes=notes, lessons=Lessons(worked=("Fog.", LADDER))))
    below = cautions_below(told, CautionsSaid())
    assert below.nights == {date(2026, 9, 12): (CautionInText("weight"), CautionInText("cold"))}
    assert below.lessons == {LADDER: (CautionInText("weight", True),)}
    assert told.facts.cautions == ("weight", "cold")


def test_the_page_of_lessons_warns_before_the_lesson() -> None:
    book = sample_book()
    card = prepared(entry(lessons=Lessons(worked=(LADDER,), failed=(LADDER, "Fog.")))).card
    (page,) = lessons_page.pages(replace_cards(book, card))
    lessons = page.context["lessons"]
    assert [lesson.cautions for _, group in lessons["worked"] for lesson in group] == [(CautionInText("weight"),)]
    assert [lesson.cautions for _, group in lessons["failed"] for lesson in group] == [(CautionInText("weight", True),), ()]
    html = drawn(page)
    assert html.index("Caution: heavy gear") < html.index(LADDER)


def replace_cards(book, card):  # type: ignore[no-untyped-def]  # the dataclass's own way
    import dataclasses

    return dataclasses.replace(book, cards=(card,))


def drawn(page: Page) -> str:
    layout, _ = layout_of("default", "en", sample_book())
    return layout.draw(page)


def test_what_a_caution_rests_on_is_said() -> None:
    """A standard, one cited from memory, and common practice."""
    _, book = layout_of("default", "en", sample_book())
    assert basis_words("laser", book.formatter.words) == "Basis: IEC 60825-1."
    assert basis_words("cold", book.formatter.words) == "Basis: ISO 13732-3, cited from memory."
    assert basis_words("weight", book.formatter.words) == "Basis: EN 131-3; common practice, no source."


def test_every_entry_page_is_drawn_with_them() -> None:
    """Text, night, work and lesson of one entry, each before its own words."""
    from sitegen.pages.entry_page import KIND

    work = Work(date(2026, 10, 1), "drawer", "hung on a magnet that held the lid")
    notes = {date(2026, 9, 12): NightNote(note="Frost on the gloves.")}
    told = entry(run("2026-09-12 12:00", 2), body=LASER, night_notes=notes, lessons=Lessons(worked=(LADDER,)))
    one = prepared(told, work)
    (page,) = pages_of(KIND, book_of(one), one)
    html = drawn(page)
    for name, text in (("laser", LASER), ("cold", "Frost on"), ("strong magnets", "hung on"), ("heavy gear", LADDER)):
        assert 0 < html.index(f"Caution: {name}") < html.index(text), name


def book_of(one: PreparedEntry):  # type: ignore[no-untyped-def]  # the sample's index with this entry alone
    from sitegen.pages.diary_index import DiaryIndex

    book = layout_of("default", "en", sample_book())[1]
    assert isinstance(book, DiaryIndex)
    return replace_cards(book, one.card)
