"""Markdown as passages: the reader's words with their places in the author's file, and a mark that no page shows."""

import pytest

from sitegen.claims.body_passages import passages_of
from sitegen.claims.passage import HIDDEN, Passage
from sitegen.pages.markdown_text import Resolvers, plain_text, to_html

ASK_NOTHING = Resolvers(entry_address=lambda name: "#", fact=lambda *_: "4 h", figure=lambda *_: "")


@pytest.mark.parametrize(
    "body",
    [
        "One line, then here.",
        "One *line*,\nthen **here**.",
        "[A link](here.md) before\nand `here` in code, then here.",
        "> A quotation\n> with here.",
        "- an item\n- another\n  with here.",
        "| a | b |\n|---|---|\n| c | here |",
        "The term\n: with here.",
        "A number [](fact:integration.total_s), ![](figure:nights), then here.",
    ],
)
def test_a_word_has_its_place_in_the_file(body: str) -> None:
    """The last 'here' of each text, counted by hand's simplest means: where it stands in its lines."""
    lines = body.split("\n")
    line = max(number for number, text in enumerate(lines) if "here" in text)
    passage = next(passage for passage in passages_of(body, 11) if "here" in passage.text)
    assert passage.place(passage.text.rindex("here")) == (11 + line, lines[line].rindex("here") + 1)


def test_what_is_no_claim_is_hidden() -> None:
    """Computed numbers, figures and code are not the author's words; those beside a number are."""
    (passage,) = passages_of("It is [](fact:nights.dark_s@2025-08-08), [the same](fact:a.b), ![x](figure:y) and `9 subs`.", 1)
    assert passage.text == f"It is {HIDDEN}, the same{HIDDEN}, {HIDDEN} and {HIDDEN}."
    assert [(mark.evening.isoformat(), mark.start) for mark in passage.nights] == [("2025-08-08", 6)]


def test_quotations_and_tables_are_told_apart() -> None:
    roles = [(passage.role, passage.text) for passage in passages_of("> q\n\n| a |\n|---|\n| b |\n\np", 1)]
    assert roles == [("quotation", "q"), ("table", "a"), ("table", "b"), ("paragraph", "p")]


def test_what_is_still_to_write_claims_nothing() -> None:
    assert [passage.text for passage in passages_of("To write: nine subs.\n\nDone.", 1)] == ["Done."]


@pytest.mark.parametrize("mark", ["[](no_doubt:)", "[](NO_DOUBT:)", "[nine](no_doubt:)"])
def test_the_mark_is_for_its_paragraph_and_stands_on_no_page(mark: str) -> None:
    """Words in it are shown as words."""
    body = f"We took nine subs. {mark}\n\nThe next."
    first, second = passages_of(body, 1)
    assert (first.undoubted, second.undoubted) == (True, False)
    html = "".join(map(str, to_html(body, ASK_NOTHING).parts))
    for shown in (html, plain_text(body)):
        assert "no_doubt" not in shown.casefold()
        assert "<a" not in shown
    assert to_html(body, ASK_NOTHING).mistakes == ()


def test_links_to_entries_are_named() -> None:
    def links(passage: Passage) -> list[tuple[str, str]]:
        return [(link.slug, passage.text[link.start : link.end]) for link in passage.links]

    (passage,) = passages_of("See [the *first*](first.md#there) and [a page](https://example.org/a.md).", 1)
    assert links(passage) == [("first", "the first")]
