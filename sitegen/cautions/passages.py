"""Which cautions belong before which part of an author's Markdown.

A part is what stands at the top level of a text: a paragraph, a list, a table, a quotation. The mark `[](no_caution:)`, anywhere
in a paragraph, an item or a cell, says that its author wants none for it; it is shown nowhere.
"""

from collections.abc import Iterator, Sequence
from functools import cache

from markdown_it import MarkdownIt
from markdown_it.token import Token
from mdit_py_plugins.deflist import deflist_plugin
from mdit_py_plugins.footnote import footnote_plugin
from msgspec import Struct

from sitegen.cautions.finding import kinds_in
from sitegen.cautions.mark import is_denied
from sitegen.diary.rig import CautionKind
from sitegen.diary.to_write import is_gap

_CELLS = ("th_open", "td_open")


class Part(Struct, frozen=True):
    """`index` is that of its first token. `in_new_section`: a heading stands between it and the part before it. `kinds` also
    holds what a heading above calls for."""

    index: int
    in_new_section: bool
    words: str
    kinds: tuple[CautionKind, ...]


def kinds_in_body(body: str) -> tuple[CautionKind, ...]:
    """Of the whole text, each once."""
    tokens = _parser().parse(body)
    return tuple(dict.fromkeys(kind for part in parts_of(tokens) for kind in part.kinds))


def parts_of(tokens: Sequence[Token]) -> Iterator[Part]:
    """Headings are read together with what stands under them, since 'the laser' in one is 'it' in the other."""
    headings: list[str] = []
    for start, end in _top_level(tokens):
        words = _words(tokens[start:end])
        if tokens[start].type == "heading_open":
            headings.append(words)
            continue
        yield Part(start, bool(headings), words, kinds_in("\n".join((*headings, words))))
        headings = []


def _top_level(tokens: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """From the first token of each part to behind its last."""
    depth = start = 0
    for index, token in enumerate(tokens):
        depth += token.nesting
        if depth == 0:
            yield start, index + 1
            start = index + 1


def _words(tokens: Sequence[Token]) -> str:
    """A line for each paragraph and item, and for each row of a table."""
    words = ""
    for before, token in zip((None, *tokens), tokens, strict=False):
        if token.type == "inline" and not _is_left_out(token):
            is_cell = before is not None and before.type in _CELLS
            words += _words_of(token) + (" " if is_cell else "\n")
        elif token.type == "tr_close":
            words += "\n"
    return words


def _is_left_out(token: Token) -> bool:
    denied = any(child.type == "link_open" and is_denied(str(child.attrs.get("href", ""))) for child in token.children or ())
    return denied or is_gap(_words_of(token))


def _words_of(token: Token) -> str:
    return "".join(
        child.content if child.type in ("text", "code_inline") else " " if child.type in ("softbreak", "hardbreak") else ""
        for child in token.children or ()
    )


@cache
def _parser() -> MarkdownIt:
    """The same blocks as those of the pages. Links of any kind are none of its business."""
    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    parser.use(footnote_plugin).use(deflist_plugin)
    parser.validateLink = _any_link  # type: ignore[method-assign]  # the documented way
    return parser


def _any_link(url: str) -> bool:
    return True
