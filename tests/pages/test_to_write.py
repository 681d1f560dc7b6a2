"""Text marked 'To write:' never reaches a page, and its author is told where it stands."""

from pathlib import Path

import pytest

from sitegen.pages.markdown_text import Resolvers, gaps_in, plain_text, to_html
from sitegen.rebuild import check, rebuild
from tests.conftest import TODAY
from tests.whole.test_witnesses_told import folders, published, warnings

SOUND_LOG = "start,exposure_s,filter\n2026-06-14T14:00:00Z,300,L\n"
NOWHERE = Resolvers(entry_address=lambda _: "#", fact=lambda *_: "", figure=lambda *_: "")


@pytest.mark.parametrize(
    ("body", "html", "gaps"),
    [
        ("*To write: why.*\n\nFog.", "<p>Fog.</p>\n", (0,)),
        ("Fog.\n\n**to write:** all\nof it\n\nDew.", "<p>Fog.</p>\n<p>Dew.</p>\n", (2,)),
        ("- To write: one\n- two", "<ul>\n<li>two</li>\n</ul>\n", (0,)),
        ("Fog.\n\n1. _To write: one_\n2. To write: two", "<p>Fog.</p>\n", (2, 3)),
        ("> To write: a word of thanks", "", (0,)),
        ("## To write: the end\n\nFog.", "<p>Fog.</p>\n", (0,)),
        ("Fog, and much to write: home.", "<p>Fog, and much to write: home.</p>\n", ()),
        ("    To write: code", "<pre><code>To write: code\n</code></pre>\n", ()),
    ],
)
def test_a_marked_paragraph_is_left_out(body, html, gaps):
    """Emphasised, in lists, quotations and headings; what only speaks of writing stays."""
    rendered = to_html(body, NOWHERE)
    assert ("".join(map(str, rendered.parts)), rendered.gaps, gaps_in(body)) == (html, gaps, gaps)
    assert not gaps or "o write" not in plain_text(body)


def test_nothing_of_it_is_published_and_each_is_told(tmp_path: Path) -> None:
    """Body, summary, caption and lessons, on pages, in feeds, search, linked data and descriptions."""
    where = folders(tmp_path, SOUND_LOG)
    entry = where.content / "entries/first.md"
    lessons = '{worked: ["*To write: secret two*", focus], next: ["To write: secret three"]}'
    keys = f'summary: "To write: secret one"\nlessons: {lessons}\n'
    text = entry.read_text("utf-8").replace("rig: dome\n", f"rig: dome\n{keys}", 1)
    entry.write_text(text + "\n*To write: secret four.*\n\n- To write: secret five\n", "utf-8")
    lines = warnings(check(where, TODAY))
    assert [line.partition(": warning: ")[0] for line in lines] == [
        f"content/entries/first.md:{place}" for place in ("6:10", "7:20", "7:61", "16:1", "18:1")
    ]
    assert lines[0].endswith("'summary' is still to be written, and not published until it is; write it, without 'To write:'")
    rebuild(where, TODAY)
    site = b"".join(published(where.output).values())
    assert b"focus" in site and b"secret" not in site and b"To write" not in site


def test_what_is_required_cannot_wait(tmp_path: Path) -> None:
    """A title to be written is none."""
    where = folders(tmp_path, SOUND_LOG)
    entry = where.content / "entries/first.md"
    entry.write_text(entry.read_text("utf-8").replace("title: Two subs", 'title: "To write: two subs"\n#', 1), "utf-8")
    wanted = "2:8: error: 'title' is still to be written; give it as in 'title: Five nights on NGC 253'"
    assert [line for line in warnings(check(where, TODAY)) if wanted in line]
