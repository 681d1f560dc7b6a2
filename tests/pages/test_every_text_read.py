"""Every text that an author writes and that is published is read for dangers, and its caution stands before it."""

import dataclasses
import re
from collections.abc import Iterator
from datetime import date

import pytest
from msgspec.structs import replace

from sitegen.diary.entry import Entry, LessonDone, Lessons, Link, NightNote, Picture, ProcessStep
from sitegen.diary.rig import Rig, Train, Work
from sitegen.diary.settings import Settings
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.pages import entry_page, lessons_page, night_pages, rig_pages
from sitegen.pages.card import card_of, with_ribbons
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.text_parts import CautionInText
from sitegen.pictures.packet_values import packet_values
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.value_types.collections import ListOf, MapOf, OneOf
from sitegen.reading.value_types.group import Group
from sitegen.reading.value_types.text import Text
from sitegen.reading.value_types.value_type import ValueType
from tests.diaries import LONG, REDUCED, RIG, diary, entry, run
from tests.pages.pictured import prepared_picture
from tests.pages.sample import layout_of, pages_of, sample_book

DANGER, MARK = "Put the laser into the focuser.", "[](no_caution:)"
EVENING = date(2026, 9, 12)
PAGES = {"entry": entry_page.KIND, "night": night_pages.KIND, "rig": rig_pages.KIND, "lessons": lessons_page.KIND}
FIRST, SECOND = Picture("pictures/a.jpg", "a spiral"), Picture("pictures/b.jpg", "another")


def pictured(first: Picture = FIRST, second: Picture = SECOND) -> Entry:
    return entry(pictures=(first, second))


def trained(**changes: object) -> Rig:
    return replace(RIG, work=(), **changes)


def with_design(train: Train, words: str) -> Train:
    return replace(train, telescope=replace(train.telescope, design=words))


def noted(**note: str) -> Entry:
    return entry(night_notes={EVENING: NightNote(**note)})


def worked(**words: str) -> Rig:
    plain = {"part": "focuser", "what": "squared", "note": "why"}
    return replace(RIG, work=(Work(date(2026, 8, 1), **{**plain, **words}),))


# Each text by its key: what holds it, and the kinds of pages that show it.
READ: dict[str, tuple[Entry | Rig, str]] = {
    "entry.summary": (entry(summary=DANGER), "entry"),
    "entry.title": (entry(title=DANGER), ""),
    "entry.lessons.worked": (entry(lessons=Lessons(worked=(DANGER,))), "entry lessons"),
    "entry.lessons.failed": (entry(lessons=Lessons(failed=(DANGER,))), "entry lessons"),
    "entry.lessons.next": (entry(lessons=Lessons(next=(DANGER,))), "entry lessons"),
    "entry.lessons.worked.what": (entry(lessons=Lessons(worked=(DANGER,), subjects={DANGER: "focus"})), "entry lessons"),
    "entry.lessons.failed.what": (entry(lessons=Lessons(failed=(DANGER,), subjects={DANGER: "focus"})), "entry lessons"),
    "entry.lessons.next.what": (entry(lessons=Lessons(next=(DANGER,), subjects={DANGER: "focus"})), "entry lessons"),
    "entry.lessons.done.what": (entry(lessons=Lessons(done=(LessonDone("first", DANGER),))), "entry"),
    "entry.links.title": (entry(links=(Link(DANGER, "https://example.org/"),)), "entry"),
    "entry.nights.clouds": (noted(clouds=DANGER), "entry night"),
    "entry.nights.ended_by": (noted(ended_by=DANGER), "entry night"),
    "entry.nights.note": (noted(note=DANGER), "entry night"),
    "entry.nights.wind": (noted(wind=DANGER), "entry night"),
    "entry.pictures.alt": (pictured(replace(FIRST, alt=DANGER)), "entry"),
    "entry.pictures.caption": (pictured(replace(FIRST, caption=DANGER)), "entry"),
    "entry.pictures.alt of a second": (pictured(second=replace(SECOND, alt=DANGER)), "entry"),
    "entry.pictures.caption of a second": (pictured(second=replace(SECOND, caption=DANGER)), "entry"),
    "entry.pictures.caption of one laid under": (
        pictured(replace(FIRST, compare_with=SECOND.file), replace(SECOND, caption=DANGER)), "entry"),
    "entry.pictures.steps": (pictured(replace(FIRST, steps=(ProcessStep(DANGER),))), "entry"),
    "entry.pictures.steps.what": (pictured(second=replace(SECOND, steps=(ProcessStep(DANGER),))), "entry"),
    "entry.pictures.steps.alt": (pictured(replace(FIRST, steps=(ProcessStep("one", "c.jpg", DANGER),))), "entry"),
    "log.reason": (entry(run("2026-09-12 16:00", 1, kept=False, reason=DANGER)), "entry night"),
    "rig.changes.design": (trained(trains=(LONG, with_design(REDUCED, DANGER))), "rig"),
    "rig.changes.note": (trained(trains=(LONG, replace(REDUCED, note=DANGER))), "entry rig"),
    "rig.guiding": (trained(guiding=DANGER), "rig"),
    "rig.mount": (trained(mount=DANGER), "rig"),
    "rig.other": (trained(other=DANGER), "rig"),
    "rig.telescope.design": (trained(trains=(with_design(LONG, DANGER), REDUCED)), "entry rig"),
    "rig.work.note": (worked(note=DANGER), "entry rig"),
    "rig.work.part": (worked(part=DANGER), "entry rig"),
    "rig.work.what": (worked(what=DANGER), "entry rig"),
}  # fmt: skip
NOT_READ = {
    "names": "diary.title diary.author site.name rig.name rig.camera.name rig.changes.name rig.filters.name entry.target "
    "entry.target.name entry.target.kind entry.topics "
    "entry.lessons.worked.subject entry.lessons.failed.subject entry.lessons.next.subject entry.recalled.target "
    "entry.panels.name",
    "one line on every page": "diary.tagline diary.licence",
    "published nowhere": "diary.captures.discarded diary.captures.answers.files rig.filters.spelt log.note",
    "names of other things in the diary": "entry.rig entry.site entry.logs.filter entry.logs.rig entry.logs.site "
    "entry.logs.target entry.lessons.done.of entry.recalled.filter diary.captures.answers.rig diary.captures.answers.site "
    "diary.captures.answers.target diary.captures.answers.filter",
}


