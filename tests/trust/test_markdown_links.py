"""What an author's Markdown may link to, and that nothing in it becomes HTML but what Markdown has words for."""

from pathlib import Path

import pytest

from sitegen.pages.markdown_text import Resolvers, to_html, to_inline_html
from tests.fuzz.targets import markdown

RESOLVERS = Resolvers(lambda name: f"../{name}/", lambda key, _: key, lambda name, _: name)
ADDRESSES = (
    "javascript:alert(1)", "JaVaScRiPt:alert(1)", " javascript:alert(1)", "java&#115;cript:alert(1)", "&#x6A;avascript:alert(1)",
    "javascript&colon;alert(1)", "javascript&#58;alert(1)", "java&Tab;script:alert(1)", "java&NewLine;script:alert(1)",
    "&#1;javascript:alert(1)", "%6Aavascript:alert(1)", "vbscript:x", "data:text/html,<script>alert(1)</script>",
    "data:image/svg+xml;base64,PHN2Zz4=", "file:///etc/passwd", "blob:x", "view-source:x", "intent://x", "jar:http://x!/",
)  # fmt: skip
FORMS = ("[a]({0})", "[a](<{0}>)", "![a]({0})", "[a][1]\n\n[1]: {0}", "<{0}>", "![a][1]\n\n[1]: <{0}> 't'")


def html_of(text: str) -> str:
    return "".join(map(str, to_html(text, RESOLVERS).parts))


@pytest.mark.parametrize("address", ADDRESSES)
def test_no_scheme_but_the_safe_ones_is_linked(address: str, tmp_path: Path) -> None:
    """Whatever the spelling and wherever it stands: a link, an image, a reference, an autolink."""
    for form in FORMS:
        markdown(form.format(address).encode(), tmp_path)
        assert 'href="javascript' not in html_of(form.format(address)).lower()


@pytest.mark.parametrize("address", ["https://example.org/a?b=c&d", "mailto:keeper@example.org", "../rigs/", "#part"])
def test_good_addresses_are_linked(address: str) -> None:
    """So that refusing everything would not pass."""
    assert f'href="{address.replace("&", "&amp;")}"' in html_of(f"[a]({address})")


def test_markers_where_they_have_no_meaning() -> None:
    """A picture of a number and a link to a figure are named; in a caption or a lesson a marker stays the text it is."""
    told = to_html("![](fact:x)\n[there](figuRe:nights)", RESOLVERS)
    assert [mistake.wrong for mistake in told.mistakes] == ["a number is no picture", "a figure is no place to link to"]
    assert told.parts == ("<p>\nthere</p>\n",)
    assert to_inline_html("[six](fact:x) ![](figure:y)") == "[six](fact:x) ![](figure:y)"


HTML = ('<script>alert(1)</script>', '<b onclick="x">', "<!-- x -->", "<?php x ?>", "<![CDATA[x]]>", "<svg/onload=alert(1)>")


BLOCKS = ("{0}", "# {0}", "- {0}", "| a |\n|-|\n| {0} |", "x[^1]\n\n[^1]: {0}", "`{0}`", "![{0}](a.png)", "x\n: {0}", "    {0}")


@pytest.mark.parametrize("html", HTML)
def test_raw_html_is_text(html: str, tmp_path: Path) -> None:
    """In a paragraph, a heading, a list, a table, a footnote, an image's alternative text, and code."""
    for form in BLOCKS:
        text = form.format(html)
        markdown(text.encode(), tmp_path)
        assert html not in html_of(text)
    assert html not in to_inline_html(html)
