"""One way of reading an author's Markdown for all rooms."""

import re
from collections.abc import Callable

import pytest

from sitegen.cautions.passages import kinds_in_body
from sitegen.claims.body_passages import passages_of
from sitegen.markdown.parsing import tokens_of
from sitegen.pages.markdown_text import Resolvers, plain_text, to_html
from tests.conftest import ROOT

NOWHERE = Resolvers(entry_address=lambda _: "#", fact=lambda *_: "4 h", figure=lambda *_: "")
BODY = "Put [the tube](x.md) into *place*, [](fact:a.b).[^one]\n\nTo write: more.\n\nTerm\n: what it is\n\n[^one]: A note."


@pytest.mark.parametrize("room", ["cautions", "claims", "markdown", "pages"])
def test_only_one_room_makes_a_parser(room: str) -> None:
    """Two that differ in a plugin would find paragraphs that the other does not have."""
    makers = [path.name for path in sorted((ROOT / "sitegen" / room).rglob("*.py")) if "MarkdownIt(" in path.read_text("utf-8")]
    assert makers == (["parsing.py"] if room == "markdown" else [])


READERS: dict[str, Callable[[str], bool]] = {
    "page": lambda body: "laser" in re.sub(r"<[^>]+>", "", "".join(map(str, to_html(body, NOWHERE).parts))),
    "search": lambda body: "laser" in plain_text(body),
    "cautions": lambda body: kinds_in_body(body) == ("laser",),
    "claims": lambda body: any("laser" in passage.text for passage in passages_of(body, 1)),
}


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize(
    ("body", "is_read"),
    [
        ("Put [it](https://laser.example/) in.", False),
        ("Put [it](javascript:laser) in.", True),
        ("Put it in.[^a]\n\n[^a]: The laser.", True),
        ("To write: the laser.", False),
    ],
)
def test_each_room_reads_what_a_page_shows(reader: str, body: str, is_read: bool) -> None:
    """An address is not read; a link of a scheme that may not be linked stays text, and so its address is."""
    assert READERS[reader](body) is is_read


def test_what_a_page_makes_of_the_tokens_leaves_those_of_others_alone() -> None:
    """Answering markers changes tokens; who only reads them shares one parse."""
    before = repr(tokens_of(BODY))
    to_html(BODY, NOWHERE)
    assert repr(tokens_of(BODY)) == before
    assert tokens_of(BODY) is tokens_of(BODY)