def keys_of(type_: ValueType, path: str) -> Iterator[str]:
    """Of every text that may stand there; what a log calls its columns is none."""
    match type_:
        case Text():
            yield path
        case Group():
            inner = (key for key in type_.keys if key.name != "columns")
            yield from (found for key in inner for found in keys_of(key.type, f"{path}.{key.name}"))
        case ListOf():
            yield from keys_of(type_.item, path)
        case MapOf():
            yield from keys_of(type_.value, path)
        case OneOf():
            yield from (*keys_of(type_.short, path), *keys_of(type_.long, path))


def test_every_text_is_read_or_has_a_reason_why_not() -> None:
    """A new key for words has to say which; a log's own two columns of words are 'reason' and 'note'."""
    of_files = {key for file in AUTHOR_FILES for key in keys_of(file.group, file.name)} | {"log.reason", "log.note"}
    read = {key.partition(" ")[0] for key in READ}
    left_out = {key for keys in NOT_READ.values() for key in keys.split()}
    assert of_files - read - left_out == set(), "read it in sitegen/cautions/sources.py, or say why not"
    assert (read | left_out) - of_files == set() and read & left_out == set()


def prepared(holder: Entry | Rig) -> tuple[PreparedEntry, Rig]:
    """The entry with a night of its own, and its rig."""
    told, rig = (holder, trained()) if isinstance(holder, Entry) else (entry(), holder)
    told = replace(told, subs=(*run("2026-09-12 12:00", 2), *told.subs))
    book = diary(told, rig=rig)
    (view,) = views_of(book, book.entries)
    facts = facts_of(view)
    pictures = tuple(map(prepared_picture, told.pictures))
    return PreparedEntry(view, facts, with_ribbons(card_of(view, facts), view, 9.0), pictures), rig


def page(name: str, holder: Entry | Rig) -> str:
    """What a reader gets of it: what stands in its head is for machines."""
    shown, rig = prepared(holder)
    layout, book = layout_of("default", "en", sample_book())
    book = dataclasses.replace(book, cards=(shown.card,), rigs={rig.slug: rig})
    return layout.draw(pages_of(PAGES[name], book, shown)[0]).partition("</head>")[2]


SHOWN = [(key, name) for key, (_, names) in READ.items() for name in names.split()]


@pytest.mark.parametrize("key", READ)
def test_a_danger_in_it_is_a_fact_of_the_entry(key: str) -> None:
    """But for what the rig's page alone shows."""
    holder, names = READ[key]
    assert prepared(holder)[0].facts.cautions == (() if names == "rig" else ("laser",))


@pytest.mark.parametrize(("key", "name"), SHOWN)
def test_the_caution_stands_before_it(key: str, name: str) -> None:
    """Before the first place where the words stand, alternative texts and titles of marks among them; in full, and once."""
    html = page(name, READ[key][0])
    assert DANGER in html
    assert 0 < html.index("Caution: laser.") < html.index(DANGER)
    assert html.count("Basis: IEC 60825-1.") == 1


@pytest.mark.parametrize(("key", "name"), SHOWN)
def test_it_can_be_denied_and_the_mark_is_not_shown(key: str, name: str) -> None:
    """Where the text itself stands, by the mark inside it."""
    holder = denied(READ[key][0])
    assert prepared(holder)[0].facts.cautions == ()
    html = page(name, holder)
    assert DANGER in html
    assert "Caution" not in html and "no_caution" not in html


