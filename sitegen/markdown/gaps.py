"""Markdown's tokens without the paragraphs that are still to be written."""

from collections.abc import Sequence
from itertools import pairwise

from markdown_it.token import Token

from sitegen.diary.to_write import is_gap

_CELLS = ("th_open", "td_open")


def written(tokens: Sequence[Token]) -> tuple[list[Token], tuple[int, ...]]:
    """The tokens that may be published, and the lines (from 0) of what may not: each paragraph, heading or cell that begins with
    the mark goes, and every list or quotation that is empty without it."""
    gaps = [index for index, token in enumerate(tokens) if token.type == "inline" and is_gap(inline_words(token))]
    if not gaps:
        return list(tokens), ()
    lines = tuple(_line(tokens, index) for index in gaps)
    left_out: set[int] = set()
    for index in gaps:
        left_out |= {index} if tokens[index - 1].type in _CELLS else {index - 1, index, index + 1}
    kept = [token for index, token in enumerate(tokens) if index not in left_out]
    return _without_empty(kept), lines


def inline_words(token: Token) -> str:
    return "".join(map(plain_word, token.children or ()))


def plain_word(token: Token) -> str:
    if token.type in ("text", "code_inline"):
        return token.content
    return " " if token.type in ("softbreak", "hardbreak") else ""


def _line(tokens: Sequence[Token], index: int) -> int:
    """Of the token, or of the nearest before it that knows its own."""
    return next((token.map[0] for token in reversed(tokens[: index + 1]) if token.map), 0)


def _without_empty(tokens: list[Token]) -> list[Token]:
    """Again and again, since a list is empty once its last item is gone."""
    while True:
        empty = [place for place, pair in enumerate(pairwise(tokens)) if _is_empty(*pair)]
        if not empty:
            return tokens
        gone = {index for place in empty for index in (place, place + 1)}
        tokens = [token for index, token in enumerate(tokens) if index not in gone]


def _is_empty(opening: Token, closing: Token) -> bool:
    if opening.nesting != 1 or closing.nesting != -1 or opening.type in _CELLS:
        return False
    return opening.type.removesuffix("_open") == closing.type.removesuffix("_close")
