"""Which cautions belong before which part of an author's Markdown.

A part is what stands at the top level of a text: a paragraph, a list, a table, a quotation. The mark `[](no_caution:)`, anywhere
in a paragraph, an item or a cell, says that its author wants none for it; it is shown nowhere.
"""

from collections.abc import Iterator, Sequence

from markdown_it.token import Token
from msgspec import Struct

from sitegen.cautions.finding import kinds_in
from sitegen.cautions.mark import is_denied
from sitegen.diary.rig import CautionKind
from sitegen.markdown.gaps import plain_word
from sitegen.markdown.parsing import FIGURE, tokens_of

_CELLS = ("th_open", "td_open")


class Part(Struct, frozen=True):
    """`index` is that of its first token. `in_new_section`: a heading stands between it and the part before it. `kinds` also
    holds what a heading above calls for. `figures`: names of the figures that it shows."""

    index: int
    in_new_section: bool
    words: str
    kinds: tuple[CautionKind, ...]
    figures: tuple[str, ...] = ()


def kinds_in_body(body: str) -> tuple[CautionKind, ...]:
    """Of the whole text, each once."""
    return tuple(dict.fromkeys(kind for part in parts_of(tokens_of(body)) for kind in part.kinds))


def parts_of(tokens: Sequence[Token]) -> Iterator[Part]:
    """Headings are read together with what stands under them, since 'the laser' in one is 'it' in the other."""
    headings: list[str] = []
    for start, end in _top_level(tokens):
        words = _words(tokens[start:end])
        if tokens[start].type == "heading_open":
            headings.append(words)
            continue
        yield Part(start, bool(headings), words, kinds_in("\n".join((*headings, words))), _figures(tokens[start:end]))
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
        if token.type == "inline" and not _is_denied(token):
            is_cell = before is not None and before.type in _CELLS
            words += _words_of(token) + (" " if is_cell else "\n")
        elif token.type == "tr_close":
            words += "\n"
    return words


def _words_of(token: Token) -> str:
    """Those of images too, which a page shows below or in place of them."""
    return "".join(child.content if child.type == "image" else plain_word(child) for child in token.children or ())


def _figures(tokens: Sequence[Token]) -> tuple[str, ...]:
    read = (token for token in tokens if token.type == "inline" and not _is_denied(token))
    sources = (str(child.attrs.get("src", "")) for token in read for child in token.children or () if child.type == "image")
    return tuple(source[len(FIGURE) :] for source in sources if source.lower().startswith(FIGURE))


def _is_denied(token: Token) -> bool:
    return any(child.type == "link_open" and is_denied(str(child.attrs.get("href", ""))) for child in token.children or ())