def denied(holder: Entry | Rig) -> Entry | Rig:
    """The same with the mark after the danger, wherever that stands."""
    return with_words(holder, f"{DANGER} {MARK}")


def with_words(value: object, words: str) -> object:
    if isinstance(value, str):
        return value.replace(DANGER, words)
    if isinstance(value, tuple):
        return tuple(with_words(part, words) for part in value)
    if isinstance(value, dict):
        return {key: with_words(part, words) for key, part in value.items()}
    fields = getattr(value, "__struct_fields__", ())
    return replace(value, **{name: with_words(getattr(value, name), words) for name in fields}) if fields else value


def feed(holder: Entry) -> tuple[str, tuple[str, ...]]:
    """The text in the feeds, and its cautions in order, a repeated one in brackets."""
    from sitegen.pages.entry_text import text_of

    shown, _ = prepared(holder)
    layout, book = layout_of("default", "en", sample_book())
    parts = text_of(shown, book, lambda address: address).parts
    cautions = [part for part in parts if isinstance(part, CautionInText)]
    html = layout.feed_text(parts, lambda address: address)
    return html, tuple(f"({part.caution})" if part.is_again else part.caution for part in cautions)


FEEDS = [
    (pictured(replace(FIRST, caption=DANGER)), "Fog.", ("laser",)),
    (pictured(replace(FIRST, alt=DANGER)), "Fog.", ("laser",)),
    (pictured(second=replace(SECOND, caption=DANGER)), "Fog.", ()),
    (pictured(second=replace(SECOND, caption=DANGER)), "Fog.\n\n![](figure:b.jpg)", ("laser",)),
    (pictured(replace(FIRST, caption=DANGER)), "![](figure:a.jpg)\n\n## Later\n\n![](figure:a.jpg)", ("laser", "(laser)")),
    (pictured(), f"Fog.\n\n![{DANGER}](figure:b.jpg)", ("laser",)),
    (pictured(second=replace(SECOND, caption=DANGER)), f"Fog.\n\n![](figure:b.jpg) {MARK}", ()),
]


@pytest.mark.parametrize(("told", "body", "cautions"), FEEDS)
def test_feeds_carry_those_of_the_pictures_that_they_show(told: Entry, body: str, cautions: tuple[str, ...]) -> None:
    """Of the one that a feed names beside the text, at the top or before the paragraph that shows it; of the others before the
    paragraph alone. What stands in none of them is not in the feed, and needs no caution there."""
    html, found = feed(replace(told, body=body))
    assert found == cautions
    if cautions and "figure:b" in body:
        assert html.index("Fog.") < html.index("Caution: laser.") < html.index("<img")
    elif cautions:
        assert 0 < html.index("Caution: laser.") < max(html.find("Fog."), html.find("<img"))


def test_what_the_page_said_above_its_picture_is_named_in_the_text() -> None:
    """In full before the picture at the top of the page; in the text, in short."""
    html = page("entry", replace(pictured(replace(FIRST, caption=DANGER)), body=f"Fog.\n\n{DANGER}"))
    first, again = (match.start() for match in re.finditer("Caution: laser.", html))
    assert first < html.index("<figure") < html.index("Fog.") < again < html.rindex(DANGER)
    assert html.count("Basis: IEC 60825-1.") == 1 and html.count("As said above.") == 1


def test_a_summary_s_caution_is_not_said_again_at_the_top_of_the_text() -> None:
    """It stands before the summary, right above; a title's stands at the top of the text."""
    html = page("entry", entry(summary=DANGER))
    assert "As said above." not in html
    assert html.index("Caution: laser.") < html.index("<h1") and html.count("Caution: laser.") == 1
    titled = page("entry", entry(title=DANGER))
    assert titled.index("<h1") < titled.index("Caution: laser.")


def test_the_mark_is_in_no_summary_and_in_no_picture_s_file() -> None:
    """Lists and feeds show the summary as it stands; AVM's Headline and Description are caption and alternative text."""
    shown, _ = prepared(entry(summary=f"{DANGER} {MARK}"))
    assert (shown.card.summary, shown.facts.cautions) == (DANGER, ())
    values = packet_values(shown.view.entry, Picture("a.jpg", f"one {MARK}", f"two {MARK}"), Settings("A diary"), ())
    assert (values["Description"], values["Headline"]) == ("one", "two")


def test_a_name_calls_for_no_caution() -> None:
    """It tells nobody how to do a thing."""
    named = trained(name=DANGER, trains=(replace(LONG, camera=replace(LONG.camera, name=DANGER)), REDUCED))
    assert "Caution" not in page("rig", named) and "Caution" not in page("entry", named)
