"""An entry's Markdown to HTML: CommonMark with tables, footnotes and definition lists; raw HTML stays text.

Two markers reach into the computed numbers, both plain CommonMark:
`[](fact:integration.total_s)` becomes the number with its unit, `[words](fact:…)` keeps the words and sets the number
in the margin beside them; `![](figure:NAME)` becomes a figure of the entry. Links to other entries are written with
the file's name, `[the count](counting-a-cluster.md)`. `[](no_caution:)` says that its paragraph needs none, `[](no_doubt:)` that
none of its claims is to be doubted; both are shown nowhere.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from typing import Any

from markdown_it.token import Token
from msgspec import Struct

from sitegen.diary.to_write import GAP
from sitegen.markdown.gaps import inline_words, plain_word
from sitegen.markdown.marks import MARKS, without_marks
from sitegen.markdown.parsing import FACT, FIGURE, SAFE_SCHEMES, parsed, parser_of, tokens_of
from sitegen.pages.cautions_shown import CautionsByPart, Flags, cautions_in_text
from sitegen.pages.text_parts import Marked, TextParts

_PLACE = re.compile("\0(\\d+)\0")
"""Stands for a marker's number in rendered text. No author can write it: CommonMark replaces NUL by U+FFFD (section 2.3)."""


class TextMistake(Struct, frozen=True):
    """A marker or link that leads nowhere; `line` counts from 0 within the body."""

    line: int
    wrong: str
    remedy: str


class Rendered(Struct, frozen=True):
    """`gaps` are the lines, from 0 within the body, of paragraphs still to be written: nothing of them is in `parts`."""

    parts: TextParts
    mistakes: tuple[TextMistake, ...]
    gaps: tuple[int, ...] = ()


class Resolvers(Struct, frozen=True):
    """How the text's links are answered. Each takes what stands after the scheme, and gives an address or what the theme shall
    draw there ('' for nothing), or a `TextMistake`-shaped pair (what is wrong, remedy)."""

    entry_address: Callable[[str], str | tuple[str, str]]
    fact: Callable[[str, str], "Answer"]
    figure: Callable[[str, str], "Answer"]


Answer = Marked | str | tuple[str, str]


class _Answers:
    """The answers to one text's markers: what they stand for, by number, and the mistakes."""

    def __init__(self, resolvers: Resolvers) -> None:
        self.resolvers = resolvers
        self.marked: list[Marked] = []
        self.mistakes: list[TextMistake] = []

    def token_for(self, answer: Answer, words: str, line: int) -> Token:
        if isinstance(answer, tuple):
            self.mistakes.append(TextMistake(line, *answer))
            return Token("text", "", 0, content=words)
        if isinstance(answer, str):
            return Token("html_inline", "", 0, content=answer)
        self.marked.append(answer)
        return Token("html_inline", "", 0, content=f"\0{len(self.marked) - 1}\0")

    def parts(self, html: str) -> Iterator[str | Marked]:
        """The rendered text, cut where markers stand."""
        for index, piece in enumerate(_PLACE.split(html)):
            if index % 2:
                yield self.marked[int(piece)]
            elif piece:
                yield piece


def to_html(body: str, resolvers: Resolvers, id_prefix: str = "", flags: Flags | None = None) -> Rendered:
    """The body as HTML and what its markers stand for, and every marker or link in it that does not resolve.

    With `flags`, each part is preceded by the cautions that it calls for.
    """
    parser = parser_of()
    env: dict[str, Any] = {"docId": id_prefix}
    tokens, gaps = parsed(body, env)
    answers = _Answers(resolvers)
    before = cautions_in_text(tokens, flags) if flags is not None else {}
    for token in tokens:
        if token.type == "inline" and token.children:
            token.children = _resolved(token.children, token.map[0] if token.map else 0, answers)
    tokens = list(_with_cautions(_levelled(tokens), before, answers))
    html = parser.renderer.render(tokens, parser.options, env)
    return Rendered(tuple(answers.parts(html)), tuple(answers.mistakes), gaps)


