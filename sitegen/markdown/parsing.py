"""CommonMark with tables, footnotes and definition lists, to tokens. Raw HTML stays text, as does a link of a foreign scheme."""

from collections.abc import MutableMapping
from functools import cache, lru_cache, partial
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.token import Token
from mdit_py_plugins.deflist import deflist_plugin
from mdit_py_plugins.footnote import footnote_plugin

from sitegen.markdown.gaps import written
from sitegen.markdown.marks import MARKS

SAFE_SCHEMES = ("http://", "https://", "mailto:")
FACT, FIGURE = "fact:", "figure:"
MARKERS = (FACT, FIGURE, *MARKS)


def parsed(body: str, env: MutableMapping[str, Any] | None = None) -> tuple[list[Token], tuple[int, ...]]:
    """The tokens of all that is published of the text, for whoever changes them, and the lines (from 0 within the body) of the
    paragraphs that are still to be written. `env` is what the renderer needs."""
    return written(parser_of().parse(body, env if env is not None else {}))


@lru_cache(maxsize=4)
def tokens_of(body: str) -> tuple[Token, ...]:
    """The same tokens for whoever only reads them: cautions, claims and the search read one text one after the other."""
    return tuple(parsed(body)[0])


@cache
def parser_of(schemes: tuple[str, ...] = (*SAFE_SCHEMES, *MARKERS)) -> MarkdownIt:
    parser = MarkdownIt("commonmark", {"html": False, "typographer": False}).enable("table")
    parser.use(footnote_plugin).use(deflist_plugin)
    parser.validateLink = partial(_may_link, schemes)  # type: ignore[method-assign]  # the documented way
    return parser


def _may_link(schemes: tuple[str, ...], address: str) -> bool:
    """No scheme but these; relative addresses have none."""
    head = address.strip().lower()
    before_colon = head.partition(":")[0]
    relative = ":" not in head or any(sign in before_colon for sign in "/?#")
    return relative or head.startswith(schemes)