def gaps_in(body: str) -> tuple[int, ...]:
    """Lines, from 0, of the paragraphs that are still to be written."""
    return parsed(body)[1] if GAP.casefold() in body.casefold() else ()


def to_inline_html(text: str) -> str:
    """One sentence of Markdown (a lesson, a caption) without the paragraph around it; markers have no meaning there."""
    return str(parser_of(SAFE_SCHEMES).renderInline(without_marks(text)))


def plain_text(body: str) -> str:
    """All words of the text, for the search index."""
    return " ".join(inline_words(token) for token in tokens_of(body) if token.type == "inline")


def _levelled(tokens: Sequence[Token]) -> Sequence[Token]:
    """The page's own title is h1: the text's highest headings become h2, the others follow, whatever the author began with."""
    headings = [token for token in tokens if token.type in ("heading_open", "heading_close")]
    highest = min((int(token.tag[1]) for token in headings), default=1)
    for token in headings:
        token.tag = f"h{min(6, int(token.tag[1]) - highest + 2)}"
    return tokens


def _with_cautions(tokens: Sequence[Token], before: CautionsByPart, answers: _Answers) -> Iterator[Token]:
    for index, token in enumerate(tokens):
        for caution in before.get(index, ()):
            yield answers.token_for(caution, "", 0)
        yield token


def _resolved(children: Sequence[Token], line: int, answers: _Answers) -> list[Token]:
    resolved: list[Token] = []
    waiting: list[Token] = list(children)
    while waiting:
        token = waiting.pop(0)
        if token.type == "softbreak":
            line += 1
        if token.type == "link_open" and _is_marked(_target(token), FACT):
            words, waiting = _until_close(waiting)
            inner = "".join(plain_word(word) for word in words)
            resolved.append(answers.token_for(answers.resolvers.fact(_target(token)[len(FACT) :], inner), inner, line))
        elif token.type == "link_open" and _is_marked(_target(token), FIGURE):
            words, waiting = _until_close(waiting)
            resolved.append(answers.token_for(_MISPLACED["link"], "".join(plain_word(word) for word in words), line))
        elif token.type == "link_open" and any(_is_marked(_target(token), mark) for mark in MARKS):
            words, waiting = _until_close(waiting)
            waiting = [*words, *waiting]
        elif token.type == "image" and _is_marked(token.attrs.get("src", ""), FACT):
            resolved.append(answers.token_for(_MISPLACED["image"], "", line))
        elif token.type == "image" and _is_marked(token.attrs.get("src", ""), FIGURE):
            name = str(token.attrs["src"])[len(FIGURE) :]
            resolved.append(answers.token_for(answers.resolvers.figure(name, token.content), "", line))
        else:
            resolved.append(_linked(token, line, answers))
    return resolved


_MISPLACED = {
    "link": ("a figure is no place to link to", "write ![](figure:NAME) where the figure shall stand"),
    "image": ("a number is no picture", "write [](fact:KEY) where the number shall stand"),
}


def _is_marked(address: object, marker: str) -> bool:
    """As with any scheme, capitals make no difference."""
    return str(address).lower().startswith(marker)


def _target(token: Token) -> str:
    return str(token.attrs.get("href", ""))


def _until_close(waiting: list[Token]) -> tuple[list[Token], list[Token]]:
    close = next(index for index, token in enumerate(waiting) if token.type == "link_close")
    return waiting[:close], waiting[close + 1 :]


def _linked(token: Token, line: int, answers: _Answers) -> Token:
    """A link to NAME.md leads to that entry's page; other links stay."""
    if token.type != "link_open":
        return token
    address, hash_sign, anchor = _target(token).partition("#")
    if not address.endswith(".md") or ":" in address:
        return token
    answer = answers.resolvers.entry_address(address)
    if isinstance(answer, tuple):
        answers.mistakes.append(TextMistake(line, *answer))
    else:
        token.attrs["href"] = answer + hash_sign + anchor
    return token
